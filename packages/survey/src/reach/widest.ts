import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { outsideBy } from './access.ts';
import { newBucketQueue, pop, push } from './bucket-queue.ts';
import { climb, climbExactly, roam, toldAround } from './climb.ts';
import { beside, besides, type Lattice, middleX, middleY, middleZ } from './lattice.ts';
import { type ClearanceAt, narrowestAlong } from './narrowest.ts';
import { exactlyIn, type ReachSpace } from './space.ts';

/** For every cell the largest ball whose centre gets there from an access side, and the way on which it does. */
export interface Widest {
  /** Per cell: radius, mm, no more than the cap; 0 where nothing gets to. */
  readonly radius: Float32Array;
  /** Per cell: the one before it on the widest way; itself on an access side; -1 where nothing gets to. */
  readonly from: Int32Array;
  /** Per cell: the end of the narrowest step of that way, -1 where the cap is the limit. */
  readonly throat: Int32Array;
  /** Per cell: index into `spots`, -1 for the middle of the cell. */
  readonly spot: Int32Array;
  /** xyz and exact clearance of the roomiest point of each cell that was looked at closely. */
  readonly spots: Float32Array;
}

/** Radii closer than this are not told apart, mm. */
export const radiusStep_mm = 0.02;
/** Cells this much roomier than the largest ball needs are not looked at closely, mm. */
const ample_mm = 0.5;
/** Balls smaller than this part of the smallest one asked are not followed. */
const leastShare = 1 / 3;

/**
 * One flood from the access sides, widest way first (Prim's order; maximin paths). `radii_mm`: of the balls that will be
 * asked for, smallest first.
 *
 * Middles of cells miss the middle of an opening by up to 0.87 cells. So a cell that holds a ridge of the clearance
 * (where it falls off to two sides: the middle of every opening, slot and tube) is entered in the hope of its best, and
 * looked at only when that hope is next in turn: then its roomiest point is climbed to, the narrowest place of the step
 * to it is searched, and it is put back with what was found. Where that decides whether one of the balls passes, all
 * facets count; elsewhere those that the cells around know of, and `exactThroat` looks at what is told.
 *
 * Without a close look a step is as wide as its two ends: a wall between the two middles leaves half a cell at most,
 * and cells narrower than that without a ridge are not entered.
 */
