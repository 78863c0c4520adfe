import { membersOf, newGroups, unite } from '../weld/groups.ts';

/** A straight piece of a line between two parts, mm. */
export interface LinePiece {
  readonly part: number;
  readonly partner: number;
  readonly a: readonly [number, number, number];
  readonly b: readonly [number, number, number];
  /** Absent where surfaces cross. */
  readonly contact?: { readonly number: number };
}

/**
 * Puts pieces of the same two parts together that come within about `near_mm` of each other: pieces that pass through
 * the same cell of a grid or through neighbouring ones, and all around one contact. Numbers of the pieces, a list for each line.
 */
export function joinLines(pieces: readonly LinePiece[], near_mm: number, step: () => void): number[][] {
  const groups = newGroups(pieces.length);
  const grids = new Map<string, Map<number, number>>();
  const firstOf = new Map<number, number>();
  for (const [i, { part, partner, a, b, contact }] of pieces.entries()) {
    if (i % 1024 === 0) step();
    if (contact) {
      const first = firstOf.get(contact.number);
      if (first === undefined) firstOf.set(contact.number, i);
      else unite(groups, i, first);
    }
    const pair = part < partner ? `${part} ${partner}` : `${partner} ${part}`;
    let grid = grids.get(pair);
    if (!grid) {
      grid = new Map();
      grids.set(pair, grid);
    }
    const length = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    const steps = Math.max(1, Math.ceil(length / near_mm));
    for (let s = 0; s <= steps; s++) {
      const cell = (k: number) => Math.floor((a[k] + (s / steps) * (b[k] - a[k])) / near_mm);
      const [x, y, z] = [cell(0), cell(1), cell(2)];
      const key = cellKey(x, y, z);
      const known = grid.get(key);
      if (known !== undefined) {
        unite(groups, i, known);
        continue;
      }
      grid.set(key, i);
      for (let n = 0; n < 27; n++) {
        const beside = grid.get(cellKey(x - 1 + (n % 3), y - 1 + (((n / 3) | 0) % 3), z - 1 + ((n / 9) | 0)));
        if (beside !== undefined) unite(groups, i, beside);
      }
    }
  }
  return membersOf(groups);
}

/** 17 bits of each index, exact within 65 536 cells of the origin and repeating beyond. */
function cellKey(x: number, y: number, z: number): number {
  return ((x & 0x1ffff) * 0x20000 + (y & 0x1ffff)) * 0x20000 + (z & 0x1ffff);
}
