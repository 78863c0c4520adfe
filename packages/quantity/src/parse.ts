import { nameOf, sameDimension } from './dimension.ts';
import { formatQuantity } from './format.ts';
import { isLocale, readNumber } from './number.ts';
import { readUnit, unitOf } from './unit.ts';

export interface QuantityReading {
  /** In the expected unit. */
  readonly value: number;
  readonly unit: string;
  /** What was understood, to be echoed: "2 in = 50.8 mm". */
  readonly understood: string;
}

/** The outcome of reading a quantity. Never an exception: what a person typed is data. */
export type ParsedQuantity =
  | ({ readonly kind: 'quantity' } & QuantityReading)
  | { readonly kind: 'ambiguous'; readonly readings: readonly QuantityReading[]; readonly message: string }
  | { readonly kind: 'error'; readonly message: string };

export interface ParseOptions {
  /** BCP 47. It settles its own decimal separator and sets the numbers of the echo. */
  readonly locale?: string;
}

function examples(expected: string): string {
  const same: Readonly<Record<string, string>> = {
    mm: '50.8 mm, 2 in or 1 1/2 in',
    degC: '80 degC or 176 degF',
    K: '10 K or 18 degF (a difference)',
    '%': '2 % or 0.02',
    '1': '0.5 or 1/2',
  };
  return same[expected] ?? `1.5 ${expected}`;
}

/**
 * Read a quantity such as "2 in", "1 1/2 in", "2e-3 m", "80C" or "3,75" and give it in `expected`.
 *
 * - Without a unit the expected one is taken, and the echo says so.
 * - Expected "degC" or "degF" means a point on the scale; expected "K" means a difference, so that "18 degF" is 10 K.
 * - "1,234" and "1.234" come back as `ambiguous` with both readings unless the locale settles it.
 *
 * Throws only when `expected` itself is no unit, which is a fault of the calling program.
 */
export function parseQuantity(text: string, expected: string, options: ParseOptions = {}): ParsedQuantity {
  const target = unitOf(expected);
  const wanted = `expected ${nameOf(target.dimension)}, such as ${examples(expected)}`;
  if (text.trim() === '') return { kind: 'error', message: `nothing was entered: ${wanted}` };
  if (text.length > 200) return { kind: 'error', message: `the text is too long: ${wanted}` };
  if (options.locale !== undefined && !isLocale(options.locale))
    return { kind: 'error', message: `"${options.locale}" is no language tag such as "de" or "en-GB"` };
  const number = readNumber(text, options.locale);
  if (number.kind === 'error') return { kind: 'error', message: `${number.message}: ${wanted}` };

  const unitGiven = number.rest !== '';
  const reading = readUnit(unitGiven ? number.rest : expected);
  if (reading.kind === 'error')
    return { kind: 'error', message: `in "${text.trim()}" ${reading.message}: ${wanted}` };
  const source = reading.unit;
  if (!sameDimension(source.dimension, target.dimension))
    return {
      kind: 'error',
      message: `"${text.trim()}" is ${nameOf(source.dimension)}: ${wanted}`,
    };

  // A point on a scale only where the expected unit is a scale; see the doc comment.
  const isPoint = target.zero !== 0;
  const readings = number.values.map((value) => {
    const converted = isPoint
      ? (value * source.factor + source.zero - target.zero) / target.factor
      : (value * source.factor) / target.factor;
    // Twelve digits: enough for any measurement, and 0.1 in is 2.54 mm instead of 2.5399999999999996.
    const rounded = source.text === target.text ? value : Number(converted.toPrecision(12));
    return {
      value: rounded,
      unit: expected,
      understood: echo(value, source.text, rounded, expected, unitGiven, options),
    };
  });
  if (readings.some((r) => !Number.isFinite(r.value)))
    return { kind: 'error', message: `"${text.trim()}" is too large to be a number: ${wanted}` };
  const kelvin = readings[0].value * target.factor + target.zero;
  if (isPoint && kelvin < 0)
    return { kind: 'error', message: `"${text.trim()}" is below absolute zero (-273.15 degC): ${wanted}` };
  if (readings.length > 1)
    return {
      kind: 'ambiguous',
      readings,
      message: `"${text.trim()}" can mean ${readings.map((r) => r.understood).join(' or ')}: write ${number.values[0].toFixed(4)} or ${number.values[1]}`,
    };
  return { kind: 'quantity', ...readings[0] };
}

function echo(
  value: number,
  unit: string,
  converted: number,
  expected: string,
  unitGiven: boolean,
  options: ParseOptions,
): string {
  const style = { digits: 12, ...(options.locale === undefined ? {} : { locale: options.locale }) };
  const result = formatQuantity(converted, expected, style);
  if (!unitGiven) return expected === '1' ? result : `${result} (no unit given, ${expected} taken)`;
  const given = formatQuantity(value, unit, style);
  return given === result ? result : `${given} = ${result}`;
}
