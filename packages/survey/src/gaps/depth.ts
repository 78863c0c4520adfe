import { firstAlong, newHit, newRay } from '../tree/ray.ts';
import { newHeap, pop, push } from './heap.ts';
import type { Eye } from './look.ts';
import type { Region, Segment } from './region.ts';
import { deepestWithin } from './ridge.ts';
import { type Border, borderOf, straightWay } from './straight.ts';
import type { WallMesh } from './wall-mesh.ts';

/** How a gap's wall opens to the air and how far it reaches behind that. */
export interface Reach {
  /** Length of the border that is open, mm. */
  readonly mouth_mm: number;
  /** Farthest way along the wall from the mouth; Infinity where there is no mouth. */
  readonly depth_mm: number;
}

/** Ways on one wall mesh; its regions share the arrays, for they have no vertex in common. */
export interface Ways {
  readonly mesh: WallMesh;
  /** Triangles around vertex v: `around[first[v]]` to `around[first[v + 1] - 1]`. */
  readonly first: Uint32Array;
  readonly around: Uint32Array;
  /** From the nearest mouth to each vertex, mm. */
  readonly way: Float64Array;
  /** Unit direction in which the way grows, xyz per vertex. */
  readonly onward: Float64Array;
  /** Number of the border piece that the way begins at, among those of the region. */
  readonly origin: Int32Array;
  /** 1 once the way is known. */
  readonly final: Uint8Array;
}

export function newWays(mesh: WallMesh): Ways {
  const { triangles } = mesh;
  const n = mesh.xyz.length / 3;
  const first = new Uint32Array(n + 1);
  for (let h = 0; h < triangles.length; h++) first[triangles[h] + 1]++;
  for (let v = 0; v < n; v++) first[v + 1] += first[v];
  const around = new Uint32Array(triangles.length);
  const fill = first.slice(0, n);
  for (let h = 0; h < triangles.length; h++) around[fill[triangles[h]]++] = (h / 3) | 0;
  return {
    mesh,
    first,
    around,
    way: new Float64Array(n).fill(Infinity),
    onward: new Float64Array(3 * n),
    origin: new Int32Array(n),
    final: new Uint8Array(n),
  };
}

/** A gap is closed where its middle plane runs into something within this many widths, or so near at the tip of a wedge. */
const closedWithin = 1.5;
const closedWithin_mm = 0.3;
/** The last width found before a contact, over the contact distance. */
const almostTouching = 1.2;
/** Shorter pieces of a border are noise of the halving. */
const noise_mm = 0.02;
/** Looks beyond the border between two looks at the signal. */
const looksAtOnce = 4096;

/** Finds the mouth of a gap's wall, and the way from it to every point of the wall by fast marching. */
export function reachOf(eye: Eye, region: Region, ways: Ways, step: () => void): Reach {
  const mouths: Segment[] = [];
  const floors: { segment: Segment; beyond_mm: number }[] = [];
  let mouth_mm = 0;
  for (const [i, segment] of region.segments.entries()) {
    if (i % looksAtOnce === 0) step();
    const beyond_mm = touchesBeyond(eye, region, segment) ? 0 : floorBeyond(eye, segment);
    if (beyond_mm === undefined) {
      mouths.push(segment);
      mouth_mm += lengthOf(segment);
    } else if (lengthOf(segment) > noise_mm) floors.push({ segment, beyond_mm });
  }
  if (mouths.length === 0) return { mouth_mm, depth_mm: Infinity };
  marchFrom(ways, region, mouths, step);
  const border = borderOf(
    mouths,
    floors.map(({ segment }) => segment),
  );
  straighten(ways, region, border);
  const { way } = ways;
  let depth_mm = 0;
  for (const v of region.vertices) if (Number.isFinite(way[v])) depth_mm = Math.max(depth_mm, way[v]);
  for (const { segment, beyond_mm } of floors) {
    const d = wayTo(ways, border, segment) + beyond_mm;
    if (Number.isFinite(d)) depth_mm = Math.max(depth_mm, d);
  }
  return { mouth_mm, depth_mm: deepestWithin(ways, region, border, depth_mm) };
}

