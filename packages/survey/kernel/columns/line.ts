/**
 * The surface along one line of columns: where it passes each column, from low to high, and the heights that it covers
 * in each strip between two columns, merged as they come in.
 */
import { begin, take } from './room';

/** Crossing, 24 bytes: height (f64), next (u32), triangle (u32), turn (i32). The next of the last is 0. */
export const NEXT: usize = 8;
export const TRIANGLE: usize = 12;
export const TURN: usize = 16;
/** Range of heights, 24 bytes: lowest, highest (f64), next (u32). */
export const HIGHEST: usize = 8;
export const NEXT_RANGE: usize = 16;
const NODE: usize = 24;

/** Set once an instance. */
let corners: usize = 0;
let sheets: usize = 0;
/** u32 each: the first crossing of every column, the first range of every strip, the range of it that was touched last. */
let heads: usize = 0;

let origin: f64 = 0;
let pitch: f64 = 0;
let perMm: f64 = 0;
export let count: i32 = 0;
export let contact: f64 = 0;
export let crossings: i32 = 0;

export function open(cornersAt: usize, sheetsAt: usize, headsAt: usize): void {
  corners = cornersAt;
  sheets = sheetsAt;
  heads = (headsAt + 7) & ~7;
}

/** Lines of `columns` columns, the first at `first`, mm. What lies closer than `contact_mm` touches. */
export function lines(first: f64, pitch_mm: f64, columns: i32, contact_mm: f64): void {
  origin = first;
  pitch = pitch_mm;
  perMm = 1 / pitch_mm;
  count = columns;
  contact = contact_mm;
}

/** Room for the numbers of n triangles (u32); whatever the line before took is given back. */
export function startLine(n: i32): usize {
  begin(heads);
  memory.fill(take(<usize>count * 12), 0, <usize>count * 12);
  crossings = 0;
  return take(<usize>n << 2);
}

@inline export function crossingsOf(column: i32): usize {
  return <usize>load<u32>(heads + (<usize>column << 2));
}

@inline export function rangesOf(strip: i32): usize {
  return <usize>load<u32>(heads + (<usize>(count + strip) << 2));
}

/** Ends of the section: along the line, and height. */
let startAlong: f64 = 0;
let startZ: f64 = 0;
let endAlong: f64 = 0;
let endZ: f64 = 0;

/**
 * Lays the sections of n triangles with the vertical plane `coordinate[axis] = at` (0: u, 1: v). Crossings are kept of
 * rows (axis 1) only: the columns of a file are those of the rows.
 */
export function layLine(numbers: usize, n: i32, axis: i32, at: f64): void {
  const across = <usize>axis << 3;
  const along = 8 - across;
  for (let k: i32 = 0; k < n; k++) {
    const triangle = load<u32>(numbers + (<usize>k << 2));
    if (section(corners + <usize>triangle * 12, across, along, at)) lay(triangle, axis == 1);
  }
}

/**
 * Going from start to end along +u in a plane of constant v, the material lies below. The crossing of an edge is
 * computed from its lower to its higher end, so that the two triangles at the edge get the same number to the last bit:
 * the section of a closed surface is a closed curve.
 */
@inline function section(triangle: usize, across: usize, along: usize, at: f64): bool {
  const a = <usize>load<u32>(triangle);
  const b = <usize>load<u32>(triangle, 4);
  const c = <usize>load<u32>(triangle, 8);
  const aUp = load<f64>(a + across) >= at;
  const bUp = load<f64>(b + across) >= at;
  const cUp = load<f64>(c + across) >= at;
  if (aUp == bUp && bUp == cUp) return false;
  // p stands alone on its side; q, r follow it in the triangle's own order. Chosen without branches: nobody can guess them.
  const notA = aUp == cUp;
  const notC = aUp != bUp;
  const p = select<usize>(b, select<usize>(a, c, notC), notA);
  const q = select<usize>(c, select<usize>(b, a, notC), notA);
  const r = select<usize>(a, select<usize>(c, b, notC), notA);
  const alone = select<bool>(bUp, select<bool>(aUp, cUp, notC), notA);
  const startBelow = select<usize>(q, p, alone);
  const startAbove = select<usize>(p, r, alone);
  const endBelow = select<usize>(r, p, alone);
  const endAbove = select<usize>(p, q, alone);
  const s = share(startBelow, startAbove, across, at);
  const e = share(endBelow, endAbove, across, at);
  startAlong = between(startBelow, startAbove, along, s);
  startZ = between(startBelow, startAbove, 16, s);
  endAlong = between(endBelow, endAbove, along, e);
  endZ = between(endBelow, endAbove, 16, e);
  return true;
}

