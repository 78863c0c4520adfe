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
