/**
 * Calculations, numbered in the order in which the findings use them. One that is used twice is shown once; one that
 * came about the same way from other numbers gets a row of its own under the same formula.
 */
import { formatQuantity, type Working, type WorkingValue } from '@coveline/quantity';
import type { WorkingContent, WorkingParts } from './content.ts';
import type { Printer } from './printable.ts';

export interface WorkingBook {
  /** Number of the calculation, new or known. `finding`: the one that uses it, null for other chapters. */
  readonly numberOf: (working: Working, finding: number | null) => number;
  readonly all: () => readonly WorkingContent[];
}

interface Entry {
  readonly number: number;
  readonly working: Working;
  readonly usedBy: number[];
}

/** As many columns of numbers as fit beside each other on a page. */
const mostColumns = 9;

export function newWorkingBook(printer: Printer): WorkingBook {
  const entries: Entry[] = [];
  const known = new Map<string, Entry>();
  return {
    numberOf: (working, finding) => {
      const key = JSON.stringify(working);
      let entry = known.get(key);
      if (entry === undefined) {
        entry = { number: entries.length + 1, working, usedBy: [] };
        entries.push(entry);
        known.set(key, entry);
      }
      if (finding !== null && entry.usedBy.at(-1) !== finding) entry.usedBy.push(finding);
      return entry.number;
    },
    all: () => {
      const alike = new Map<string, Entry[]>();
      for (const entry of entries) {
        const way = wayOf(entry.working);
        alike.set(way, [...(alike.get(way) ?? []), entry]);
      }
      return [...alike.values()].flatMap((group) => told(group, printer));
    },
  };
}

/** All of a calculation but its numbers. */
function wayOf({ title, inputs, formula, steps, result, source, validity }: Working): string {
  const names = (values: readonly WorkingValue[]) => values.map((v) => [v.symbol, v.name]);
  return JSON.stringify([title, formula, names(inputs), names(steps), result.symbol, source, validity]);
}

const valuesOf = ({ inputs, steps, result }: Working) => [...inputs, ...steps, result];

function told(group: readonly Entry[], printer: Printer): WorkingContent[] {
  const [first] = group;
  const single = (entry: Entry): WorkingContent => ({
    title: printer.text(entry.working.title),
    number: entry.number,
    usedBy: entry.usedBy,
    columns: [],
    rows: [],
    ...workingParts(entry.working, printer),
  });
  if (group.length === 1) return [single(first)];
  const all = group.map(({ working }) => valuesOf(working).map(shown));
  const result = all[0].length - 1;
  const differs = all[0].flatMap((value, i) =>
    i === result || all.some((row) => row[i] !== value) ? [i] : [],
  );
  if (differs.length > mostColumns) return group.map(single);
  const { text, short } = printer;
  const parts = workingParts(first.working, printer);
  const inputs = first.working.inputs.length;
  const inTable = (i: number, value: string) => (differs.includes(i) ? 'see the table' : value);
  const columns = differs.map((i) => {
    const { symbol, name } = valuesOf(first.working)[i];
    const head = i === result ? name : short(symbol || name, 40);
    return { head, ...unitApart(all.map((row) => row[i])) };
  });
  return [
    {
      ...parts,
      title: text(first.working.title),
      number: first.number,
      usedBy: first.usedBy,
      inputs: parts.inputs.map((input, i) => ({ ...input, value: inTable(i, input.value) })),
      steps: parts.steps.map((step, i) => ({ ...step, value: inTable(inputs + i, step.value) })),
      warnings: [...new Set(group.flatMap(({ working }) => working.warnings))].map(text),
      columns: columns.map(({ head, unit }) => text(unit === '' ? head : `${head}, ${unit}`)),
      rows: group.map(({ number, usedBy }, k) => ({
        number,
        usedBy,
        values: columns.map(({ cells }) => text(cells[k])),
      })),
    },
  ];
}

/** The unit that all cells of a column share, for its head, and what is left in the cells. */
function unitApart(cells: readonly string[]): { unit: string; cells: readonly string[] } {
  const apart = cells.map((cell) => /^(\S+) ([^\d].*)$/.exec(cell));
  const unit = apart[0]?.[2] ?? '';
  if (unit === '' || apart.some((found) => found?.[2] !== unit)) return { unit: '', cells };
  return { unit, cells: apart.map((found) => found![1]) };
}

/** A working as the template prints it. */
export function workingParts(w: Working, { text, short }: Printer): WorkingParts {
  return {
    inputs: w.inputs.map((v) => ({
      symbol: text(v.symbol),
      name: short(v.name, 200),
      value: text(shown(v)),
      from: short(v.from ?? '', 200),
    })),
    formula: w.formula.map(text),
    steps: w.steps.map((v) => ({ label: text(named(v)), value: text(shown(v)) })),
    result: { label: text(named(w.result)), value: text(shown(w.result)) },
    source: text(w.source),
    validity: text(w.validity.replace(/\.$/, '')),
    warnings: w.warnings.map(text),
  };
}

function named({ symbol, name }: WorkingValue): string {
  return symbol === name || symbol === '' ? name : `${symbol}, ${name}`;
}

function shown(v: WorkingValue): string {
  return v.text ?? formatQuantity(v.value, v.unit);
}
