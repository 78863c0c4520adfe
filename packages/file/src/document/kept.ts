/** The calculations that people kept with the machine, worked out for this file. */
import { type CalculationEntry, inputName, runAgain, type Table } from '@coveline/engineering';
import type { KeptCalculation } from '@coveline/project';
import { formatQuantity, formatUnit } from '@coveline/quantity';
import type { FileRequest } from '../request.ts';
import type { KeptContent, Row, TableContent } from './content.ts';
import type { Printer } from './printable.ts';
import { workingParts } from './workings.ts';

/** Of a typed text and of a table; a reader who wants all of a logger file opens the file. */
const longestTyped = 120;
const mostRows = 24;

export function keptContent({ project, review, revisionId }: FileRequest, printer: Printer): KeptContent[] {
  const { text } = printer;
  return project.calculations.map((kept, i) => {
    const { entry, run, refusal, changed } = runAgain(kept);
    const outcome = run?.outcome.kind === 'done' ? run.outcome : null;
    return {
      number: i + 1,
      title: text(kept.title),
      formulaTitle: text(entry?.title ?? kept.calculation),
      note: text(kept.note),
      typed: typedRows(kept, entry, printer),
      finding:
        kept.about?.revision === revisionId
          ? review.findings.findIndex((f) => f.id === kept.about?.finding) + 1
          : 0,
      working: outcome && workingParts(outcome.working, printer),
      refusal: text(refusal ?? ''),
      before: changed ? gaveInWords(kept, printer) : '',
      tables: (outcome?.tables ?? []).map((table) => tableContent(table, printer)),
    };
  });
}

function typedRows({ inputs }: KeptCalculation, entry: CalculationEntry | null, { short }: Printer): Row[] {
  const labels = Object.entries(entry?.inputs ?? {}).map(
    ([key, { label }]) => [inputName(key), label] as const,
  );
  const labelOf = (name: string) => labels.find(([known]) => known === inputName(name))?.[1] ?? name;
  return Object.entries(inputs).map(([name, typed]) => ({
    label: short(labelOf(name), longestTyped),
    value: short(typed, longestTyped),
  }));
}

function gaveInWords({ gave }: KeptCalculation, { text }: Printer): string {
  return text(gave ? formatQuantity(gave.value, gave.unit) : 'no number');
}

function tableContent({ title, columns, rows }: Table, { text, short }: Printer): TableContent {
  return {
    title: text(title),
    columns: columns.map(({ name, unit }) =>
      text(unit === '1' || unit === '' ? name : `${name}, ${formatUnit(unit)}`),
    ),
    rows: rows
      .slice(0, mostRows)
      .map((row) => row.map((v) => (typeof v === 'number' ? text(formatQuantity(v, '1')) : short(v, 60)))),
    more: Math.max(0, rows.length - mostRows),
  };
}