const hit = newHit();
const ray = newRay();
// Between coarse round surfaces the middle may lie in drawn material: leaving that is no floor.
ray.crossing = -1;

/** Whether a gap between two parts ends where they touch. */
function touchesBeyond(eye: Eye, { mesh, views }: Region, { width, vertex }: Segment): boolean {
  return views.part[vertex] !== mesh.part && width < almostTouching * eye.contact_mm;
}

/** How far beyond its border a gap ends at a floor; undefined where it opens to the air. */
function floorBeyond(eye: Eye, { a, b, outward: u, normal: n, width }: Segment): number | undefined {
  const start = 0.02 * width;
  ray.ox = (a[0] + b[0] + n[0] * width) / 2 - u[0] * start;
  ray.oy = (a[1] + b[1] + n[1] * width) / 2 - u[1] * start;
  ray.oz = (a[2] + b[2] + n[2] * width) / 2 - u[2] * start;
  [ray.dx, ray.dy, ray.dz] = u;
  ray.tMax = Math.max(closedWithin * width, closedWithin_mm) + start;
  if (!firstAlong(eye.material.tree, ray, hit)) return undefined;
  // The floor of a round-bottomed groove is at most half a width away; the look may pass it at a slant.
  return Math.min(width / 2, Math.max(0, hit.t - start));
}

const foot = new Float64Array(3);
const heading = new Float64Array(3);

/**
 * Way along the wall from the nearest mouth to each vertex, mm. Fast marching on triangles (Kimmel and Sethian,
 * Computing geodesic paths on manifolds, 1998) with plane fronts, so that straight mouths give exact ways.
 */
function marchFrom(ways: Ways, region: Region, mouths: readonly Segment[], step: () => void): void {
  // A front may only start from ways that are final, or it would run ahead of itself.
  const { way, onward, first, around, origin, final } = ways;
  const { triangles, xyz, normals } = ways.mesh;
  const { owner } = region;
  const own = region.vertices[0];
  const heap = newHeap();
  const offer = (v: number, d: number, from: number) => {
    if (d >= way[v]) return;
    way[v] = d;
    onward.set(heading, 3 * v);
    origin[v] = from;
    push(heap, d, v);
  };
  for (const [i, segment] of mouths.entries()) {
    const { vertex } = segment;
    for (let j = first[vertex]; j < first[vertex + 1]; j++) {
      for (let k = 0; k < 3; k++) {
        const v = triangles[3 * around[j] + k];
        if (owner[v] === own) offer(v, toSegment(xyz, v, segment, heading), i);
      }
    }
  }
  for (let top = pop(heap), n = 0; top; top = pop(heap), n++) {
    if (n % looksAtOnce === 0) step();
    const a = top.value;
    if (final[a] === 1) continue;
    final[a] = 1;
    const from = origin[a];
    const mouth = mouths[from];
    for (let j = first[a]; j < first[a + 1]; j++) {
      const t = 3 * around[j];
      for (let k = 0; k < 3; k++) {
        const c = triangles[t + k];
        if (c === a || owner[c] !== own || final[c] === 1) continue;
        const b = triangles[t] + triangles[t + 1] + triangles[t + 2] - c - a;
        const d = front(xyz, a, b, c, top.key, final[b] === 1 ? way[b] : Infinity, heading);
        // On a flat wall the straight way is known; the front is at a loss in blunt triangles.
        const straight = isLevelWith(normals, 3 * c, mouth)
          ? Math.max(top.key, toSegment(xyz, c, mouth, foot))
          : Infinity;
        if (straight < d) heading.set(foot);
        offer(c, Math.min(d, straight), from);
      }
    }
  }
}

