import type { Vec3 } from '@coveline/model';
import { foot, nearestOnFacet } from './facets.ts';
import { around, middleX, middleY, middleZ } from './lattice.ts';
import type { ClearanceAt } from './narrowest.ts';
import { planesAt } from './planes.ts';
import { exactClearance, nearest, type ReachSpace } from './space.ts';

/** Steps that are taken at most, and the length at which they end, as a part of the cell. */
const mostSteps = 30;
const finest = 1 / 100;
/** How far from the middle of its cell a climb may go along each axis, in cells: a bit beyond the border, so that a ridge
 * that cuts off a corner of the cell is not missed. */
export const roam = 0.7;
const facetsAtOnce = 64;

/** Looks at what the facets around left out, at most. */
const mostCorrections = 6;
/** The facets around are good enough when they tell no more room than there is by this, mm. */
const agree_mm = 0.05;

/** Planes, four numbers each: floor and walls, then the tangent planes of what was left out. */
const mostPlanes = 32;
const planes = new Float64Array(4 * (mostPlanes + mostCorrections));
let planeCount = 0;

/** Iterations for a direction at most, what they need not better, and the length of a vector that is none. */
const mostRounds = 10;
const settled = 1e-3;
const flat = 0.04;

/** Unit directions away from the nearest things, and their distances. */
const away = new Float64Array((facetsAtOnce + mostPlanes + mostCorrections) * 3);
const distances = new Float64Array(facetsAtOnce + mostPlanes + mostCorrections);
const facets = new Int32Array(facetsAtOnce);
const here = new Float64Array(3);
const middle = new Float64Array(3);
const heading = new Float64Array(3);

/**
 * The roomiest point in or close to a cell, as far as a climb from its middle finds it: writes xyz, mm from the
 * lattice's corner, and returns the clearance there of the facets that the cells around it know of.
 *
 * Each step goes along the shortest vector in the convex hull of the directions away from everything that is about
 * equally near: the steepest way up of a distance (Lieutier's flow towards the medial axis, 2004).
 */
export function climb(space: ReachSpace, cell: number, out: Float64Array): number {
  return Math.min(space.cap_mm, ascend(space, begin(space, cell, out), out));
}

/** Clearance of the facets that the cells around two neighbours know of, and of the planes. */
export function toldAround(space: ReachSpace, one: number, other: number): ClearanceAt {
  const listed = list(space, other, list(space, one, 0));
  return (x, y, z) => {
    let least = planesAt(space.planes, x, y, z);
    for (let i = 0; i < listed; i++) {
      const d = Math.sqrt(nearestOnFacet(space.facets.corners, facets[i], x, y, z));
      if (d < least) least = d;
    }
    return least;
  };
}

/** As `climb`, of all facets: the clearance is too large by less than 0.05 mm. */
export function climbExactly(space: ReachSpace, cell: number, out: Float64Array): number {
  const listed = begin(space, cell, out);
  for (let n = 0; ; n++) {
    const told = Math.min(space.cap_mm, ascend(space, listed, out));
    // Only what was left out is looked for: a short look, though all facets of a round tube are equally near.
    const bound = told - agree_mm;
    const room = bound > 0 ? exactClearance(space, out[0], out[1], out[2], bound) : bound;
    if (room >= bound) return told;
    if (n === mostCorrections) return room;
    addTangent(space.lattice.corner, out, room);
  }
}

/** Goes to the middle of a cell and lists the facets around; returns how many. */
function begin(space: ReachSpace, cell: number, out: Float64Array): number {
  middle[0] = middleX(space.lattice, cell);
  middle[1] = middleY(space.lattice, cell);
  middle[2] = middleZ(space.lattice, cell);
  out.set(middle);
  planeCount = Math.min(mostPlanes, space.planes.length / 4);
  planes.set(space.planes.subarray(0, 4 * planeCount));
  return list(space, cell, 0);
}

/** Adds the facets that the cells around one know of to those listed; returns how many there are then. */
function list({ lattice, clearance }: ReachSpace, cell: number, before: number): number {
  let listed = before;
  around(lattice, cell, (n) => {
    const f = clearance.facet[n];
    if (f < 0 || listed === facetsAtOnce) return;
    for (let i = 0; i < listed; i++) if (facets[i] === f) return;
    facets[listed++] = f;
  });
  return listed;
}

