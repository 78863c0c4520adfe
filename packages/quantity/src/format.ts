import { units } from './table.ts';

export interface FormatOptions {
  /** BCP 47 such as "de" or "en-GB"; English without it. */
  readonly locale?: string;
  /** Significant digits, 1 to 17; 4 without it. */
  readonly digits?: number;
}

const shown = new Map(units.flatMap((row) => [row.symbol, ...row.also].map((name) => [name, row.shown])));
const raised: Readonly<Record<string, string>> = {
  '0': '⁰',
  '1': '¹',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '5': '⁵',
  '6': '⁶',
  '7': '⁷',
  '8': '⁸',
  '9': '⁹',
  '-': '⁻',
};
const raise = (text: string) => [...text].map((c) => raised[c] ?? c).join('');

/** A unit as a person sees it: "m3/h" becomes "m³/h", "uS/cm" becomes "µS/cm", "degC" becomes "°C". */
export function formatUnit(unit: string): string {
  return unit.replace(/[A-Za-zµ%°"']+(?:10|H2O)?(?:\^?-?\d)?/g, (token) => {
    const whole = shown.get(token);
    if (whole !== undefined) return whole;
    const [, symbol, exponent] = /^(.*?)(?:\^?(-?\d))?$/.exec(token) as RegExpExecArray;
    const name = shown.get(symbol) ?? (/^u[a-zA-Z]/.test(symbol) ? `µ${symbol.slice(1)}` : symbol);
    return name + raise(exponent ?? '');
  });
}

/**
 * A value with its unit, rounded to significant digits in the way of the locale: "1.234,5 mm" in German.
 * Very large and very small values are written with a power of ten. Angles in degrees stand without a space
 * (SI brochure, 5.4.3). A value that is not finite comes out as "not a number" or with the sign of infinity.
 */
export function formatQuantity(value: number, unit: string, options: FormatOptions = {}): string {
  const locale = options.locale ?? 'en';
  const digits = options.digits ?? 4;
  const number = formatNumber(value, locale, digits);
  if (unit === '1' || unit === '') return number;
  return unit === 'deg' ? `${number}°` : `${number} ${formatUnit(unit)}`;
}

const styles = new Map<string, Intl.NumberFormat>();

/** Making a formatter costs far more than using it; there are few locales and digits. */
function styleOf(locale: string, digits: number): Intl.NumberFormat {
  const key = `${locale} ${digits}`;
  let style = styles.get(key);
  if (style === undefined) {
    style = new Intl.NumberFormat(locale, { maximumSignificantDigits: digits });
    styles.set(key, style);
  }
  return style;
}

function formatNumber(value: number, locale: string, digits: number): string {
  if (Number.isNaN(value)) return 'not a number';
  const style = styleOf(locale, digits);
  const size = Math.abs(value);
  if (size === 0 || !Number.isFinite(value)) return style.format(size === 0 ? 0 : value);
  if (size >= 1e-4 && size < 1e9) return style.format(value);
  const [mantissa, exponent] = value.toExponential(digits - 1).split('e');
  return `${style.format(Number(mantissa))} × 10${raise(String(Number(exponent)))}`;
}
