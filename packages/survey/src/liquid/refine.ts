/**
 * Refinement where the answer depends on it: around the spill point of every pool that counts, and over small pools
 * and hollows as a whole.
 */
import type { TriangleBins } from './bins.ts';
import { type Box, floodBox, widened } from './box.ts';
import { type Flood, spread } from './flood.ts';
import { extentOf, type Region, regionsOf, sameHeight_mm } from './regions.ts';
import type { Soup } from './soup.ts';
import { type SpillPlaces, spillPlace } from './spill.ts';

export interface Refiner {
  readonly soup: Soup;
  readonly bins: TriangleBins;
  readonly contact_mm: number;
  readonly places: SpillPlaces;
}

/** Coarse columns around a spill point on each side, and fine columns per coarse one. */
const spillReach = 3;
const spillSplit = 8;

/** Lowers the levels of the flood where a finer grid around a spill point finds a lower way. True if one fell. */
export function refineSpills(refiner: Refiner, flood: Flood, pools: readonly Region[]): boolean {
  const { soup, bins, contact_mm, places } = refiner;
  const { grid } = flood.columns;
  const changed: number[] = [];
  for (const pool of pools) {
    const spill = spillPlace(flood, pool.nodes[0], places);
    if (!spill) continue;
    const i = Math.floor((spill[0] - grid.u0) / grid.pitch);
    const j = Math.floor((spill[1] - grid.v0) / grid.pitch);
    const box = widened({ i0: i, i1: i + 1, j0: j, j1: j + 1 }, spillReach, { flood });
    const fine = floodBox(soup, bins, flood, box, spillSplit, contact_mm);
    for (let k = 0; k < fine.pairs.length; k += 2) {
      const n = fine.pairs[k];
      const m = fine.pairs[k + 1];
      if (!(fine.flood.level[m] < flood.level[n] - sameHeight_mm)) continue;
      const where = spillPlace(fine.flood, m, new Map());
      if (where) places.set(n, where);
      flood.level[n] = fine.flood.level[m];
      flood.from[n] = n;
      changed.push(n);
    }
  }
  spread(flood, changed);
  return changed.length > 0;
}

/** A small region is counted again with about this many columns over its area, and at most this many in its box. */
const wantedColumns = 12_000;
const mostInBox = 200_000;
const mostSplit = 8;
const margin = 2;

/** The region on a finer grid, in the pieces into which that may divide it; undefined where that gains nothing. */
export function refineRegion(
  refiner: Refiner,
  region: Region,
  mostColumns: number,
): RefinedRegion | undefined {
  const { soup, bins, contact_mm } = refiner;
  const extent = extentOf(region);
  const box = widened(extent, margin, region);
  const split = splitFor(region, box, mostColumns);
  if (split < 2) return undefined;
  const fine = floodBox(soup, bins, region.flood, box, split, contact_mm);
  const known = new Set(region.nodes);
  const own = new Set<number>();
  for (let k = 0; k < fine.pairs.length; k += 2) if (known.has(fine.pairs[k])) own.add(fine.pairs[k + 1]);
  const hollow = region.level === Infinity;
  const pieces = regionsOf(fine.flood).filter(
    (piece) => (piece.level === Infinity) === hollow && piece.nodes.some((n) => own.has(n)),
  );
  if (pieces.some((piece) => reachesBorder(piece))) return undefined;
  return { pieces, columns: fine.flood.columns.grid.nu * fine.flood.columns.grid.nv };
}

export interface RefinedRegion {
  readonly pieces: Region[];
  readonly columns: number;
}

function splitFor({ nodes }: Region, { i0, i1, j0, j1 }: Box, mostColumns: number): number {
  const byArea = Math.sqrt(wantedColumns / nodes.length);
  const byBox = Math.sqrt(Math.min(mostInBox, mostColumns) / ((i1 - i0 + 1) * (j1 - j0 + 1)));
  return Math.floor(Math.min(Math.ceil(byArea), byBox, mostSplit));
}

function reachesBorder(region: Region): boolean {
  const { nu, nv } = region.flood.columns.grid;
  const { i0, i1, j0, j1 } = extentOf(region);
  return i0 === 0 || j0 === 0 || i1 === nu - 1 || j1 === nv - 1;
}
