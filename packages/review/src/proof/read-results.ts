/** Results pasted or read from a table: columns are found by their names, every row that cannot be taken says why. */
import type { SampleResult } from '@coveline/project';
import { parseQuantity } from '@coveline/quantity';

export interface ReadResults {
  readonly results: readonly Omit<SampleResult, 'id'>[];
  /** One sentence a line, with its number. */
  readonly refused: readonly string[];
}

/** What stands in the table for a point and a test. */
export interface Targets {
  /** Id of a sampling point for the words of a row; null when none fits. */
  readonly pointOf: (words: string) => string | null;
  readonly testOf: (
    words: string,
  ) => { readonly of: SampleResult['of']; readonly limit: string; readonly unit: string } | null;
}

const columns = {
  on: /^(date|day|datum|on|sampled)/i,
  point: /^(point|place|location|site|punkt|stelle|ort)/i,
  test: /^(test|parameter|analysis|of|what|organism|keim)/i,
  value: /^(value|result|count|ergebnis|wert|cfu|kbe)/i,
  by: /^(by|who|sampler|name)/i,
  note: /^(note|remark|comment|bemerkung)/i,
} as const;
type Column = keyof typeof columns;

/** The first line names the columns; cells are parted by tabs, semicolons or commas, the first of them that it has. */
export function readResults(text: string, targets: Targets, locale: string): ReadResults {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const at = lines.findIndex((l) => l.trim() !== '');
  if (at < 0)
    return { results: [], refused: ['There is nothing to read: paste a table with a line of column names.'] };
  const separator = ['\t', ';', ','].find((s) => lines[at].includes(s)) ?? '\t';
  const heads = cells(lines[at], separator);
  const where = Object.fromEntries(
    (Object.keys(columns) as Column[]).map((c) => [c, heads.findIndex((h) => columns[c].test(h))]),
  ) as Record<Column, number>;
  const missing = (['on', 'point', 'test', 'value'] as const).filter((c) => where[c] < 0);
  if (missing.length > 0)
    return {
      results: [],
      refused: [
        `Line ${at + 1} names no column for ${missing.map((c) => columnWords[c]).join(', ')}: it has ${heads.join(', ')}.`,
      ],
    };
  const results: Omit<SampleResult, 'id'>[] = [];
  const refused: string[] = [];
  lines.forEach((line, i) => {
    if (i <= at || line.trim() === '') return;
    const row = cells(line, separator);
    const cell = (c: Column) => (where[c] < 0 ? '' : (row[where[c]] ?? ''));
    const read = readRow(cell, targets, locale);
    if (typeof read === 'string') refused.push(`Line ${i + 1}: ${read}`);
    else results.push(read);
  });
  return { results, refused };
}

const columnWords = { on: 'the date', point: 'the point', test: 'the test', value: 'the result' } as const;

function readRow(
  cell: (c: Column) => string,
  { pointOf, testOf }: Targets,
  locale: string,
): Omit<SampleResult, 'id'> | string {
  const on = dayOf(cell('on'));
  if (on === null) return `"${cell('on')}" is no date; write it as 2026-11-25.`;
  const point = pointOf(cell('point'));
  if (point === null) return `"${cell('point')}" is no point of the plan.`;
  const test = testOf(cell('test'));
  if (test === null) return `"${cell('test')}" is no test of the plan.`;
  const value = readValue(cell('value'), test.unit, locale);
  if (typeof value === 'string') return value;
  const { of, limit } = test;
  return { point, of, limit, on, ...value, by: cell('by'), note: cell('note'), action: '' };
}

/** "<10" is below a detection limit of 10; words like "nd" are below one that is not told. */
function readValue(
  text: string,
  unit: string,
  locale: string,
): Pick<SampleResult, 'value' | 'detectionLimit'> | string {
  const trimmed = text.trim();
  if (/^(nd|n\.d\.|not detected|absent|negative|neg\.?|nicht nachgewiesen)$/i.test(trimmed))
    return { value: null, detectionLimit: null };
  const below = trimmed.startsWith('<');
  const reading = parseQuantity(below ? trimmed.slice(1) : trimmed, unit, { locale });
  if (reading.kind === 'ambiguous')
    return `"${trimmed}" can be read in two ways; write it without a separator of thousands.`;
  if (reading.kind === 'error') return reading.message;
  if (reading.value < 0) return `"${trimmed}" is below zero.`;
  return below
    ? { value: null, detectionLimit: reading.value }
    : { value: reading.value, detectionLimit: null };
}

/** "2026-11-25" and "25.11.2026"; dates with slashes are read in two ways in this world, so they are refused. */
function dayOf(text: string): string | null {
  const iso = /^(\d{4})-(\d{2})-(\d{2})/.exec(text.trim());
  const dotted = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(text.trim());
  const [year, month, day] = iso
    ? iso.slice(1).map(Number)
    : dotted
      ? dotted.slice(1).reverse().map(Number)
      : [];
  if (year === undefined) return null;
  const made = new Date(Date.UTC(year, month - 1, day));
  return made.getUTCMonth() === month - 1 && made.getUTCDate() === day
    ? made.toISOString().slice(0, 10)
    : null;
}

/** Cells of a line; quotes hold separators together, a doubled quote is one. */
function cells(line: string, separator: string): string[] {
  const out: string[] = [];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < line.length; i++) {
    const c = line[i];
    if (c === '"') {
      if (quoted && line[i + 1] === '"') cell += line[++i];
      else quoted = !quoted;
    } else if (c === separator && !quoted) {
      out.push(cell.trim());
      cell = '';
    } else cell += c;
  }
  out.push(cell.trim());
  return out;
}
