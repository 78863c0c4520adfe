/** The exact method on one pool that the columns have found. */
import type { Region } from '../regions.ts';
import type { Soup } from '../soup.ts';
import { inflated } from './inflate.ts';
import { exactPools } from './merge-tree.ts';
import { Plumb } from './plumb.ts';
import type { Solid, Union } from './solid.ts';

export interface ExactPart {
  /** The same for a pool that is found again from another region: its deepest point and level, to 0.01 mm. */
  readonly key: string;
  readonly volume_mm3: number;
}

/**
 * The exact pools that the union of the parts around a region keeps under the region's columns. Several parts are first
 * made thicker by half of what counts as touching: all faces, so floor and spill point rise alike.
 */
export function exactPoolsUnder(
  soup: Soup,
  region: Region,
  parts: readonly number[],
  contact_mm: number,
  union: Union,
): ExactPart[] {
  const solids = parts.map((part) => solidOf(soup, part));
  const solid = union(solids.length > 1 ? solids.map((s) => inflated(s, contact_mm / 2)) : solids);
  const { pools, poolOfTriangle } = exactPools(solid);
  const plumb = new Plumb(solid);
  const { columns } = region.flood;
  const { grid, columnOf, bottom, top } = columns;
  const kept = new Set<number>();
  const every = Math.ceil(region.nodes.length / mostProbes);
  for (let k = 0; k < region.nodes.length; k += every) {
    const n = region.nodes[k];
    const i = columnOf[n] % grid.nu;
    const z = bottom[n] + probeHeight * (Math.min(top[n], region.level) - bottom[n]) + contact_mm;
    const below = plumb.drop(
      grid.u0 + i * grid.pitch,
      grid.v0 + ((columnOf[n] - i) / grid.nu) * grid.pitch,
      z,
    );
    // A probe that starts in a wall, which was made thicker, falls through it.
    if (below < 0 || z - plumb.height > 2 * (z - bottom[n])) continue;
    if (poolOfTriangle[below] >= 0) kept.add(poolOfTriangle[below]);
  }
  return [...kept].map((k) => {
    const { deepest, level, volume_mm3 } = pools[k];
    const at = [...solid.positions.subarray(deepest * 3, deepest * 3 + 3), level];
    return { key: at.map((c) => Math.round(c * 100)).join(' '), volume_mm3 };
  });
}

/** Columns of a region from which the exact pools under them are sought, and how high in the liquid one starts. */
const mostProbes = 400;
const probeHeight = 0.1;

/** The closed shells of a part. */
export function solidOf({ uvz, triangles, part, sheet }: Soup, index: number): Solid {
  const start = lowerBound(part, index);
  const end = lowerBound(part, index + 1);
  const number = new Map<number, number>();
  const corners: number[] = [];
  for (let t = start; t < end; t++) {
    if (sheet[t]) continue;
    for (let c = 0; c < 3; c++) {
      const v = triangles[t * 3 + c];
      let own = number.get(v);
      if (own === undefined) {
        own = number.size;
        number.set(v, own);
      }
      corners.push(own);
    }
  }
  const positions = new Float64Array(number.size * 3);
  for (const [v, own] of number) positions.set(uvz.subarray(v * 3, v * 3 + 3), own * 3);
  return { positions, triangles: Uint32Array.from(corners) };
}

/** First index whose value is not below `value` in an ascending array. */
export function lowerBound(sorted: Uint32Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