@inline function share(below: usize, above: usize, across: usize, at: f64): f64 {
  const from = load<f64>(below + across);
  return (at - from) / (load<f64>(above + across) - from);
}

@inline function between(below: usize, above: usize, coordinate: usize, s: f64): f64 {
  const from = load<f64>(below + coordinate);
  return from + s * (load<f64>(above + coordinate) - from);
}

@inline function place(k: i32): f64 {
  return origin + <f64>k * pitch;
}

@inline function lay(triangle: u32, keep: bool): void {
  const forward = endAlong > startAlong;
  const lo = forward ? startAlong : endAlong;
  const hi = forward ? endAlong : startAlong;
  const loZ = forward ? startZ : endZ;
  const hiZ = forward ? endZ : startZ;
  if (hi < origin || lo >= place(count - 1)) return;
  // First column at or past lo.
  let k = <i32>max<f64>(0, Math.ceil((lo - origin) * perMm));
  while (k > 0 && place(k - 1) >= lo) k--;
  while (k < count && place(k) < lo) k++;
  let fromZ = loZ;
  let at = place(k);
  if (k < count && at < hi) {
    const turn = load<u8>(sheets + <usize>triangle) ? 0 : forward ? -1 : 1;
    const slope = hi > lo ? (hiZ - loZ) / (hi - lo) : 0;
    do {
      const z = loZ + slope * (at - lo);
      if (keep) cross(k, z, turn, triangle);
      if (k > 0) cover(k - 1, fromZ, z);
      fromZ = z;
      at = place(++k);
    } while (k < count && at < hi);
  }
  if (k > 0 && k < count) cover(k - 1, fromZ, hiZ);
}

/** Of crossings at one height the last to come stands first. */
@inline function cross(column: i32, z: f64, turn: i32, triangle: u32): void {
  const added = take(NODE);
  store<f64>(added, z);
  store<u32>(added, triangle, TRIANGLE);
  store<i32>(added, turn, TURN);
  // Address of the reference that will lead to it.
  let link = heads + (<usize>column << 2);
  let next = <usize>load<u32>(link);
  while (next && load<f64>(next) < z) {
    link = next + NEXT;
    next = <usize>load<u32>(link);
  }
  store<u32>(added, <u32>next, NEXT);
  store<u32>(link, <u32>added);
  crossings++;
}

/** Ranges of a strip stay sorted, and farther apart than the contact distance. */
@inline function cover(strip: i32, fromZ: f64, toZ: f64): void {
  const low = min(fromZ, toZ);
  const high = max(fromZ, toZ);
  const touched = heads + (<usize>(2 * count + strip) << 2);
  let link = heads + (<usize>(count + strip) << 2);
  let range = <usize>load<u32>(touched);
  // What lies before a range that begins lower is out of reach.
  if (!range || load<f64>(range) > low) range = <usize>load<u32>(link);
  while (range && load<f64>(range, HIGHEST) + contact <= low) {
    link = range + NEXT_RANGE;
    range = <usize>load<u32>(link);
  }
  if (!range || load<f64>(range) - high >= contact) {
    const added = take(NODE);
    store<f64>(added, low);
    store<f64>(added, high, HIGHEST);
    store<u32>(added, <u32>range, NEXT_RANGE);
    store<u32>(link, <u32>added);
    store<u32>(touched, <u32>added);
    return;
  }
  store<u32>(touched, <u32>range);
  if (low < load<f64>(range)) store<f64>(range, low);
  if (high > load<f64>(range, HIGHEST)) stretch(range, high);
}

/** Raises the upper end of a range and takes in those that it touches then. */
function stretch(range: usize, to: f64): void {
  let high = to;
  let next = <usize>load<u32>(range, NEXT_RANGE);
  while (next && load<f64>(next) - high < contact) {
    high = max(high, load<f64>(next, HIGHEST));
    next = <usize>load<u32>(next, NEXT_RANGE);
  }
  store<f64>(range, high, HIGHEST);
  store<u32>(range, <u32>next, NEXT_RANGE);
}
