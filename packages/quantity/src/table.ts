/**
 * The units of the trade. Factors to SI are exact by definition unless a comment says otherwise.
 * Sources: SI brochure (BIPM, 9th edition, 2019); NIST Special Publication 811 (2008), appendix B; the
 * international yard and pound agreement (1959): 1 in = 25.4 mm, 1 lb = 0.45359237 kg; 1 US gallon = 231 in3.
 */
import type { Dimension } from './dimension.ts';

export interface UnitRow {
  /** How this package writes the unit. */
  readonly symbol: string;
  /** Other spellings that are understood. */
  readonly also: readonly string[];
  /** Value of one unit in SI base units. */
  readonly factor: number;
  /** Value of the unit's zero in SI base units, for temperature scales only. */
  readonly zero: number;
  readonly dimension: Dimension;
  /** SI prefixes that are understood in front of it. */
  readonly prefixes: string;
  /** How a person sees it, where that differs from the symbol. */
  readonly shown: string;
  readonly name: string;
}

const length: Dimension = [1, 0, 0, 0, 0, 0, 0];
const volume: Dimension = [3, 0, 0, 0, 0, 0, 0];
const mass: Dimension = [0, 1, 0, 0, 0, 0, 0];
const time: Dimension = [0, 0, 1, 0, 0, 0, 0];
const temperature: Dimension = [0, 0, 0, 1, 0, 0, 0];
const pressure: Dimension = [-1, 1, -2, 0, 0, 0, 0];
const energy: Dimension = [2, 1, -2, 0, 0, 0, 0];
const power: Dimension = [2, 1, -3, 0, 0, 0, 0];
const force: Dimension = [1, 1, -2, 0, 0, 0, 0];
const flow: Dimension = [3, 0, -1, 0, 0, 0, 0];
const angle: Dimension = [0, 0, 0, 0, 0, 1, 0];
const pure: Dimension = [0, 0, 0, 0, 0, 0, 0];

const inch = 0.0254;
const foot = 12 * inch;
const gallon = 231 * inch ** 3;
const pound = 0.45359237;
/** Standard gravity, 3rd CGPM (1901), in m/s2. */
const gravity = 9.80665;

interface Extra {
  readonly also?: string;
  readonly prefixes?: string;
  readonly shown?: string;
  readonly zero?: number;
}

function row(symbol: string, factor: number, dimension: Dimension, name: string, extra: Extra = {}): UnitRow {
  return {
    symbol,
    factor,
    dimension,
    name,
    also: extra.also?.split('|') ?? [],
    prefixes: extra.prefixes ?? '',
    shown: extra.shown ?? symbol,
    zero: extra.zero ?? 0,
  };
}

