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

/** Material is shared where it overlaps by more than this and what the tessellation of round faces leaves, mm. */
const least_mm = 0.01;
/** An edge through a heap of parts is followed this often. */
const mostHits = 16;
/** Edges between two looks at the clock. */
const batch = 4096;

/**
 * Sorted by the parts. Every edge is drawn into its own material by what does not count as an overlap: round parts
 * that touch then do not meet, though their facets do. `onBatch` is told how far it got, and may throw.
 */
export function crossingsOf(model: Model, tree: Tree, onBatch: (done: number) => void): readonly Crossing[] {
  const counts = new Map<number, number>();
  const parts = model.parts.length;
  const through = least_mm + 2 * model.deviation_mm;
  const ray = newRay();
  const hit = newHit();
  const inward = new Float64Array(3);
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
      inward.fill(0);
      addNormal(inward, tree.corners, slot * 9);
      if (twin[h] >= 0) addNormal(inward, tree.corners, tree.slotOf[first + ((twin[h] / 3) | 0)] * 9);
      const k = h % 3;
      aimAlong(ray, tree.corners, slot * 9 + k * 3, slot * 9 + ((k + 1) % 3) * 3);
      drawIn(ray, inward, through);
      for (let n = 0; n < mostHits && ray.tMin < ray.tMax && firstAlong(tree, ray, hit); n++) {
        const itself = hit.part === p;
        if (
          passes(tree.corners, hit.slot * 9, ray, through) &&
          (!itself || cutsAsDrawn(tree, p, slot * 9, k))
        ) {
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

const drawn = newRay();
const cut = newHit();

/** Whether the edge passes through its own part where it was drawn as well: beside a thin wedge it does not. */
function cutsAsDrawn(tree: Tree, part: number, at: number, k: number): boolean {
  aimAlong(drawn, tree.corners, at + k * 3, at + ((k + 1) % 3) * 3);
  for (let n = 0; n < mostHits && firstAlong(tree, drawn, cut); n++) {
    if (cut.part === part && passes(tree.corners, cut.slot * 9, drawn, least_mm)) return true;
    drawn.tMin = cut.t + 1e-9;
  }
  return false;
}

/** From one corner to the other. */
function aimAlong(ray: Ray, c: Float64Array, from: number, to: number): void {
  ray.ox = c[from];
  ray.oy = c[from + 1];
  ray.oz = c[from + 2];
  ray.dx = c[to] - ray.ox;
  ray.dy = c[to + 1] - ray.oy;
  ray.dz = c[to + 2] - ray.oz;
  ray.tMin = 0;
  ray.tMax = 1;
}

function drawIn(ray: Ray, outward: Float64Array, by: number): void {
  const length = Math.hypot(outward[0], outward[1], outward[2]);
  if (length === 0) return;
  ray.ox -= (outward[0] / length) * by;
  ray.oy -= (outward[1] / length) * by;
  ray.oz -= (outward[2] / length) * by;
}

/** Adds the unit normal of the triangle at `at`. */
function addNormal(out: Float64Array, c: Float64Array, at: number): void {
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
  if (size === 0) return;
  out[0] += nx / size;
  out[1] += ny / size;
  out[2] += nz / size;
}

const normal = new Float64Array(3);

/** Whether both ends of the edge lie clearly on either side of the triangle; an end of its own face does not. */
function passes(c: Float64Array, at: number, { ox, oy, oz, dx, dy, dz }: Ray, through: number): boolean {
  normal.fill(0);
  addNormal(normal, c, at);
  const start = (ox - c[at]) * normal[0] + (oy - c[at + 1]) * normal[1] + (oz - c[at + 2]) * normal[2];
  const end = start + dx * normal[0] + dy * normal[1] + dz * normal[2];
  return start * end < 0 && Math.min(Math.abs(start), Math.abs(end)) > 1.001 * through;
}
