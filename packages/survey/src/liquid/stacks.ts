import { type Box, widened } from './box.ts';
import type { Grid } from './grid.ts';
import { extentOf, type Region } from './regions.ts';

/** The intervals of a region by column, in a box of columns around it. Intervals are told by their place in `region.nodes`. */
export interface Stacks {
  /** The region's columns with a margin of one. */
  readonly grid: Grid;
  /** Members of cell c of the box: members[first[c]] to members[first[c + 1]], from low to high. */
  readonly first: Uint32Array;
  readonly members: Uint32Array;
  /** Cell of each member. */
  readonly cellOf: Uint32Array;
  /** Height at which a member is looked at from the side: that of the liquid, or half way up where it is full. */
  readonly eye: Float64Array;
}

export function stacksOf(region: Region): Stacks {
  const { columns } = region.flood;
  const box: Box = widened(extentOf(region), 1, columns.grid);
  const { pitch, nu, u0, v0 } = columns.grid;
  const grid: Grid = {
    u0: u0 + box.i0 * pitch,
    v0: v0 + box.j0 * pitch,
    pitch,
    nu: box.i1 - box.i0 + 1,
    nv: box.j1 - box.j0 + 1,
  };
  const count = region.nodes.length;
  const first = new Uint32Array(grid.nu * grid.nv + 1);
  const cellOf = new Uint32Array(count);
  const eye = new Float64Array(count);
  for (let m = 0; m < count; m++) {
    const n = region.nodes[m];
    const c = columns.columnOf[n];
    const i = c % nu;
    cellOf[m] = ((c - i) / nu - box.j0) * grid.nu + i - box.i0;
    first[cellOf[m] + 1]++;
    eye[m] = columns.top[n] > region.level ? region.level : (columns.bottom[n] + columns.top[n]) / 2;
  }
  for (let c = 1; c < first.length; c++) first[c] += first[c - 1];
  const next = first.slice();
  const members = new Uint32Array(count);
  for (let m = 0; m < count; m++) members[next[cellOf[m]]++] = m;
  return { grid, first, members, cellOf, eye };
}
