import { firstAlong, newHit, newRay } from '../tree/ray.ts';
import { newHeap, pop, push } from './heap.ts';
import type { Eye } from './look.ts';
import type { Region, Segment } from './region.ts';

/** How a gap's wall opens to the air and how far it reaches behind that. */
export interface Reach {
  /** Length of the border that is open, mm. */
  readonly mouth_mm: number;
  /** Farthest way along the wall from the mouth; Infinity where there is no mouth. */
  readonly depth_mm: number;
  /** The deepest point lies at the closed end of the gap, which the wall's own edges give exactly. */
  readonly atFloor: boolean;
}

/** A gap is closed where its middle plane runs into something within this many widths. */
const closedWithin = 1.5;

/** Finds the mouth of a gap's wall, and the way from it to every point of the wall by fast marching. */
export function reachOf(eye: Eye, region: Region): Reach {
  const mouths: Segment[] = [];
  const floors: { segment: Segment; beyond_mm: number }[] = [];
  let mouth_mm = 0;
  for (const segment of region.segments) {
    const beyond_mm = floorBeyond(eye, region, segment);
    if (beyond_mm === undefined) {
      mouths.push(segment);
      mouth_mm += lengthOf(segment);
    } else floors.push({ segment, beyond_mm });
  }
  if (mouths.length === 0) return { mouth_mm, depth_mm: Infinity, atFloor: false };
  const way = marchFrom(region, mouths);
  let middle_mm = 0;
  for (const v of region.vertices) if (Number.isFinite(way[v])) middle_mm = Math.max(middle_mm, way[v]);
  let floor_mm = 0;
  for (const { segment, beyond_mm } of floors) {
    const d = way[segment.vertex] + toBorder(region, segment) + beyond_mm;
    if (Number.isFinite(d)) floor_mm = Math.max(floor_mm, d);
  }
  return { mouth_mm, depth_mm: Math.max(middle_mm, floor_mm), atFloor: floor_mm > 0.999 * middle_mm };
}

const hit = newHit();
const ray = newRay();
// Between coarse round surfaces the middle may lie in drawn material: leaving that is no floor.
ray.crossing = -1;

/** How far beyond its border a gap ends at a floor; undefined where it opens to the air. */
function floorBeyond(
  eye: Eye,
  { views }: Region,
  { a, b, outward: u, normal: n, vertex }: Segment,
): number | undefined {
  const width = views.width_mm[vertex];
  const start = 0.02 * width;
  const p = [0, 1, 2].map((k) => (a[k] + b[k]) / 2 + (n[k] * width) / 2 - u[k] * start);
  const reach = closedWithin * width + start;
  [ray.ox, ray.oy, ray.oz] = p;
  [ray.dx, ray.dy, ray.dz] = u;
  ray.tMax = reach;
  if (!firstAlong(eye.material.tree, ray, hit)) return undefined;
  // The floor of a round-bottomed groove is at most half a width away; the look may pass it at a slant.
  return Math.min(width / 2, Math.max(0, hit.t - start));
}

/**
 * Way along the wall from the nearest mouth to each vertex, mm. Fast marching on triangles (Kimmel and Sethian,
 * Computing geodesic paths on manifolds, 1998) with plane fronts, so that straight mouths give exact ways.
 */
