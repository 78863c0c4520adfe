/** Cells of a logger file, read in place: no substring for the common forms. */

const zero = 48;
const nine = 57;
const point = 46;
const commaCode = 44;
const powers = Float64Array.from({ length: 23 }, (_, i) => 10 ** i);

/**
 * The number in `text` from `at` to `end`, blanks around it allowed; NaN when empty or not a number. With `comma` a
 * decimal comma is read as well as a point. Up to 15 digits are exact by one division; everything else goes the slow way.
 */
export function numberIn(text: string, at: number, end: number, comma: boolean): number {
  while (at < end && text.charCodeAt(at) <= 32) at++;
  while (end > at && text.charCodeAt(end - 1) <= 32) end--;
  if (at === end) return Number.NaN;
  const start = at;
  let negative = false;
  const sign = text.charCodeAt(at);
  if (sign === 45 || sign === 43) {
    negative = sign === 45;
    at++;
  }
  let mantissa = 0;
  let digits = 0;
  let decimals = -1;
  for (; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code >= zero && code <= nine) {
      mantissa = mantissa * 10 + (code - zero);
      digits++;
      if (decimals >= 0) decimals++;
    } else if ((code === point || (comma && code === commaCode)) && decimals < 0) decimals = 0;
    else break;
  }
  // A colon or a second hyphen: a time stamp, not a number.
  if (at < end && (text.charCodeAt(at) === 58 || text.charCodeAt(at) === 45)) return Number.NaN;
  if (at < end || digits === 0 || digits > 15) return slowNumber(text.slice(start, end), comma);
  const value = decimals > 0 ? mantissa / powers[decimals] : mantissa;
  return negative ? -value : value;
}

function slowNumber(cell: string, comma: boolean): number {
  const plain = cell.replace(/^"(.*)"$/, '$1').trim();
  if (plain === '') return Number.NaN;
  const value = Number(comma ? plain.replace(',', '.') : plain);
  return Number.isFinite(value) ? value : Number.NaN;
}

const isoPattern = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d(?:[.,]\d+)?))?\s*(Z|[+-]\d\d:?\d\d)?$/;
const clockPattern = /^(\d{1,3}):(\d\d)(?::(\d\d(?:[.,]\d+)?))?$/;

/** Days from 1970-01-01 of a date of the Gregorian calendar (after H. Hinnant, low-level date algorithms, 2013). */
function days(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  return (
    era * 146097 +
    yearOfEra * 365 +
    Math.floor(yearOfEra / 4) -
    Math.floor(yearOfEra / 100) +
    dayOfYear -
    719468
  );
}

function offsetSeconds(zone: string | undefined): number {
  if (zone === undefined || zone === 'Z') return 0;
  return (zone[0] === '-' ? -1 : 1) * (Number(zone.slice(1, 3)) * 3600 + Number(zone.slice(-2)) * 60);
}

/** Two digits at a place; NaN where they are none. */
function pair(text: string, at: number): number {
  const a = text.charCodeAt(at) - zero;
  const b = text.charCodeAt(at + 1) - zero;
  return a >= 0 && a <= 9 && b >= 0 && b <= 9 ? 10 * a + b : Number.NaN;
}

function calendar(
  year: number,
  month: number,
  day: number,
  hour: number,
  minute: number,
  second: number,
): number {
  if (month < 1 || month > 12 || day < 1 || day > 31 || hour > 24 || minute > 59 || second >= 61)
    return Number.NaN;
  return days(year, month, day) * 86400 + hour * 3600 + minute * 60 + second;
}

/** The common form 2026-03-01T08:00:00.000Z without a pattern: a third of the time on long files. */
function plainStamp(text: string, at: number, end: number): number {
  const length = end - at;
  if (length !== 20 && length !== 24) return Number.NaN;
  if (text[end - 1] !== 'Z' || text[at + 4] !== '-' || text[at + 10] !== 'T' || text[at + 16] !== ':')
    return Number.NaN;
  const fraction = length === 20 ? 0 : Number(text.slice(at + 20, at + 23)) / 1000;
  return calendar(
    100 * pair(text, at) + pair(text, at + 2),
    pair(text, at + 5),
    pair(text, at + 8),
    pair(text, at + 11),
    pair(text, at + 14),
    pair(text, at + 17) + fraction,
  );
}

/** Seconds of a calendar or clock time from `at` to `end`, or NaN. */
export function stampIn(text: string, at: number, end: number): number {
  const quick = plainStamp(text, at, end);
  if (!Number.isNaN(quick)) return quick;
  const plain = text
    .slice(at, end)
    .trim()
    .replace(/^"(.*)"$/, '$1');
  const iso = isoPattern.exec(plain);
  if (iso) {
    const [year, month, day, hour, minute] = iso.slice(1, 6).map(Number);
    const second = Number((iso[6] ?? '0').replace(',', '.'));
    return calendar(year, month, day, hour, minute, second) - offsetSeconds(iso[7]);
  }
  const clock = clockPattern.exec(plain);
  if (!clock) return Number.NaN;
  return Number(clock[1]) * 3600 + Number(clock[2]) * 60 + Number((clock[3] ?? '0').replace(',', '.'));
}
