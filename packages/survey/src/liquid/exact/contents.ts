/** What a pool on a triangulated surface contains, by clipped signed prisms under its level. */
import type { Solid } from './solid.ts';

export interface Contents {
  /** Of the liquid. */
  readonly volume_mm3: number;
  /** Of its surface. */
  readonly area_mm2: number;
  /** Of the wall and floor that it wets. */
  readonly wetted_mm2: number;
}

/** Per pool, from the index of the pool of each triangle (-1 for none) and the levels of the pools, mm. */
export function contentsBelow(
  { positions, triangles }: Solid,
  poolOfTriangle: Int32Array,
  levels: readonly number[],
): Contents[] {
  const volume = new Float64Array(levels.length);
  const area = new Float64Array(levels.length);
  const wetted = new Float64Array(levels.length);
  for (let t = 0; t < poolOfTriangle.length; t++) {
    const pool = poolOfTriangle[t];
    if (pool < 0) continue;
    const a = triangles[t * 3] * 3;
    const b = triangles[t * 3 + 1] * 3;
    const c = triangles[t * 3 + 2] * 3;
    const level = levels[pool];
    const da = level - positions[a + 2];
    const db = level - positions[b + 2];
    const dc = level - positions[c + 2];
    const share = wetShare(da, db, dc);
    if (share === 0) continue;
    const abx = positions[b] - positions[a];
    const aby = positions[b + 1] - positions[a + 1];
    const abz = positions[b + 2] - positions[a + 2];
    const acx = positions[c] - positions[a];
    const acy = positions[c + 1] - positions[a + 1];
    const acz = positions[c + 2] - positions[a + 2];
    const nx = aby * acz - abz * acy;
    const ny = abz * acx - abx * acz;
    const nz = abx * acy - aby * acx;
    volume[pool] += (nz / 2) * meanDepth(da, db, dc);
    area[pool] += (nz / 2) * share;
    wetted[pool] += (Math.sqrt(nx * nx + ny * ny + nz * nz) / 2) * share;
  }
  return levels.map((_, k) => ({ volume_mm3: volume[k], area_mm2: area[k], wetted_mm2: wetted[k] }));
}

/** Mean over a triangle of the depth where it is positive, from the depths of its corners. */
export function meanDepth(a: number, b: number, c: number): number {
  const least = Math.min(a, b, c);
  const most = Math.max(a, b, c);
  if (most <= 0) return 0;
  const mean = (a + b + c) / 3;
  if (least >= 0) return mean;
  const middle = a + b + c - least - most;
  if (middle <= 0) return most ** 3 / ((most - middle) * (most - least)) / 3;
  // The dry corner, taken away again.
  return mean - least ** 3 / ((least - middle) * (least - most)) / 3;
}

/** Share of a triangle that lies under the level, from the depths of its corners. */
export function wetShare(a: number, b: number, c: number): number {
  const least = Math.min(a, b, c);
  const most = Math.max(a, b, c);
  if (most <= 0) return 0;
  if (least >= 0) return 1;
  const middle = a + b + c - least - most;
  if (middle <= 0) return most ** 2 / ((most - middle) * (most - least));
  return 1 - least ** 2 / ((least - middle) * (least - most));
}
