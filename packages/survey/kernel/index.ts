/** What the survey calls. `work` is the caller's own work area: see `layout.ts`. */
import { any, first } from './cast';
import { nearest } from './closest';
import { holder } from './inside';
import { BATCH, RESULTS, STACK } from './layout';
import { aim, choose, meets, tBest } from './ray';

export { arenaEnd, buildPart, buildPartsTop, buildTop } from './build';
export { open } from './layout';

/** Slot of the first triangle met at tMin < t < tMax, -1 for none; t goes to the results. */
export function firstAlong(
  root: i32, work: usize,
  ox: f64, oy: f64, oz: f64, dx: f64, dy: f64, dz: f64, tMin: f64, tMax: f64,
  crossing: f64, skipFrom: i32, skipTo: i32, skipUntil: f64,
): i32 {
  aim(ox, oy, oz, dx, dy, dz, tMin, tMax);
  choose(crossing, skipFrom, skipTo, skipUntil);
  const slot = first(root, work, work + STACK);
  store<f64>(work + RESULTS, tBest);
  return slot;
}

/** Slot of some triangle met at tMin < t < tMax, -1 for none; t goes to the results. */
export function someAlong(
  root: i32, work: usize,
  ox: f64, oy: f64, oz: f64, dx: f64, dy: f64, dz: f64, tMin: f64, tMax: f64,
  crossing: f64, skipFrom: i32, skipTo: i32, skipUntil: f64,
): i32 {
  aim(ox, oy, oz, dx, dy, dz, tMin, tMax);
  choose(crossing, skipFrom, skipTo, skipUntil);
  const slot = any(root, work, work + STACK);
  store<f64>(work + RESULTS, tBest);
  return slot;
}

/** For n rays of eight f64 (origin, direction, tMin, tMax) in the batch: t (f64) and slot (i32) in 16 bytes each, to `out`. */
export function firstHits(root: i32, work: usize, n: i32, out: usize): void {
  choose(0, 0, 0, 0);
  let ray = work + BATCH;
  for (let i: i32 = 0; i < n; i++, ray += 64, out += 16) {
    aimAt(ray);
    const slot = first(root, work, work + STACK);
    store<f64>(out, slot < 0 ? Infinity : tBest);
    store<i32>(out, slot, 8);
  }
}

/** For n rays of eight f64 in the batch: a byte each, 1 where anything is met, to `out`. */
export function anyHits(root: i32, work: usize, n: i32, out: usize): void {
  choose(0, 0, 0, 0);
  let ray = work + BATCH;
  for (let i: i32 = 0; i < n; i++, ray += 64, out++) {
    aimAt(ray);
    store<u8>(out, any(root, work, work + STACK) < 0 ? 0 : 1);
  }
}

/**
 * For n points of three f64 in the batch: slot of a triangle between each and xyz, -1 for none, an i32 each, to `out`.
 * What stood before one point often stands before the next, and is tried first.
 */
export function between(
  root: i32, work: usize, n: i32, x: f64, y: f64, z: f64, skipFrom: i32, skipTo: i32, out: usize,
): void {
  choose(0, skipFrom, skipTo, Infinity);
  let point = work + BATCH;
  let last: i32 = -1;
  for (let i: i32 = 0; i < n; i++, point += 24, out += 4) {
    const px = load<f64>(point);
    const py = load<f64>(point, 8);
    const pz = load<f64>(point, 16);
    aim(px, py, pz, x - px, y - py, z - pz, 0, 1);
    const slot = last >= 0 && meets(last) ? last : any(root, work, work + STACK);
    store<i32>(out, slot);
    if (slot >= 0) last = slot;
  }
}

@inline function aimAt(ray: usize): void {
  aim(
    load<f64>(ray), load<f64>(ray, 8), load<f64>(ray, 16), load<f64>(ray, 24), load<f64>(ray, 32), load<f64>(ray, 40),
    load<f64>(ray, 48), load<f64>(ray, 56),
  );
}

/** Slot of the nearest triangle within reach, -1 for none; distance, x, y, z go to the results. */
export function closest(root: i32, work: usize, x: f64, y: f64, z: f64, reach: f64): i32 {
  return nearest(root, work, work + STACK, work + RESULTS, x, y, z, reach);
}

/** For n points of four f64 (xyz, reach) in the batch: distance, x, y, z (f64) and slot (i32) in 40 bytes each, to `out`. */
export function closestPoints(root: i32, work: usize, n: i32, out: usize): void {
  let point = work + BATCH;
  for (let i: i32 = 0; i < n; i++, point += 32, out += 40) {
    const slot = nearest(
      root, work, work + STACK, out,
      load<f64>(point), load<f64>(point, 8), load<f64>(point, 16), load<f64>(point, 24),
    );
    store<i32>(out, slot, 32);
  }
}

/** Lowest number of a part that holds xyz, -1 for none: see `holder`. */
export function partAt(parts: i32, work: usize, roots: usize, closed: usize, x: f64, y: f64, z: f64): i32 {
  return holder(parts, work, work + STACK, roots, closed, x, y, z);
}
