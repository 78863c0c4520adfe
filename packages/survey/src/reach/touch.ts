import { newHit, newRay, type Ray, someAlong } from '../tree/ray.ts';
import { outsideShare } from './access.ts';
import { around, cellAt } from './lattice.ts';
import type { Limb } from './limb.ts';
import type { ReachSpace } from './space.ts';
import type { Ways } from './way.ts';
import { placeOf, type Widest } from './widest.ts';

/** A question and its last answer; reuse it for many patches. */
export interface Touch {
  readonly space: ReachSpace;
  readonly widest: Widest;
  readonly ways: Ways;
  readonly centres: Int32Array;
  readonly limb: Limb;
  readonly ray: Ray;
  /** Shortest way found to the patch, and the cell of the ball that touches it. */
  way_mm: number;
  centre: number;
}

/** Balls that are tried for a patch at most: the nearest ones may be behind an edge. */
const mostTried = 6;
/** A ray starts this far off the surface, mm. */
const off_mm = 0.01;
const hit = newHit();
const candidates = new Int32Array(32);
const apart = new Float64Array(32);
const ball = new Float64Array(3);
const bend = new Float64Array(3);
const point = new Float64Array(3);

export function newTouch(
  space: ReachSpace,
  widest: Widest,
  ways: Ways,
  centres: Int32Array,
  limb: Limb,
): Touch {
  return { space, widest, ways, centres, limb, ray: newRay(), way_mm: Infinity, centre: -1 };
}

/** Whether the ball touches the patch whose point and normal start at `i`: the answer is in `way_mm` and `centre`. */
export function touch(t: Touch, points: Float32Array, normals: Float32Array, i: number): boolean {
  const { lattice } = t.space;
  for (let k = 0; k < 3; k++) point[k] = points[i + k];
  const normal = normals.subarray(i, i + 3);
  // The ball stands in the middle of a cell, up to half a cell or so farther off than it need be.
  const reach = t.limb.size_mm / 2 + t.limb.touch_mm + lattice.pitch / 2;
  const before = cellAt(
    lattice,
    point[0] + normal[0] * lattice.pitch,
    point[1] + normal[1] * lattice.pitch,
    point[2] + normal[2] * lattice.pitch,
  );
  if (before < 0) return false;
  const listed = gather(t, before, normal, reach);
  for (let n = 0; n < Math.min(listed, mostTried); n++) {
    let nearest = n;
    for (let m = n + 1; m < listed; m++) if (apart[m] < apart[nearest]) nearest = m;
    const centre = candidates[nearest];
    candidates[nearest] = candidates[n];
    apart[nearest] = apart[n];
    placeOf(lattice, t.widest.spot, t.widest.spots, centre, ball);
    if (!isFree(t, normal)) continue;
    t.centre = centre;
    t.way_mm = Math.max(0, t.ways.length[centre]) + lastStretch(t);
    shorten(t, normal, reach);
    return true;
  }
  return false;
}

/** Lists the different balls that the cells around one are nearest to, before the patch and within reach. */
function gather(t: Touch, cell: number, normal: Float32Array, reach: number): number {
  let listed = 0;
  around(t.space.lattice, cell, (n) => {
    const c = t.centres[n];
    if (c < 0) return;
    for (let m = 0; m < listed; m++) if (candidates[m] === c) return;
    placeOf(t.space.lattice, t.widest.spot, t.widest.spots, c, ball);
    const far = Math.hypot(ball[0] - point[0], ball[1] - point[1], ball[2] - point[2]);
    if (far > reach || !isBefore(normal)) return;
    candidates[listed] = c;
    apart[listed++] = far;
  });
  return listed;
}

function isBefore(normal: Float32Array): boolean {
  return (
    (ball[0] - point[0]) * normal[0] + (ball[1] - point[1]) * normal[1] + (ball[2] - point[2]) * normal[2] > 0
  );
}

/** Nothing stands between patch and ball. */
function isFree({ space, ray }: Touch, normal: Float32Array): boolean {
  if (!isBefore(normal)) return false;
  const [cx, cy, cz] = space.lattice.corner;
  ray.ox = point[0] + normal[0] * off_mm + cx;
  ray.oy = point[1] + normal[1] * off_mm + cy;
  ray.oz = point[2] + normal[2] * off_mm + cz;
  ray.dx = ball[0] + cx - ray.ox;
  ray.dy = ball[1] + cy - ray.oy;
  ray.dz = ball[2] + cz - ray.oz;
  ray.tMin = 0;
  ray.tMax = 1;
  return !someAlong(space.tree, ray, hit);
}

/** From the ball's centre to the patch, as far as that is inside the machine's box. */
function lastStretch({ space }: Touch): number {
  const far = Math.hypot(ball[0] - point[0], ball[1] - point[1], ball[2] - point[2]);
  return far * (1 - outsideShare(space.access, ball, point));
}

/**
 * The ball need not come as near as it can: back along its way to where its touch just gets to the patch, the way is
 * shorter.
 */
function shorten(t: Touch, normal: Float32Array, reach: number): void {
  const { lattice } = t.space;
  const { bend: bends, length } = t.ways;
  const from = bends[t.centre];
  if (from === t.centre) return;
  const end = ball.slice();
  placeOf(lattice, t.widest.spot, t.widest.spots, from, bend);
  let toPoint = 0;
  let along = 0;
  let whole = 0;
  for (let k = 0; k < 3; k++) {
    const d = bend[k] - end[k];
    const e = end[k] - point[k];
    whole += d * d;
    along += d * e;
    toPoint += e * e;
  }
  if (whole === 0) return;
  const root = Math.sqrt(Math.max(0, along * along - whole * (toPoint - reach * reach)));
  const farthest = Math.min(1, (root - along) / whole);
  for (const s of [farthest, farthest / 2]) {
    if (!(s > 0)) return;
    for (let k = 0; k < 3; k++) ball[k] = end[k] + s * (bend[k] - end[k]);
    if (!isFree(t, normal)) continue;
    const way = Math.max(0, length[from] + (1 - s) * Math.sqrt(whole)) + lastStretch(t);
    if (way < t.way_mm) t.way_mm = way;
    return;
  }
}
