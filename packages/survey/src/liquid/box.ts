/**
 * A part of the grid at a finer pitch.
 *
 * Every level found on any grid is that of a real way out, so it can only be too high. A finer grid that contains
 * the coarse columns starts from their levels and lowers them where it finds a lower way; it never does harm.
 */
import type { Bins } from './bins.ts';
import { buildColumns } from './columns.ts';
import { type Flood, own, settleLevels } from './flood.ts';
import type { Grid } from './grid.ts';
import type { Soup } from './soup.ts';

/** Indices of columns of the coarse grid, both ends included. */
export interface Box {
  readonly i0: number;
  readonly i1: number;
  readonly j0: number;
  readonly j1: number;
}

export interface FineFlood {
  readonly flood: Flood;
  /** Pairs of equal intervals: coarse, fine, coarse, fine … */
  readonly pairs: readonly number[];
}

/** Widens a box by some coarse columns, within the grid. */
export function widened({ i0, i1, j0, j1 }: Box, by: number, { nu, nv }: Grid): Box {
  return {
    i0: Math.max(0, i0 - by),
    i1: Math.min(nu - 1, i1 + by),
    j0: Math.max(0, j0 - by),
    j1: Math.min(nv - 1, j1 + by),
  };
}

/**
 * `top_mm`: surface above this height is left out, so what the result says of ways that lead higher is void.
 * `pause` is called now and then, and may throw to stop.
 */
export function floodBox(
  soup: Soup,
  bins: Bins,
  coarse: Flood,
  box: Box,
  split: number,
  top_mm: number,
  contact_mm: number,
  pause?: () => void,
): FineFlood {
  const outer = coarse.columns.grid;
  const grid = {
    u0: outer.u0 + box.i0 * outer.pitch,
    v0: outer.v0 + box.j0 * outer.pitch,
    pitch: outer.pitch / split,
    nu: (box.i1 - box.i0) * split + 1,
    nv: (box.j1 - box.j0) * split + 1,
  };
  const near = bins.over(grid, -Infinity, top_mm);
  const columns = buildColumns(soup, grid, contact_mm, { near, tick: pause });

  const count = columns.bottom.length;
  const level = new Float64Array(count).fill(Infinity);
  for (let n = 0; n < count; n++) if (columns.bottom[n] === -Infinity) level[n] = -Infinity;
  const flood = { columns, level, from: own(count) };
  const pairs = equalIntervals(coarse, flood, box, split, top_mm);
  for (let k = 0; k < pairs.length; k += 2) {
    const given = coarse.level[pairs[k]];
    if (given === -Infinity || given === Infinity) continue;
    level[pairs[k + 1]] = given;
  }
  settleLevels(flood, pause);
  return { flood, pairs };
}

/** Intervals over a box that are the same in both grids, as in `FineFlood.pairs`. `origin`: the box of the fine grid. */
export function equalIntervals(
  coarse: Flood,
  fine: Pick<Flood, 'columns'>,
  { i0, i1, j0, j1 }: Box,
  split: number,
  top_mm: number,
  origin: Box = { i0, i1, j0, j1 },
): number[] {
  const pairs: number[] = [];
  const big = coarse.columns;
  const small = fine.columns;
  for (let j = j0; j <= j1; j++) {
    for (let i = i0; i <= i1; i++) {
      const c = j * big.grid.nu + i;
      const d = (j - origin.j0) * split * small.grid.nu + (i - origin.i0) * split;
      let m = small.first[d];
      for (let n = big.first[c]; n < big.first[c + 1]; n++) {
        const top = big.top[n] > top_mm ? Infinity : big.top[n];
        while (m < small.first[d + 1] && small.top[m] < top - rounding_mm && small.top[m] <= top_mm) m++;
        if (m === small.first[d + 1]) break;
        const sameTop = near(small.top[m], top) || small.top[m] > top_mm;
        if (sameTop && near(small.bottom[m], big.bottom[n])) pairs.push(n, m);
      }
    }
  }
  return pairs;
}

/** The two grids compute the place of a shared column in different ways, so its heights may differ in the last digits. */
const rounding_mm = 1e-6;

function near(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) < rounding_mm;
}
