/**
 * Refinement where the answer depends on it: around the spill point of every pool that counts, and over small pools
 * and hollows as a whole. Along narrow bores: `refine-bores.ts`.
 */
import type { Bins } from './bins.ts';
import { type Box, floodBox, widened } from './box.ts';
import { type Flood, spread } from './flood.ts';
import {
  extentOf,
  heightsOf,
  type Region,
  regionsOf,
  sameHeight_mm,
  sealedIntervals,
  wetIntervals,
} from './regions.ts';
import type { Soup } from './soup.ts';
import { type SpillPlaces, spillPlace } from './spill.ts';

export interface Refiner {
  readonly soup: Soup;
  readonly bins: Bins;
  readonly contact_mm: number;
  /** Where spill points lie that were found on a finer grid. */
  readonly places: SpillPlaces;
  /** Spill points that were looked at, by column and level. */
  readonly seen: Set<string>;
}

/** Coarse columns around a spill point on each side, and fine columns per coarse one. */
const spillReach = 2;
const spillSplit = 5;
/** Surface this far above the level of a region has no bearing on it. */
export const headroom_mm = 1;

/**
 * Lowers the levels of the flood where a finer grid around a spill point finds a lower way. True if one fell. `pause` is
 * called now and then, and may throw to stop.
 */
export function refineSpills(
  refiner: Refiner,
  flood: Flood,
  pools: readonly Region[],
  pause?: () => void,
): boolean {
  const { places, seen } = refiner;
  const changed: number[] = [];
  for (const { nodes, level } of pools) {
    const spill = spillPlace(flood, nodes[0], places);
    if (!spill) continue;
    pause?.();
    const key = keyOf(flood, spill, level);
    if (seen.has(key)) continue;
    seen.add(key);
    changed.push(...lowerIn(refiner, flood, boxAround(flood, spill), spillSplit, level, pause));
  }
  spread(flood, changed, pause);
  return changed.length > 0;
}

/** The coarse columns around a place. */
export function boxAround({ columns: { grid } }: Flood, [u, v]: readonly [number, number]): Box {
  const i = Math.floor((u - grid.u0) / grid.pitch);
  const j = Math.floor((v - grid.v0) / grid.pitch);
  return widened({ i0: i, i1: i + 1, j0: j, j1: j + 1 }, spillReach, grid);
}

/** Intervals of a box whose levels, up to `level`, a finer grid lowers; they are lowered, but not spread yet. */
export function lowerIn(
  { soup, bins, contact_mm, places, seen }: Refiner,
  flood: Flood,
  box: Box,
  split: number,
  level: number,
  pause?: () => void,
): number[] {
  const fine = floodBox(soup, bins, flood, box, split, level + headroom_mm, contact_mm, pause);
  const changed: number[] = [];
  for (let k = 0; k < fine.pairs.length; k += 2) {
    const n = fine.pairs[k];
    const found = fine.flood.level[fine.pairs[k + 1]];
    if (found > level || found >= flood.level[n] - sameHeight_mm) continue;
    const where = spillPlace(fine.flood, fine.pairs[k + 1], new Map());
    if (where) {
      places.set(n, where);
      seen.add(keyOf(flood, where, found));
    }
    flood.level[n] = found;
    flood.from[n] = n;
    changed.push(n);
  }
  return changed;
}

function keyOf({ columns: { grid } }: Flood, [u, v]: readonly [number, number], level: number): string {
  return `${Math.floor((u - grid.u0) / grid.pitch)} ${Math.floor((v - grid.v0) / grid.pitch)} ${level}`;
}

/** A small region is counted again with about this many columns over its area, and at most this many in its box. */
const wantedColumns = 800;
const mostInBox = 20_000;
const mostSplit = 8;
const margin = 2;

/** The region on a finer grid, in the pieces into which that may divide it; undefined where that gains nothing. */
export function refineRegion(
  refiner: Refiner,
  region: Region,
  pause?: () => void,
): readonly Region[] | undefined {
  const { soup, bins, contact_mm } = refiner;
  const box = widened(extentOf(region), margin, region.flood.columns.grid);
  const split = splitFor(region, box);
  if (split < 2) return undefined;
  const top = heightsOf(region).high + headroom_mm;
  const fine = floodBox(soup, bins, region.flood, box, split, top, contact_mm, pause);
  const known = new Set(region.nodes);
  const own = new Uint8Array(fine.flood.level.length);
  for (let k = 0; k < fine.pairs.length; k += 2) if (known.has(fine.pairs[k])) own[fine.pairs[k + 1]] = 1;
  const among = region.level === Infinity ? sealedIntervals(fine.flood) : wetIntervals(fine.flood);
  const pieces = regionsOf(fine.flood, among).filter((piece) => piece.nodes.some((n) => own[n] === 1));
  return pieces.some((piece) => reachesBorder(piece)) ? undefined : pieces;
}

function splitFor({ nodes }: Region, { i0, i1, j0, j1 }: Box): number {
  const byArea = Math.sqrt(wantedColumns / nodes.length);
  const byBox = Math.sqrt(mostInBox / ((i1 - i0 + 1) * (j1 - j0 + 1)));
  return Math.floor(Math.min(Math.round(byArea), byBox, mostSplit));
}

function reachesBorder(region: Region): boolean {
  const { nu, nv } = region.flood.columns.grid;
  const { i0, i1, j0, j1 } = extentOf(region);
  return i0 === 0 || j0 === 0 || i1 === nu - 1 || j1 === nv - 1;
}
