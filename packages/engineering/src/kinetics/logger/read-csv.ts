/**
 * Read the CSV file of a temperature logger: one header line, first column time, one column a sensor. Separator comma,
 * semicolon or tab; a decimal comma where the separator is not a comma. Time as ISO 8601 with or without offset, as
 * hh:mm:ss, or as a plain number in the unit that its header or the caller names. Empty cells and words are gaps.
 * Built for a million lines: one pass over the text, typed arrays, no split.
 */

import { numberIn, stampIn } from './cells.ts';

export type TimeUnit = 's' | 'min' | 'h';
export type TemperatureUnit = 'degC' | 'degF';

export interface LoggerData {
  readonly kind: 'data';
  /** Seconds from the first sample, strictly rising. */
  readonly seconds: Float64Array;
  readonly sensors: readonly {
    readonly name: string /** degC; NaN is a gap. */;
    readonly celsius: Float64Array;
  }[];
  readonly notes: readonly string[];
}

export type LoggerReading = LoggerData | { readonly kind: 'error'; readonly message: string };

export interface LoggerOptions {
  /** Used where the header names no unit. */
  readonly timeUnit?: TimeUnit;
  readonly temperatureUnit?: TemperatureUnit;
}

const secondsPer: Readonly<Record<TimeUnit, number>> = { s: 1, min: 60, h: 3600 };

function timeUnitOf(header: string): TimeUnit | undefined {
  const unit = /[[(/ ]\s*(s|sec|seconds|min|minutes|h|hours)\s*[\])]?\s*$/i.exec(header)?.[1]?.toLowerCase();
  if (unit === undefined) return undefined;
  return unit.startsWith('s') ? 's' : unit.startsWith('m') ? 'min' : 'h';
}

function temperatureUnitOf(header: string): TemperatureUnit | undefined {
  if (/(°\s*F|degF|fahrenheit|[[(]F[\])])/i.test(header)) return 'degF';
  return /(°\s*C|degC|celsius|[[(]C[\])])/i.test(header) ? 'degC' : undefined;
}

function separatorOf(header: string): string {
  const count = (mark: string) => header.split(mark).length;
  return ['\t', ';', ','].reduce((best, mark) => (count(mark) > count(best) ? mark : best), '\t');
}

function countLines(text: string): number {
  let lines = 1;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines++;
  return lines;
}

const unquote = (cell: string) =>
  cell
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .trim();

export function readLogger(text: string, options: LoggerOptions = {}): LoggerReading {
  const source = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  const headEnd = source.indexOf('\n');
  if (headEnd < 0)
    return {
      kind: 'error',
      message: 'the file has one line only: expected a header line and one line a sample',
    };
  const header = source.slice(0, headEnd).trim();
  const separator = separatorOf(header);
  const names = header.split(separator).map(unquote);
  if (names.length < 2)
    return {
      kind: 'error',
      message:
        'line 1 has one column only: expected time and at least one sensor, between commas, semicolons or tabs',
    };
  const comma = separator !== ',';
  const unit = timeUnitOf(names[0]) ?? options.timeUnit;
  const scale = unit === undefined ? Number.NaN : secondsPer[unit];
  const fahrenheit: boolean[] = [];
  for (const name of names.slice(1)) {
    const found = temperatureUnitOf(name) ?? options.temperatureUnit;
    if (found === undefined)
      return {
        kind: 'error',
        message: `column "${name}" does not say whether it is in degC or degF: write it into the header or choose a unit`,
      };
    fahrenheit.push(found === 'degF');
  }

  const room = countLines(source);
  const seconds = new Float64Array(room);
  const columns = fahrenheit.map(() => new Float64Array(room));
  let count = 0;
  let line = 1;
  let origin = 0;
  for (let at = headEnd + 1; at < source.length; ) {
    let end = source.indexOf('\n', at);
    if (end < 0) end = source.length;
    line++;
    let stop = end;
    while (stop > at && source.charCodeAt(stop - 1) <= 32 && source[stop - 1] !== '\t') stop--;
    if (stop === at) {
      at = end + 1;
      continue;
    }
    let from = at;
    let to = source.indexOf(separator, from);
    if (to < 0 || to > stop) to = stop;
    const plain = numberIn(source, from, to, comma);
    const time = Number.isNaN(plain) ? stampIn(source, from, to) : plain * scale;
    if (Number.isNaN(time))
      return {
        kind: 'error',
        message: Number.isNaN(plain)
          ? `line ${line}: the time "${source.slice(from, to).trim()}" cannot be read, expected 2026-03-01T08:00:00Z, 08:00:00 or a number`
          : `the header "${names[0]}" does not say whether the time is in s, min or h: write it into the header or choose a unit`,
      };
    if (count === 0) origin = time;
    const elapsed = time - origin;
    if (count > 0 && elapsed <= seconds[count - 1])
      return {
        kind: 'error',
        message: `line ${line}: the time does not run forward (${source.slice(from, to).trim()}): a changed clock or a doubled line, mend the file or use times with their offset from UTC`,
      };
    seconds[count] = elapsed;
    for (let c = 0; c < columns.length; c++) {
      from = to + 1;
      let value = Number.NaN;
      if (from <= stop) {
        to = source.indexOf(separator, from);
        if (to < 0 || to > stop) to = stop;
        value = numberIn(source, from, to, comma);
      }
      columns[c][count] = fahrenheit[c] ? ((value - 32) * 5) / 9 : value;
    }
    count++;
    at = end + 1;
  }
  if (count < 2) return { kind: 'error', message: 'there are fewer than two samples' };
  return {
    kind: 'data',
    seconds: seconds.subarray(0, count),
    sensors: columns.map((column, c) => ({ name: names[c + 1], celsius: column.subarray(0, count) })),
    notes: fahrenheit.some(Boolean) ? ['Columns in degF were converted to degC.'] : [],
  };
}