/** What stands nearest to a point by the last exact look becomes one more plane. */
function addTangent(corner: Vec3, at: Float64Array, room: number): void {
  if (!(room > 0)) return;
  const i = planeCount++ * 4;
  const foot = [nearest.x - corner[0], nearest.y - corner[1], nearest.z - corner[2]];
  let offset = 0;
  for (let k = 0; k < 3; k++) {
    planes[i + k] = (at[k] - foot[k]) / room;
    offset += planes[i + k] * foot[k];
  }
  planes[i + 3] = offset;
}

/** Moves `out` up to where no step leads higher; returns the clearance by what is listed. */
function ascend(space: ReachSpace, listed: number, out: Float64Array): number {
  const { pitch } = space.lattice;
  let best = look(space, listed, out);
  let stride = pitch / 4;
  let stale = false;
  for (let n = 0; n < mostSteps && stride > finest * pitch; n++) {
    if (stale) look(space, listed, out);
    stale = false;
    if (!steepest(listed + planeCount, best + stride)) {
      stride /= 2;
      continue;
    }
    for (let k = 0; k < 3; k++) {
      const x = out[k] + heading[k] * stride;
      here[k] = Math.min(middle[k] + roam * pitch, Math.max(middle[k] - roam * pitch, x));
    }
    const there = look(space, listed, here);
    if (there > best) {
      best = there;
      out.set(here);
    } else {
      stride /= 2;
      stale = true;
    }
  }
  return best;
}

/** Distances and directions from everything listed to a point; returns the least distance. */
function look({ facets: all }: ReachSpace, listed: number, at: Float64Array): number {
  let least = Infinity;
  for (let i = 0; i < listed; i++) {
    const d = Math.sqrt(nearestOnFacet(all.corners, facets[i], at[0], at[1], at[2]));
    distances[i] = d;
    for (let k = 0; k < 3; k++) away[i * 3 + k] = d > 0 ? (at[k] - foot[k]) / d : 0;
    if (d < least) least = d;
  }
  for (let p = 0; p < 4 * planeCount; p += 4) {
    const i = listed + p / 4;
    const d = planes[p] * at[0] + planes[p + 1] * at[1] + planes[p + 2] * at[2] - planes[p + 3];
    distances[i] = d;
    for (let k = 0; k < 3; k++) away[i * 3 + k] = planes[p + k];
    if (d < least) least = d;
  }
  return least;
}

/** Those among the listed things that are about equally near. */
const near = new Int32Array(facetsAtOnce + mostPlanes + mostCorrections);

/** The shortest vector of the hull, by Gilbert's iteration (1966), as a unit vector; false where it is about 0. */
function steepest(count: number, within: number): boolean {
  let listed = 0;
  let first = 0;
  for (let i = 0; i < count; i++) {
    if (distances[i] > within) continue;
    if (distances[i] < distances[near[first]] || listed === 0) first = listed;
    near[listed++] = i;
  }
  let x = away[near[first] * 3];
  let y = away[near[first] * 3 + 1];
  let z = away[near[first] * 3 + 2];
  for (let round = 0; round < mostRounds && listed > 1; round++) {
    let lowest = Infinity;
    let pick = 0;
    for (let n = 0; n < listed; n++) {
      const i = near[n] * 3;
      const dot = away[i] * x + away[i + 1] * y + away[i + 2] * z;
      if (dot >= lowest) continue;
      lowest = dot;
      pick = i;
    }
    const square = x * x + y * y + z * z;
    if (lowest >= square - settled) break;
    // The nearest point to 0 on the line from the vector to the one picked.
    const dx = away[pick] - x;
    const dy = away[pick + 1] - y;
    const dz = away[pick + 2] - z;
    const s = Math.min(1, (square - lowest) / (dx * dx + dy * dy + dz * dz));
    x += s * dx;
    y += s * dy;
    z += s * dz;
  }
  const length = Math.sqrt(x * x + y * y + z * z);
  if (length < flat) return false;
  heading[0] = x / length;
  heading[1] = y / length;
  heading[2] = z / length;
  return true;
}