export function widestWays(space: ReachSpace, radii_mm: readonly number[], control: Control): Widest {
  const { lattice, clearance, access, cap_mm } = space;
  const { distance } = clearance;
  const n = lattice.cells;
  const least_mm = leastShare * radii_mm[0];
  const enough_mm = radii_mm[radii_mm.length - 1] + ample_mm;
  const radius = new Float32Array(n);
  const from = new Int32Array(n).fill(-1);
  const throat = new Int32Array(n).fill(-1);
  const spot = new Int32Array(n).fill(-1);
  let spots = new Float32Array(4 * 16384);
  let spotCount = 0;
  const queue = newBucketQueue(radiusStep_mm);
  const gain = roam * lattice.pitch * Math.sqrt(3);
  const pa = new Float64Array(3);
  const pb = new Float64Array(3);

  const sides = new Int32Array(6);
  const exactly = exactlyIn(space);

  const roomOf = (cell: number): number => (spot[cell] < 0 ? distance[cell] : spots[spot[cell] * 4 + 3]);
  /** Whether a clearance between these two decides if one of the balls passes. */
  const decides = (low: number, high: number): boolean => {
    for (const r of radii_mm) if (low < r && high >= r - radiusStep_mm) return true;
    return false;
  };
  const lookClosely = (cell: number): void => {
    const look = decides(distance[cell], distance[cell] + gain) ? climbExactly : climb;
    const room = look(space, cell, pb);
    if (spotCount * 4 === spots.length) {
      const wide = new Float32Array(spots.length * 2);
      wide.set(spots);
      spots = wide;
    }
    spots.set(pb, spotCount * 4);
    spots[spotCount * 4 + 3] = room;
    spot[cell] = spotCount++;
  };
  const stepRoom = (a: number, b: number): number => {
    const room = Math.min(radius[a], roomOf(b));
    if (spot[a] < 0 && spot[b] < 0) return room;
    placeOf(lattice, spot, spots, a, pa);
    placeOf(lattice, spot, spots, b, pb);
    const length = Math.hypot(pa[0] - pb[0], pa[1] - pb[1], pa[2] - pb[2]);
    // Off the ridge a step only gets narrower; of walls, two balls that overlap leave no room for one.
    if (spot[b] < 0 && roomOf(a) + roomOf(b) > length) return room;
    const low = (roomOf(a) + roomOf(b) - length) / 2;
    if (low >= room) return room;
    const through = (clearanceAt: ClearanceAt): number =>
      Math.min(room, narrowestAlong(clearanceAt, pa, roomOf(a), pb, roomOf(b)));
    if (decides(low, room)) return through(exactly);
    const told = through(toldAround(space, b, a));
    // A narrow place that what lies behind may be told of.
    return told < radius[a] - radiusStep_mm / 2 ? through(exactly) : told;
  };
  const mayHope = (cell: number, value: number): boolean =>
    distance[cell] < value && distance[cell] < enough_mm && holdsRidge(space, cell);
  const settle = (cell: number, before: number, value: number): void => {
    radius[cell] = value;
    from[cell] = before;
    if (before !== cell) throat[cell] = value < radius[before] - radiusStep_mm / 2 ? cell : throat[before];
    else if (value < cap_mm) throat[cell] = cell;
    besides(lattice, cell, sides);
    for (let side = 0; side < 6; side++) {
      const next = sides[side];
      if (next < 0 || from[next] >= 0 || distance[next] <= 0) continue;
      const hopeful = spot[next] < 0 && mayHope(next, value);
      if (!hopeful && spot[next] < 0 && distance[next] < lattice.pitch / 2) continue;
      const hope = Math.min(value, hopeful ? distance[next] + gain : roomOf(next));
      // Until a cell is settled its radius is that of the widest way to it that is sure: a hope must beat it.
      if (hope < least_mm || hope <= radius[next]) continue;
      const isSure = !hopeful && spot[next] < 0 && spot[cell] < 0;
      if (isSure) radius[next] = hope;
      push(queue, cap_mm - hope, next, isSure ? ~cell : cell);
    }
  };

  for (let c = 0; c < n; c++) {
    if (c % 65536 === 0) step(control, 'reach', 0.25);
    if (distance[c] < least_mm) continue;
    if (outsideBy(access, middleX(lattice, c), middleY(lattice, c), middleZ(lattice, c)) < 0) continue;
    push(queue, cap_mm - distance[c], c, c);
  }
  let count = 0;
  for (let entry = pop(queue); entry >= 0; entry = pop(queue)) {
    if (++count % 2048 === 0) step(control, 'reach', 0.3);
    const hoped = cap_mm - queue.key[entry];
    if (hoped < least_mm) break;
    const cell = queue.cell[entry];
    const known = queue.from[entry] < 0;
    const before = known ? ~queue.from[entry] : queue.from[entry];
    if (from[cell] >= 0) continue;
    if (known || before === cell) {
      settle(cell, before, hoped);
      continue;
    }
    if (spot[cell] < 0 && mayHope(cell, radius[before])) lookClosely(cell);
    const room = stepRoom(before, cell);
    if (room >= hoped - radiusStep_mm) settle(cell, before, Math.min(room, radius[before]));
    else push(queue, cap_mm - room, cell, ~before);
  }
  step(control, 'reach', 0.45);
  for (let c = 0; c < n; c++) if (from[c] < 0) radius[c] = 0;
  return { radius, from, throat, spot, spots: spots.slice(0, 4 * spotCount) };
}

/**
 * Across a ridge between opposite walls, square to an axis and half a cell off the middle, the second difference is
 * one cell; where the ridge runs aslant, or closes in less, it is smaller.
 */
const ridge = -0.5;

/** Where the clearance falls off to two sides of a cell: the sum of its second differences is well below 0. */
function holdsRidge({ lattice, clearance: { distance } }: ReachSpace, cell: number): boolean {
  let sum = 0;
  for (let side = 0; side < 6; side++) {
    const n = beside(lattice, cell, side);
    sum += n < 0 ? 0 : distance[n] - distance[cell];
  }
  return sum < ridge * lattice.pitch;
}

/** Writes where in a cell the way goes through it, mm from the lattice's corner. */
export function placeOf(
  lattice: Lattice,
  spot: Int32Array,
  spots: Float32Array,
  cell: number,
  out: Float64Array,
): void {
  const s = spot[cell] * 4;
  if (s >= 0) {
    out[0] = spots[s];
    out[1] = spots[s + 1];
    out[2] = spots[s + 2];
    return;
  }
  const { pitch, nx, ny } = lattice;
  const row = (cell / nx) | 0;
  const layer = (row / ny) | 0;
  out[0] = (cell - row * nx + 0.5) * pitch;
  out[1] = (row - layer * ny + 0.5) * pitch;
  out[2] = (layer + 0.5) * pitch;
}
