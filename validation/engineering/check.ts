import { calculations, type InputValue } from '@coveline/engineering';
import { expect, it } from 'vitest';

/** One published or independently computed value, and the calculation that must give it. */
export interface CheckRow {
  /** Id of the value and where it comes from. */
  readonly id: string;
  readonly calculation: string;
  readonly inputs: Readonly<Record<string, InputValue>>;
  readonly expected: Readonly<Record<string, number>>;
  /** Relative, with its reason in `why`. */
  readonly tolerance: number;
  readonly why: string;
}

/** One test a row. */
export function checkRows(rows: readonly CheckRow[]): void {
  it.each(rows.map((row) => [`${row.id}: ${row.calculation}`, row] as const))('%s', (_, row) => {
    const entry = calculations.find((c) => c.name === row.calculation);
    expect(entry, row.calculation).toBeDefined();
    const outcome = entry!.evaluate(row.inputs);
    expect(outcome.kind === 'done' ? 'done' : outcome.reason).toBe('done');
    if (outcome.kind !== 'done') return;
    for (const [key, expected] of Object.entries(row.expected)) {
      const value = outcome.values[key];
      expect(value, `no output ${key}`).toBeTypeOf('number');
      const error = expected === 0 ? Math.abs(value) : Math.abs(value / expected - 1);
      expect(error, `${key}: ${value}, expected ${expected} (${row.why})`).toBeLessThanOrEqual(row.tolerance);
    }
  });
}
