/**
 * Read a number as people write it: "3.75", "3,75", "1 234,5", "1'234.5", "2e-3", "2·10^-3", "1/8", "1 1/2", "½".
 * A lone separator before exactly three digits ("1.234", "1,234") has two readings; both are returned and the caller
 * asks. Only the locale's own decimal separator settles it, its thousands separator never does: people type a point
 * on a German keyboard too, and 3.75 must not become 375.
 */

export type NumberReading =
  | { readonly kind: 'number'; readonly values: readonly number[]; readonly rest: string }
  | { readonly kind: 'error'; readonly message: string };

const unicodeFractions: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Whether a text is a BCP 47 language tag. */
export function isLocale(tag: string): boolean {
  try {
    return Intl.getCanonicalLocales(tag).length === 1;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

/** The decimal separator of a locale, "." or ",". */
export function decimalSeparator(locale: string): string {
  return (
    new Intl.NumberFormat(locale).formatToParts(1.5).find((part) => part.type === 'decimal')?.value ?? '.'
  );
}

function clean(text: string): string {
  return text
    .trim()
    .replace(/[½⅓⅔¼¾⅛⅜⅝⅞]/g, (c) => ` ${unicodeFractions[c]}`)
    .replace(/⁄/g, '/')
    .replace(/[−–]/g, '-')
    .replace(/[\u00a0\u202f\u2009]/g, ' ')
    .replace(/’/g, "'")
    .trim();
}

const fractionPattern = /^([+-]?)(?:(\d+)(?:\s+|-))?(\d+)\s*\/\s*(\d+)(?![\d.,])/;
const decimalPattern =
  /^([+-]?)(\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?!\d)|\d{1,3}(?:'\d{3})+(?:[.,]\d+)?|\d[\d.,]*|[.,]\d+)(?:[eE]([+-]?\d+)|\s*[x×·*]\s*10\^?([+-]?\d+))?/;

/** All readings of digits with separators, in the notation of JavaScript; empty where there is none. */
function readDigits(digits: string, decimal: string | undefined, hasExponent: boolean): readonly string[] {
  const plain = digits.replace(/[ ']/g, '');
  const marks = plain.replace(/\d/g, '');
  const asDecimal = (mark: string) => plain.replace(mark, '.');
  if (marks === '') return [plain];
  if (marks.length === 1) {
    const [before, after] = plain.split(marks);
    const couldBeThousands =
      plain === digits && after.length === 3 && /^[1-9]\d{0,2}$/.test(before) && !hasExponent;
    if (!couldBeThousands || marks === decimal) return [asDecimal(marks)];
    return [asDecimal(marks), before + after];
  }
  const last = marks[marks.length - 1];
  const group = marks[0];
  if (plain !== digits) return [];
  if (marks === group.repeat(marks.length))
    return new RegExp(`^\\d{1,3}(?:\\${group}\\d{3})+$`).test(plain) ? [plain.replaceAll(group, '')] : [];
  const grouped = new RegExp(`^\\d{1,3}(?:\\${group}\\d{3})+\\${last}\\d*$`).test(plain);
  return grouped ? [plain.replaceAll(group, '').replace(last, '.')] : [];
}

/**
 * Read the number at the start of `text`; `rest` is what stands behind it.
 * `locale` (BCP 47) settles its own decimal separator; without it nothing is settled.
 */
export function readNumber(text: string, locale?: string): NumberReading {
  const source = clean(text);
  const fraction = fractionPattern.exec(source);
  if (fraction) {
    const [all, sign, whole, top, bottom] = fraction;
    if (Number(bottom) === 0) return { kind: 'error', message: `"${all}" divides by zero` };
    const value = Number(whole ?? 0) + Number(top) / Number(bottom);
    return { kind: 'number', values: [sign === '-' ? -value : value], rest: source.slice(all.length).trim() };
  }
  const match = decimalPattern.exec(source);
  if (!match) return { kind: 'error', message: `"${text.trim()}" does not start with a number` };
  const [all, sign, digits, exponentE, exponent10] = match;
  const exponent = exponentE ?? exponent10;
  const decimal = locale === undefined ? undefined : decimalSeparator(locale);
  const values = readDigits(digits, decimal, exponent !== undefined).map((v) =>
    Number(`${sign}${v}e${exponent ?? 0}`),
  );
  if (values.length === 0) return { kind: 'error', message: `"${all}" mixes its separators` };
  return { kind: 'number', values, rest: source.slice(all.length).trim() };
}