export const units: readonly UnitRow[] = [
  row('1', 1, pure, 'pure number'),
  row('%', 1e-2, pure, 'percent', { also: 'percent' }),
  row('ppm', 1e-6, pure, 'parts per million (a ratio, not mg/L)'),
  row('ppb', 1e-9, pure, 'parts per thousand million'),
  row('cfu', 1, pure, 'colony-forming units', { also: 'CFU' }),
  row('log10', 1, pure, 'decimal logarithm steps', { also: 'log' }),

  row('m', 1, length, 'metre', { prefixes: 'kcdmun' }),
  row('in', inch, length, 'inch', { also: 'inch|inches|"|″' }),
  row('uin', 1e-6 * inch, length, 'microinch', { also: 'µin', shown: 'µin' }),
  row('mil', 1e-3 * inch, length, 'thousandth of an inch', { also: 'thou' }),
  row('ft', foot, length, 'foot', { also: "foot|feet|'|′" }),
  row('L', 1e-3, volume, 'litre', { also: 'l|litre|liter|litres|liters', prefixes: 'hcdmu' }),
  row('gal', gallon, volume, 'US gallon', { also: 'gallon|gallons' }),

  row('g', 1e-3, mass, 'gram', { prefixes: 'kmun' }),
  row('t', 1e3, mass, 'tonne'),
  row('lb', pound, mass, 'pound', { also: 'lbs' }),
  row('oz', pound / 16, mass, 'ounce (avoirdupois)'),

  row('s', 1, time, 'second', { also: 'sec', prefixes: 'mun' }),
  row('min', 60, time, 'minute', { also: 'mins|minutes' }),
  row('h', 3600, time, 'hour', { also: 'hr|hrs|hour|hours' }),
  row('d', 86400, time, 'day', { also: 'day|days' }),
  row('wk', 7 * 86400, time, 'week', { also: 'week|weeks' }),
  row('yr', 365 * 86400, time, 'year of 365 days, for accounts', { also: 'year|years|a' }),
  row('Hz', 1, [0, 0, -1, 0, 0, 0, 0], 'hertz', { prefixes: 'k' }),
  row('rpm', 1 / 60, [0, 0, -1, 0, 0, 0, 0], 'turns per minute'),

  row('K', 1, temperature, 'kelvin', { prefixes: 'm' }),
  row('degC', 1, temperature, 'degree Celsius', {
    also: '°C|℃|C|celsius|Celsius',
    shown: '°C',
    zero: 273.15,
  }),
  row('degF', 5 / 9, temperature, 'degree Fahrenheit', {
    also: '°F|℉|F|fahrenheit|Fahrenheit',
    shown: '°F',
    zero: 273.15 - 32 * (5 / 9),
  }),

  row('deg', Math.PI / 180, angle, 'degree of angle', { also: '°|degree|degrees', shown: '°' }),
  row('rad', 1, angle, 'radian', { prefixes: 'm' }),

  row('N', 1, force, 'newton', { prefixes: 'kmu' }),
  row('lbf', pound * gravity, force, 'pound-force'),
  row('Pa', 1, pressure, 'pascal', { prefixes: 'Mkhmu' }),
  row('bar', 1e5, pressure, 'bar', { prefixes: 'm' }),
  row('atm', 101325, pressure, 'standard atmosphere'),
  row('psi', (pound * gravity) / inch ** 2, pressure, 'pound-force per square inch'),
  row(
    'mmHg',
    133.322387415,
    pressure,
    'conventional millimetre of mercury (13 595.1 kg/m3 at standard gravity)',
  ),
  row('inH2O', 249.08891, pressure, 'conventional inch of water (1000 kg/m3 at standard gravity)', {
    also: 'inWC',
  }),

  row('J', 1, energy, 'joule', { prefixes: 'GMkmu' }),
  row('Wh', 3600, energy, 'watt hour', { prefixes: 'GMk' }),
  row('BTU', 1055.05585262, energy, 'British thermal unit, International Table', { also: 'Btu' }),
  row('W', 1, power, 'watt', { prefixes: 'GMkmu' }),
  row('hp', 550 * foot * pound * gravity, power, 'horsepower (550 ft lbf/s)'),

  row('gpm', gallon / 60, flow, 'US gallon per minute'),
  row('cfm', foot ** 3 / 60, flow, 'cubic foot per minute'),
  row('fpm', foot / 60, [1, 0, -1, 0, 0, 0, 0], 'foot per minute'),
  row('P', 0.1, [-1, 1, -1, 0, 0, 0, 0], 'poise', { prefixes: 'c' }),
  row('St', 1e-4, [2, 0, -1, 0, 0, 0, 0], 'stokes', { prefixes: 'c' }),
  row('S', 1, [-2, -1, 3, 0, 2, 0, 0], 'siemens', { prefixes: 'mu' }),
  row('money', 1, [0, 0, 0, 0, 0, 0, 1], 'your currency; one currency throughout'),
];

export const prefixFactor: Readonly<Record<string, number>> = {
  G: 1e9,
  M: 1e6,
  k: 1e3,
  h: 1e2,
  d: 1e-1,
  c: 1e-2,
  m: 1e-3,
  u: 1e-6,
  n: 1e-9,
};
