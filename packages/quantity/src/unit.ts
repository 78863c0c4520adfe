/**
 * Read a unit such as "mm", "m3/h", "W/(m2 K)" or "kg/(m s)".
 *
 * Grammar: factors are set side by side with a space, "·" or "*"; "/" divides by the one factor or the bracket that
 * follows; exponents stand behind the symbol ("m2", "m^2", "m²", "s-1"). A second factor after an unbracketed
 * divisor is refused, since "kg/m s" has two readings (SI brochure, 5.2; NIST SP 811, 6.1.6).
 */
import { type Dimension, pureNumber, times } from './dimension.ts';
import { prefixFactor, type UnitRow, units } from './table.ts';

export interface Unit {
  readonly text: string;
  /** Value of one unit in SI base units. */
  readonly factor: number;
  /** Value of the unit's zero in SI base units: not 0 only for degC and degF standing alone. */
  readonly zero: number;
  readonly dimension: Dimension;
}

export type UnitReading =
  | { readonly kind: 'unit'; readonly unit: Unit }
  | { readonly kind: 'error'; readonly message: string };

interface Atom {
  readonly row: UnitRow;
  readonly factor: number;
}

const atoms = new Map<string, Atom>();
for (const row of units) {
  for (const name of [row.symbol, ...row.also]) {
    for (const prefix of row.prefixes) {
      const atom = { row, factor: row.factor * prefixFactor[prefix] };
      if (!atoms.has(prefix + name)) atoms.set(prefix + name, atom);
    }
  }
}
// Whole symbols win over prefix and symbol: "min" is the minute, "ft" the foot.
for (const row of units)
  for (const name of [row.symbol, ...row.also]) atoms.set(name, { row, factor: row.factor });

const superscripts: Readonly<Record<string, string>> = {
  '⁰': '0',
  '¹': '1',
  '²': '2',
  '³': '3',
  '⁴': '4',
  '⁵': '5',
  '⁶': '6',
  '⁷': '7',
  '⁸': '8',
  '⁹': '9',
  '⁻': '-',
};

/** One spelling for what looks alike: micro signs, minus signs, superscripts, multiplication dots, hard spaces. */
function normalise(text: string): string {
  return text
    .trim()
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]/g, (c) => superscripts[c])
    .replace(/[µμ]/g, 'u')
    .replace(/[−–]/g, '-')
    .replace(/[\u00a0\u202f\u2009]/g, ' ')
    .replace(/[·⋅×*]/g, ' ')
    .replace(/\bdeg ([CF])\b/g, 'deg$1')
    .replace(/\s*\/\s*/g, '/')
    .replace(/\s+/g, ' ');
}

function guess(symbol: string): string {
  const same = [...atoms.keys()].filter((name) => name.toLowerCase() === symbol.toLowerCase());
  return same.length > 0 ? `; upper and lower case differ, write ${same.join(' or ')}` : '';
}

/** Gauge and absolute marks: the input says which pressure it means, the unit cannot. */
const markedPressure = /^([kMm]?(?:Pa|bar)|psi) ?\(?(?:[ag]|abs|gauge)\)?$/;

/** A symbol with its exponent: "cm2", "s-1", "m^3", "%". */
const factorPattern = /^(log10|inH2O|1|[^\s/()\d^-]+)(?:\^?(-?\d))?/;

class UnitError extends Error {}

function readProduct(
  text: string,
  at: number,
  inBracket: boolean,
): { unit: Omit<Unit, 'text'>; next: number } {
  let factor = 1;
  let zero = 0;
  let dimension: Dimension = pureNumber;
  let count = 0;
  let divide = false;
  let divided = false;
  while (at < text.length && text[at] !== ')') {
    if (text[at] === '/') {
      if (divide) throw new UnitError('two "/" follow each other');
      divide = true;
      divided = true;
      at++;
      continue;
    }
    if (text[at] === ' ') {
      at++;
      continue;
    }
    if (divided && !divide)
      throw new UnitError('what stands under the "/" is not clear: write brackets, as in W/(m2 K)');
    const sign = divide ? -1 : 1;
    divide = false;
    if (text[at] === '(') {
      const inner = readProduct(text, at + 1, true);
      factor *= inner.unit.factor ** sign;
      dimension = times(dimension, inner.unit.dimension, sign);
      at = inner.next;
    } else {
      const match = factorPattern.exec(text.slice(at));
      if (!match) throw new UnitError(`"${text.slice(at)}" is not a unit`);
      const atom = atoms.get(match[1]);
      if (!atom) throw new UnitError(`the unit "${match[1]}" is not known${guess(match[1])}`);
      const power = sign * Number(match[2] ?? 1);
      factor *= atom.factor ** power;
      zero = power === 1 ? atom.row.zero : 0;
      dimension = times(dimension, atom.row.dimension, power);
      at += match[0].length;
    }
    count++;
  }
  if (divide) throw new UnitError('nothing stands behind the "/"');
  if (inBracket) {
    if (text[at] !== ')') throw new UnitError('a bracket is not closed');
    at++;
  } else if (at < text.length) throw new UnitError('a bracket is closed that was not opened');
  return { unit: { factor, zero: count === 1 ? zero : 0, dimension }, next: at };
}

const cache = new Map<string, UnitReading>();

/** Read a unit. Errors are values: one sentence that says what was not understood. */
export function readUnit(text: string): UnitReading {
  const hit = cache.get(text);
  if (hit) return hit;
  let reading: UnitReading;
  try {
    const clean = normalise(text);
    const marked = markedPressure.exec(clean);
    if (marked)
      throw new UnitError(
        `"${text}" marks gauge or absolute: give the pressure that is asked for in plain ${marked[1]}`,
      );
    const { unit } = readProduct(clean.startsWith('/') ? `1${clean}` : clean, 0, false);
    reading = { kind: 'unit', unit: { text, ...unit } };
  } catch (error) {
    if (!(error instanceof UnitError)) throw error;
    reading = { kind: 'error', message: error.message };
  }
  if (cache.size < 1000) cache.set(text, reading);
  return reading;
}

/** The unit that a program names itself. A misspelt one is a fault of the program, so it throws. */
export function unitOf(text: string): Unit {
  const reading = readUnit(text);
  if (reading.kind === 'error') throw new Error(`unit "${text}": ${reading.message}`);
  return reading.unit;
}