function marchFrom({ mesh, vertices }: Region, mouths: readonly Segment[]): Float64Array {
  const { triangles, xyz, normals } = mesh;
  const way = new Float64Array(xyz.length / 3).fill(Infinity);
  const within = new Uint8Array(way.length);
  for (const v of vertices) within[v] = 1;
  const around = trianglesAround(triangles, within);
  const heap = newHeap();
  // A front may only start from ways that are final, or it would run ahead of itself.
  const final = new Uint8Array(way.length);
  const origin = new Int32Array(way.length).fill(-1);
  const offer = (v: number, d: number, from: number) => {
    if (!within[v] || final[v] || d >= way[v]) return;
    way[v] = d;
    origin[v] = from;
    push(heap, d, v);
  };
  for (const [i, segment] of mouths.entries()) {
    for (const t of around.get(segment.vertex) ?? []) {
      for (let k = 0; k < 3; k++) {
        const v = triangles[3 * t + k];
        if (within[v]) offer(v, toSegment(xyz, v, segment), i);
      }
    }
  }
  for (let top = pop(heap); top; top = pop(heap)) {
    const a = top.value;
    if (final[a]) continue;
    final[a] = 1;
    const mouth = mouths[origin[a]];
    for (const t of around.get(a) ?? []) {
      for (let k = 0; k < 3; k++) {
        const c = triangles[3 * t + k];
        if (c === a || !within[c] || final[c]) continue;
        const b = triangles[3 * t] + triangles[3 * t + 1] + triangles[3 * t + 2] - c - a;
        let d = front(xyz, a, b, c, top.key, final[b] ? way[b] : Infinity);
        // On a flat wall the straight way is known; the front is at a loss in blunt triangles.
        if (isLevelWith(normals, c, mouth)) d = Math.min(d, Math.max(top.key, toSegment(xyz, c, mouth)));
        offer(c, d, origin[a]);
      }
    }
  }
  return way;
}

/** Whether the wall has turned by less than about three degrees from a mouth to a vertex. */
function isLevelWith(normals: Float64Array, v: number, { normal: n }: Segment): boolean {
  return normals[3 * v] * n[0] + normals[3 * v + 1] * n[1] + normals[3 * v + 2] * n[2] > 0.9986;
}

function trianglesAround(triangles: Uint32Array, within: Uint8Array): Map<number, number[]> {
  const around = new Map<number, number[]>();
  for (let h = 0; h < triangles.length; h++) {
    const v = triangles[h];
    if (!within[v]) continue;
    const list = around.get(v);
    if (list) list.push((h / 3) | 0);
    else around.set(v, [(h / 3) | 0]);
  }
  return around;
}

/** Time at which a plane front that passes a and b at their times reaches c; along the edge from a when it cannot. */
function front(xyz: Float64Array, a: number, b: number, c: number, ta: number, tb: number): number {
  let ab = 0;
  let ac = 0;
  let dot = 0;
  for (let k = 0; k < 3; k++) {
    const u = xyz[3 * b + k] - xyz[3 * a + k];
    const v = xyz[3 * c + k] - xyz[3 * a + k];
    ab += u * u;
    ac += v * v;
    dot += u * v;
  }
  const alongEdge = ta + Math.sqrt(ac);
  const l = Math.sqrt(ab);
  const g = (tb - ta) / l;
  if (!Number.isFinite(tb) || Math.abs(g) >= 1) return alongEdge;
  const x = dot / l;
  const y = Math.sqrt(Math.max(0, ac - x * x));
  const rise = Math.sqrt(1 - g * g);
  const foot = x - (y * g) / rise;
  if (foot < -1e-9 * l || foot > l * (1 + 1e-9)) return alongEdge;
  return ta + g * x + rise * y;
}

function toSegment(xyz: Float64Array, v: number, { a, b }: Segment): number {
  let ab = 0;
  let dot = 0;
  for (let k = 0; k < 3; k++) {
    ab += (b[k] - a[k]) ** 2;
    dot += (b[k] - a[k]) * (xyz[3 * v + k] - a[k]);
  }
  const s = Math.min(1, Math.max(0, dot / ab));
  let square = 0;
  for (let k = 0; k < 3; k++) square += (a[k] + s * (b[k] - a[k]) - xyz[3 * v + k]) ** 2;
  return Math.sqrt(square);
}

/** From the vertex beside a border straight across to it: the front runs nearly along a closed border. */
function toBorder({ mesh: { xyz } }: Region, { a, outward, vertex }: Segment): number {
  let d = 0;
  for (let k = 0; k < 3; k++) d += (a[k] - xyz[3 * vertex + k]) * outward[k];
  return Math.max(0, d);
}

export function lengthOf({ a, b }: Segment): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
}
