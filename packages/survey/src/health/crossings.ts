/** Edges that pass through a triangle: of another part, or of their own. */
import type { Model } from '@coveline/model';
import { firstAlong, newHit, newRay, type Ray } from '../tree/ray.ts';
import type { Tree } from '../tree/tree.ts';
import { weldOf } from '../weld/weld.ts';

export interface Crossing {
  /** Indices of parts, the lower first; equal where a part cuts itself. */
  readonly a: number;
  readonly b: number;
  /** How many edges of either pass through the other. */
  readonly edges: number;
}

/** An edge passes through where both of its ends lie farther than this from the plane of the triangle, mm. */
const through_mm = 0.01;
/** An edge through a heap of parts is followed this often. */
const mostHits = 16;
/** Edges between two looks at the clock. */
const batch = 4096;

/** Sorted by the parts. `onBatch` is told how far it got, and may throw. */
export function crossingsOf(model: Model, tree: Tree, onBatch: (done: number) => void): readonly Crossing[] {
  const counts = new Map<number, number>();
  const parts = model.parts.length;
  const ray = newRay();
  const hit = newHit();
  let done = 0;
  const total = model.parts.reduce((sum, p) => sum + model.shapes[p.shape].triangles.length, 0);
  for (let p = 0; p < parts; p++) {
    const { triangles, twin } = weldOf(model.shapes[model.parts[p].shape]);
    const first = tree.start[p];
    for (let h = 0; h < triangles.length; h++) {
      if (done++ % batch === 0) onBatch(done / total);
      // Each edge once; a border has one side only.
      if (twin[h] >= 0 && twin[h] < h) continue;
      const slot = tree.slotOf[first + ((h / 3) | 0)];
      const k = h % 3;
      aimAlong(ray, tree.corners, slot * 9 + k * 3, slot * 9 + ((k + 1) % 3) * 3);
      for (let n = 0; n < mostHits && ray.tMin < ray.tMax && firstAlong(tree, ray, hit); n++) {
        if (passes(tree.corners, hit.slot * 9, ray)) {
          const key = Math.min(p, hit.part) * parts + Math.max(p, hit.part);
          counts.set(key, (counts.get(key) ?? 0) + 1);
        }
        ray.tMin = hit.t + 1e-9;
      }
    }
  }
  return [...counts]
    .sort(([x], [y]) => x - y)
    .map(([key, edges]) => ({ a: Math.floor(key / parts), b: key % parts, edges }));
}

/** From one corner to the other, without the ends themselves: neighbours meet there. */
function aimAlong(ray: Ray, c: Float64Array, from: number, to: number): void {
  ray.ox = c[from];
  ray.oy = c[from + 1];
  ray.oz = c[from + 2];
  ray.dx = c[to] - ray.ox;
  ray.dy = c[to + 1] - ray.oy;
  ray.dz = c[to + 2] - ray.oz;
  const length = Math.hypot(ray.dx, ray.dy, ray.dz);
  const margin = length > 0 ? through_mm / length : 1;
  ray.tMin = margin;
  ray.tMax = 1 - margin;
}

/** Whether both ends of the edge lie clearly on either side of the triangle. */
function passes(c: Float64Array, at: number, { ox, oy, oz, dx, dy, dz }: Ray): boolean {
  const ux = c[at + 3] - c[at];
  const uy = c[at + 4] - c[at + 1];
  const uz = c[at + 5] - c[at + 2];
  const vx = c[at + 6] - c[at];
  const vy = c[at + 7] - c[at + 1];
  const vz = c[at + 8] - c[at + 2];
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const size = Math.hypot(nx, ny, nz);
  if (size === 0) return false;
  const start = ((ox - c[at]) * nx + (oy - c[at + 1]) * ny + (oz - c[at + 2]) * nz) / size;
  const end = start + (dx * nx + dy * ny + dz * nz) / size;
  return start * end < 0 && Math.min(Math.abs(start), Math.abs(end)) > through_mm;
}
