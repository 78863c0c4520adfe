import type { Ways } from './depth.ts';
import type { Region } from './region.ts';
import { type Border, straightWay } from './straight.ts';

/** Per corner i and corner j: way at j by the front that passes i. */
const f = new Float64Array(9);
/** Shares of the three corners at the place that `greatestLeast` found. */
const share = new Float64Array(3);
const place = new Float64Array(3);
const direction = new Float64Array(3);

/**
 * The farthest way in a region, mm, at least `known_mm`: fronts from several mouths meet within the triangles of the
 * mesh, and the farthest point is where they do. In each triangle the way is the least of the plane fronts that pass
 * its corners; its greatest value lies at a corner, where two fronts meet on an edge, or where all three meet.
 */
export function deepestWithin(
  { mesh, first, around, way, onward }: Ways,
  region: Region,
  border: Border,
  known_mm: number,
): number {
  const { triangles, xyz } = mesh;
  const { owner } = region;
  const own = region.vertices[0];
  let deepest = known_mm;
  for (const v of region.vertices) {
    for (let n = first[v]; n < first[v + 1]; n++) {
      const t = 3 * around[n];
      // Once per triangle, from its first corner.
      if (triangles[t] !== v || owner[triangles[t + 1]] !== own || owner[triangles[t + 2]] !== own) continue;
      if (way[v] + way[triangles[t + 1]] + way[triangles[t + 2]] === Infinity) continue;
      let bound = Infinity;
      for (let i = 0; i < 3; i++) {
        const p = triangles[t + i];
        let highest = Number.NEGATIVE_INFINITY;
        for (let j = 0; j < 3; j++) {
          const q = triangles[t + j];
          let rise = 0;
          for (let k = 0; k < 3; k++) rise += onward[3 * p + k] * (xyz[3 * q + k] - xyz[3 * p + k]);
          f[3 * i + j] = way[p] + rise;
          highest = Math.max(highest, f[3 * i + j]);
        }
        bound = Math.min(bound, highest);
      }
      if (bound <= deepest) continue;
      let depth = greatestLeast();
      place.fill(0);
      for (let i = 0; i < 9; i++)
        place[i % 3] += share[(i / 3) | 0] * xyz[3 * triangles[t + ((i / 3) | 0)] + (i % 3)];
      depth = straightWay(border, place, 0, mesh.normals, 3 * v, depth, direction);
      deepest = Math.max(deepest, depth);
    }
  }
  return deepest;
}

/** Greatest value in the triangle of the least of the three planes in `f`. */
function greatestLeast(): number {
  let best = tryAt(1, 0, 0, Number.NEGATIVE_INFINITY);
  best = tryAt(0, 1, 0, best);
  best = tryAt(0, 0, 1, best);
  for (let p = 0; p < 3; p++) {
    const q = (p + 1) % 3;
    for (let j = 0; j < 3; j++) {
      const m = (j + 1) % 3;
      // Along the edge from corner j to corner m planes p and q are equal at s.
      const d0 = f[3 * p + j] - f[3 * q + j];
      const d1 = f[3 * p + m] - f[3 * q + m];
      if (d0 === d1) continue;
      const s = d0 / (d0 - d1);
      if (s <= 0 || s >= 1) continue;
      best = tryAt(
        j === 0 ? 1 - s : m === 0 ? s : 0,
        j === 1 ? 1 - s : m === 1 ? s : 0,
        j === 2 ? 1 - s : m === 2 ? s : 0,
        best,
      );
    }
  }
  // All three equal: two equations in the shares of corners 1 and 2.
  const a0 = f[0] - f[3];
  const a1 = f[1] - f[4] - a0;
  const a2 = f[2] - f[5] - a0;
  const b0 = f[0] - f[6];
  const b1 = f[1] - f[7] - b0;
  const b2 = f[2] - f[8] - b0;
  const det = a1 * b2 - a2 * b1;
  if (Math.abs(det) < 1e-12) return best;
  const s = (b0 * a2 - a0 * b2) / det;
  const t = (a0 * b1 - b0 * a1) / det;
  return s < 0 || t < 0 || s + t > 1 ? best : tryAt(1 - s - t, s, t, best);
}

/** Takes a place when the least of the planes is greater there than before. */
function tryAt(a: number, b: number, c: number, before: number): number {
  const least = Math.min(
    a * f[0] + b * f[1] + c * f[2],
    a * f[3] + b * f[4] + c * f[5],
    a * f[6] + b * f[7] + c * f[8],
  );
  if (least <= before) return before;
  share[0] = a;
  share[1] = b;
  share[2] = c;
  return least;
}
