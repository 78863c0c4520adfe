export interface Spot {
  /** px from the top. */
  readonly top: number;
  /** Indices that get a mark of their own. */
  readonly shown: readonly number[];
  /** Indices that are only counted. */
  readonly more: readonly number[];
}

/** Marks are 24 px high, so that they can be hit (WCAG 2.5.8). */
const row_px = 24;

/**
 * Puts marks into rows of two. Rows are fixed to the spot of the first mark that falls into them; `chosen` always
 * gets a mark of its own. With more than two in a row the second place counts the rest.
 */
export function stack(tops: readonly number[], chosen: number): Spot[] {
  const rows = new Map<number, number[]>();
  tops.forEach((top, index) => {
    const near = [...rows.keys()].find((r) => Math.abs(r - top) < row_px);
    const row = near ?? top;
    rows.set(row, [...(rows.get(row) ?? []), index]);
  });
  return [...rows].map(([top, all]) => {
    const ordered = all.includes(chosen) ? [chosen, ...all.filter((i) => i !== chosen)] : all;
    return ordered.length <= 2
      ? { top, shown: ordered, more: [] }
      : { top, shown: ordered.slice(0, 1), more: ordered.slice(1) };
  });
}