/** On a flat wall a way that marching bent around the corners of coarse triangles is straight. */
function straighten({ mesh, way, onward }: Ways, region: Region, border: Border): void {
  for (const v of region.vertices) {
    if (!Number.isFinite(way[v])) continue;
    const d = straightWay(border, mesh.xyz, 3 * v, mesh.normals, 3 * v, way[v], heading);
    if (d >= way[v]) continue;
    way[v] = d;
    onward.set(heading, 3 * v);
  }
}

/** Whether the wall has turned by less than about three degrees from a mouth to a vertex, its normal from `i` on. */
export function isLevelWith(normals: Float64Array, i: number, { normal: n }: Segment): boolean {
  return normals[i] * n[0] + normals[i + 1] * n[1] + normals[i + 2] * n[2] > 0.9986;
}

/**
 * Time at which a plane front that passes a and b at their times reaches c; along the edge from a when it cannot.
 * Writes the direction in which it goes.
 */
function front(
  xyz: Float64Array,
  a: number,
  b: number,
  c: number,
  ta: number,
  tb: number,
  direction: Float64Array,
): number {
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
  const edge = Math.sqrt(ac) || 1;
  for (let k = 0; k < 3; k++) direction[k] = (xyz[3 * c + k] - xyz[3 * a + k]) / edge;
  const alongEdge = ta + Math.sqrt(ac);
  const l = Math.sqrt(ab);
  const g = (tb - ta) / l;
  if (!Number.isFinite(tb) || Math.abs(g) >= 1) return alongEdge;
  const x = dot / l;
  const y = Math.sqrt(Math.max(0, ac - x * x));
  const rise = Math.sqrt(1 - g * g);
  const start = x - (y * g) / rise;
  if (start < -1e-9 * l || start > l * (1 + 1e-9) || y === 0) return alongEdge;
  for (let k = 0; k < 3; k++) {
    const along = (xyz[3 * b + k] - xyz[3 * a + k]) / l;
    const across = (xyz[3 * c + k] - xyz[3 * a + k] - x * along) / y;
    direction[k] = g * along + rise * across;
  }
  return ta + g * x + rise * y;
}

/** Straight distance from a border to a vertex, and the direction of that; on the border, away from what is beyond. */
export function toSegment(
  xyz: Float64Array,
  v: number,
  { a, b, outward }: Segment,
  direction: Float64Array,
): number {
  let ab = 0;
  let dot = 0;
  for (let k = 0; k < 3; k++) {
    ab += (b[k] - a[k]) ** 2;
    dot += (b[k] - a[k]) * (xyz[3 * v + k] - a[k]);
  }
  const s = Math.min(1, Math.max(0, dot / ab));
  let square = 0;
  for (let k = 0; k < 3; k++) {
    direction[k] = xyz[3 * v + k] - a[k] - s * (b[k] - a[k]);
    square += direction[k] ** 2;
  }
  const d = Math.sqrt(square);
  for (let k = 0; k < 3; k++) direction[k] = d > 1e-6 ? direction[k] / d : -outward[k];
  return d;
}

const middle = new Float64Array(3);

/**
 * Way to the middle of a closed border: on from the vertex beside it by the plane front that passes there, no farther
 * than straight across to the border, for the front mostly runs along it.
 */
function wayTo({ mesh, way, onward }: Ways, border: Border, { a, b, outward, vertex }: Segment): number {
  const i = 3 * vertex;
  let along = 0;
  let across = 0;
  for (let k = 0; k < 3; k++) {
    middle[k] = (a[k] + b[k]) / 2;
    along += (middle[k] - mesh.xyz[i + k]) * onward[i + k];
    across += (middle[k] - mesh.xyz[i + k]) * outward[k];
  }
  const d = way[vertex] + Math.max(0, Math.min(along, across));
  return Number.isFinite(d) ? straightWay(border, middle, 0, mesh.normals, i, d, heading) : d;
}

export function lengthOf({ a, b }: Segment): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
}
