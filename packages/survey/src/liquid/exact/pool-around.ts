/** The exact method on one pool that the columns have found. */
import type { Vec3 } from '@coveline/model';
import { type Region, regionAt } from '../regions.ts';
import { inflated } from './inflate.ts';
import { type ExactPool, exactPools } from './merge-tree.ts';
import type { OuterShell } from './outer-shells.ts';
import { Plumb } from './plumb.ts';
import type { Solid, Union } from './solid.ts';

/** A pool by the exact method, with the columns that stand in it. Places are u, v, z in the turned frame. */
export interface ExactPiece {
  /** The same for a pool that is found again from another region: its deepest point and level, to 0.01 mm. */
  readonly key: string;
  /** What of the region lies in it, filled to its level. */
  readonly region: Region;
  readonly volume_mm3: number;
  readonly area_mm2: number;
  readonly level: number;
  readonly deepest: Vec3;
  readonly spill: Vec3;
}

/** Levels that differ by less are one, mm: a seam may be closed by the contact distance in one method and not in the other. */
const sameLevel_mm = 0.03;
/** Pools under this are slivers of the union, mm3. */
const least_mm3 = 1e-3;

/**
 * The exact pools that the union of the shells around a region keeps under the region's columns. Shells are first made
 * thicker by `thicker_mm`, half of what counts as closed: all faces, so floor and spill point rise alike; what the walls
 * then take from the pool is given back, to first order the wetted area less the surface, times that thickness. `pause`
 * is called now and then, though not within the union, and may throw to stop.
 */
export function exactPoolsUnder(
  region: Region,
  shells: readonly OuterShell[],
  thicker_mm: number,
  union: Union,
  pause?: () => void,
): ExactPiece[] {
  const thick = thicker_mm > 0 ? shells.map((s) => inflated(s, thicker_mm)) : undefined;
  pause?.();
  const solid = thick ? union(thick) : shells[0];
  pause?.();
  const { pools, poolOfTriangle } = exactPools(solid, pause);
  const plumb = new Plumb(solid);
  pause?.();
  const poolUnder = (n: number): number => poolUnderColumn(region, n, plumb, poolOfTriangle, thicker_mm);

  const kept = new Set<number>();
  const every = Math.ceil(region.nodes.length / mostProbes);
  for (let k = 0; k < region.nodes.length; k += every) {
    const pool = poolUnder(region.nodes[k]);
    if (pool >= 0 && pools[pool].volume_mm3 > least_mm3) kept.add(pool);
  }
  const regions = divided(region, pools, kept, thicker_mm, poolUnder);
  return [...kept].map((k) => pieceOf(solid, pools[k], regions.get(k) ?? region, thicker_mm));
}

/** Columns of a region from which the exact pools under them are sought, and how high in the liquid one starts. */
const mostProbes = 400;
const probeHeight = 0.1;

/** Index of the exact pool in which a column of the region stands, or -1. */
function poolUnderColumn(
  { flood: { columns }, level }: Region,
  n: number,
  plumb: Plumb,
  poolOfTriangle: Int32Array,
  thicker_mm: number,
): number {
  const { grid, columnOf, bottom, top } = columns;
  const i = columnOf[n] % grid.nu;
  const z = bottom[n] + probeHeight * (Math.min(top[n], level) - bottom[n]) + 2 * thicker_mm;
  const below = plumb.drop(grid.u0 + i * grid.pitch, grid.v0 + ((columnOf[n] - i) / grid.nu) * grid.pitch, z);
  // A probe that starts in a wall, which was made thicker, falls through it.
  if (below < 0 || z - plumb.height > 2 * (z - bottom[n])) return -1;
  return poolOfTriangle[below];
}

/** The columns of a region by exact pool, where there are several or the level is another one. */
function divided(
  region: Region,
  pools: readonly ExactPool[],
  kept: ReadonlySet<number>,
  thicker_mm: number,
  poolUnder: (n: number) => number,
): Map<number, Region> {
  const levelOf = (k: number): number => pools[k].level - thicker_mm;
  const [only] = kept;
  if (kept.size === 0 || (kept.size === 1 && Math.abs(levelOf(only) - region.level) < sameLevel_mm)) {
    return new Map();
  }
  const { bottom } = region.flood.columns;
  const nodes = new Map<number, number[]>([...kept].map((k) => [k, []]));
  for (const n of region.nodes) {
    const k = poolUnder(n);
    if (k >= 0 && bottom[n] < levelOf(k)) nodes.get(k)?.push(n);
  }
  return new Map(
    [...nodes]
      .filter(([, own]) => own.length > 0)
      .map(([k, own]) => [
        k,
        regionAt(region.flood, Uint32Array.from(own), Math.min(levelOf(k), region.level)),
      ]),
  );
}

function pieceOf({ positions }: Solid, pool: ExactPool, region: Region, thicker: number): ExactPiece {
  const { deepest, spill, level, volume_mm3, area_mm2, wetted_mm2 } = pool;
  const at = (v: number): Vec3 => [positions[v * 3], positions[v * 3 + 1], positions[v * 3 + 2] - thicker];
  return {
    key: [...at(deepest), level].map((c) => Math.round(c * 100)).join(' '),
    region,
    volume_mm3: volume_mm3 + thicker * (wetted_mm2 - area_mm2),
    area_mm2,
    level: level - thicker,
    deepest: at(deepest),
    spill: at(spill),
  };
}
