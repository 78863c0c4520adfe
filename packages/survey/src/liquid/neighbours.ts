import type { Passages } from './passages.ts';
import { type Region, sameHeight_mm } from './regions.ts';
import type { Stacks } from './stacks.ts';

/** The four ways out of a column, in the order used by `neighbours` and `Shore`. */
export const plusU = 0;
export const minusU = 1;
export const plusV = 2;
export const minusV = 3;

/** Instead of a member: nothing of the region that way, or more than one interval of it. */
export const none = -1;
export const several = -2;

/**
 * Per member and way: the one member to which it is joined, if that one has no other partner here; else `none` or
 * `several`. A member that holds the surface of the liquid is not joined to one that lies under a roof: the surface
 * ends at the roof, and what lies below it is counted by itself.
 */
export function neighbours(region: Region, { grid, first, members }: Stacks): Int32Array {
  const { columns } = region.flood;
  const { nu, nv } = columns.grid;
  const out = new Int32Array(region.nodes.length * 4).fill(none);
  const memberIn = (cell: number, node: number): number => {
    for (let k = first[cell]; k < first[cell + 1]; k++)
      if (region.nodes[members[k]] === node) return members[k];
    return none;
  };
  const join = (m: number, way: number, other: number): void => {
    out[m * 4 + way] = out[m * 4 + way] === none ? other : several;
  };
  const strip = (passages: Passages, s: number, cell: number, next: number, way: number): void => {
    for (let e = passages.first[s]; e < passages.first[s + 1]; e++) {
      if (passages.height[e] >= region.level - sameHeight_mm) continue;
      const a = memberIn(cell, passages.a[e]);
      const b = memberIn(next, passages.b[e]);
      if (a < 0 || b < 0) continue;
      join(a, way, b);
      join(b, way + 1, a);
    }
  };
  for (let cell = 0; cell < grid.nu * grid.nv; cell++) {
    if (first[cell] === first[cell + 1]) continue;
    const column = columns.columnOf[region.nodes[members[first[cell]]]];
    const i = column % nu;
    const j = (column - i) / nu;
    if (i + 1 < nu) strip(columns.alongU, column, cell, cell + 1, plusU);
    if (j + 1 < nv) strip(columns.alongV, i * nv + j, cell, cell + grid.nu, plusV);
  }
  for (let k = 0; k < out.length; k++) {
    const other = out[k];
    // The partner has several: then neither is joined as one to one.
    if (other >= 0 && out[other * 4 + ((k % 4) ^ 1)] === several) out[k] = several;
  }
  const open = (m: number): boolean => columns.top[region.nodes[m]] > region.level;
  for (let k = 0; k < out.length; k++) if (out[k] >= 0 && open(out[k]) !== open(k >> 2)) out[k] = none;
  return out;
}
