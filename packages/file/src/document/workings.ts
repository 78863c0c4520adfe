/** Calculations, numbered in the order in which the findings use them; one that is used twice is shown once. */
import { formatQuantity, type Working, type WorkingValue } from '@coveline/quantity';
import type { WorkingContent, WorkingParts } from './content.ts';
import type { Printer } from './printable.ts';

export interface WorkingBook {
  /** Number of the calculation, new or known. `finding`: the one that uses it, null for other chapters. */
  readonly numberOf: (working: Working, finding: number | null) => number;
  readonly all: () => readonly WorkingContent[];
}

export function newWorkingBook(printer: Printer): WorkingBook {
  const entries: { working: Working; usedBy: number[] }[] = [];
  const known = new Map<string, number>();
  return {
    numberOf: (working, finding) => {
      const key = JSON.stringify(working);
      let index = known.get(key);
      if (index === undefined) {
        index = entries.push({ working, usedBy: [] }) - 1;
        known.set(key, index);
      }
      const { usedBy } = entries[index];
      if (finding !== null && usedBy.at(-1) !== finding) usedBy.push(finding);
      return index + 1;
    },
    all: () =>
      entries.map(({ working, usedBy }, i) => ({
        number: i + 1,
        title: printer.text(working.title),
        ...workingParts(working, printer),
        usedBy,
      })),
  };
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
    validity: text(w.validity),
    warnings: w.warnings.map(text),
  };
}

function named({ symbol, name }: WorkingValue): string {
  return symbol === name || symbol === '' ? name : `${symbol}, ${name}`;
}

function shown(v: WorkingValue): string {
  return v.text ?? formatQuantity(v.value, v.unit);
}
