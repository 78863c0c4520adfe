import { between } from '../tree/many.ts';
import { firstAlong, type Hit, newHit, newRay, someAlong } from '../tree/ray.ts';
import type { Tree } from '../tree/tree.ts';
import type { NozzleSet } from './nozzle-set.ts';

/** Whether a point lies within range and cone of a nozzle. */
export type Aim = 'hit' | 'beside' | 'beyond';

export function aimAt(set: NozzleSet, i: number, x: number, y: number, z: number): Aim {
  const { at, direction, cosine, rangeSquared } = set;
  const dx = x - at[i * 3];
  const dy = y - at[i * 3 + 1];
  const dz = z - at[i * 3 + 2];
  const square = dx * dx + dy * dy + dz * dz;
  if (square > rangeSquared[i]) return 'beyond';
  const along = dx * direction[i * 3] + dy * direction[i * 3 + 1] + dz * direction[i * 3 + 2];
  return along >= cosine[i] * Math.sqrt(square) ? 'hit' : 'beside';
}

const ray = newRay();
const hit = newHit();
/** Passes on to what lies behind a hit, as a share of the way. */
const past = 1e-9;

/** Whether anything but the nozzle itself stands between it and a point in the air. */
export function isBlocked(tree: Tree, set: NozzleSet, i: number, x: number, y: number, z: number): boolean {
  if (set.own[i].size > 1) return blockerOf(tree, set, i, x, y, z) !== null;
  look(set, i, x, y, z);
  return someAlong(tree, ray, hit);
}

/** Points on the surface with unit normals, xyz each, and how far off it one looks, mm. */
export interface Points {
  readonly at: Float64Array;
  readonly normals: Float64Array;
  readonly lift: number;
}

/** Is told the number of a point. */
export interface Sights {
  readonly beside: (point: number) => void;
  readonly blocked: (point: number) => void;
  readonly seen: (point: number) => void;
}

/** Points at once: some milliseconds. */
const atOnce = 1700;
const points = new Float64Array(atOnce * 3);
const numbers = new Uint32Array(atOnce);

/** What a nozzle does to those of many points that face it within its range; all of them are asked in few calls. */
export function sights(
  tree: Tree,
  set: NozzleSet,
  i: number,
  { at, normals, lift }: Points,
  isAsked: (point: number) => boolean,
  tell: Sights,
): void {
  const [sx, sy, sz] = set.at.subarray(i * 3, i * 3 + 3);
  const [first = -1] = set.own[i];
  const isOne = set.own[i].size < 2;
  let count = 0;
  const cast = () => {
    const slots = between(tree, points.subarray(0, count * 3), [sx, sy, sz], first);
    for (let k = 0; k < count; k++) {
      const p = k * 3;
      const isFree =
        slots[k] < 0 ||
        // The other parts of the nozzle are passed as well.
        (!isOne && blockerOf(tree, set, i, points[p], points[p + 1], points[p + 2]) === null);
      if (isFree) tell.seen(numbers[k]);
      else tell.blocked(numbers[k]);
    }
    count = 0;
  };
  for (let n = 0; n < at.length / 3; n++) {
    const k = n * 3;
    const [x, y, z] = [at[k], at[k + 1], at[k + 2]];
    const [nx, ny, nz] = [normals[k], normals[k + 1], normals[k + 2]];
    if (!((sx - x) * nx + (sy - y) * ny + (sz - z) * nz > 0) || !isAsked(n)) continue;
    const aim = aimAt(set, i, x, y, z);
    if (aim === 'beside') tell.beside(n);
    if (aim !== 'hit') continue;
    numbers[count] = n;
    points[count * 3] = x + nx * lift;
    points[count * 3 + 1] = y + ny * lift;
    points[count * 3 + 2] = z + nz * lift;
    if (++count === atOnce) cast();
  }
  cast();
}

/** What stands between, nearest to the point; null for nothing. Valid until the next look. */
export function blockerOf(
  tree: Tree,
  set: NozzleSet,
  i: number,
  x: number,
  y: number,
  z: number,
): Hit | null {
  look(set, i, x, y, z);
  while (firstAlong(tree, ray, hit)) {
    if (!set.own[i].has(hit.part)) return hit;
    ray.tMin = hit.t + past;
  }
  return null;
}

/** From the point to the nozzle, which ends it at t = 1. */
function look({ at, own }: NozzleSet, i: number, x: number, y: number, z: number): void {
  ray.ox = x;
  ray.oy = y;
  ray.oz = z;
  ray.dx = at[i * 3] - x;
  ray.dy = at[i * 3 + 1] - y;
  ray.dz = at[i * 3 + 2] - z;
  ray.tMin = 0;
  ray.tMax = 1;
  const [first = -1] = own[i];
  ray.skipPart = first;
  ray.skipUntil = Infinity;
}
