import type { Table } from '@coveline/engineering';
import { formatUnit } from '@coveline/quantity';

export interface Series {
  readonly name: string;
  readonly values: readonly number[];
}

/** Lines over a common axis. */
export interface ChartData {
  readonly title: string;
  readonly across: string;
  /** Unit of all lines as people read it; empty for pure numbers. */
  readonly unit: string;
  readonly x: readonly number[];
  readonly series: readonly Series[];
}

/** The chart of a table whose first column rises and whose other numbers share a unit; null for any other. */
export function chartOf({ title, columns, rows }: Table): ChartData | null {
  const numeric = columns.map((_, i) => rows.every((row) => Number.isFinite(row[i])));
  const lines = columns.map((_, i) => i).filter((i) => i > 0 && numeric[i]);
  if (rows.length < 3 || !numeric[0] || lines.length === 0) return null;
  const valuesOf = (i: number) => rows.map((row) => row[i] as number);
  const x = valuesOf(0);
  if (x.some((value, i) => i > 0 && value <= x[i - 1])) return null;
  const unit = columns[lines[0]].unit;
  if (lines.some((i) => columns[i].unit !== unit)) return null;
  const written = unit === '1' ? '' : formatUnit(unit);
  const first = columns[0];
  return {
    title,
    across: first.unit === '1' ? first.name : `${first.name}, ${formatUnit(first.unit)}`,
    unit: written,
    x,
    series: lines.map((i) => ({ name: columns[i].name, values: valuesOf(i) })),
  };
}

/** Round values that divide a range into some four to eight steps, the ends of the range inside them. */
export function ticksOf(low: number, high: number): number[] {
  const span = high - low || Math.abs(high) || 1;
  const power = 10 ** Math.floor(Math.log10(span / 4));
  const step = [1, 2, 5, 10].map((n) => n * power).find((s) => span / s <= 6) ?? power * 10;
  const first = Math.floor(low / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(high / step - 1e-9));
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}
