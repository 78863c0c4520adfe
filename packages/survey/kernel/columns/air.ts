/**
 * What of the air the columns of one line hold, and where it passes between neighbours. Intervals: lowest heights
 * (f64), highest heights (f64), number of the interval (u32), triangle below and above (u32), one array after another.
 */
import { contact, count, crossings, crossingsOf, HIGHEST, NEXT, NEXT_RANGE, rangesOf, TRIANGLE, TURN } from './line';
import { take } from './room';

/** Instead of a triangle: open to the sky or to the ground. */
const OPEN: u32 = 0xffffffff;

/** Where the intervals of column k begin: u32, count + 1 of them. */
export let starts: usize = 0;
export let bottoms: usize = 0;
export let tops: usize = 0;
export let numbers: usize = 0;
export let floors: usize = 0;
export let ceilings: usize = 0;
let intervals: i32 = 0;

/** Passages: height (f64), the two intervals (u32), one array after another; the first of strip k: u32, count + 1. */
export let stripStarts: usize = 0;
export let heights: usize = 0;
export let as: usize = 0;
export let bs: usize = 0;

function room(most: i32): void {
  const n = <usize>most;
  starts = take(<usize>(count + 1) << 2);
  bottoms = take(n << 3);
  tops = take(n << 3);
  numbers = take(n << 2);
  floors = take(n << 2);
  ceilings = take(n << 2);
}

/** Room for intervals of this line that the caller fills in. */
export function known(most: i32): void {
  room(most);
  intervals = most;
}

/** The intervals of a row by signed winding, numbered from `number` on. Returns how many there are. */
export function fill(number: i32): i32 {
  room(crossings + count);
  intervals = 0;
  for (let k: i32 = 0; k < count; k++) {
    store<u32>(starts + (<usize>k << 2), intervals);
    column(crossingsOf(k));
  }
  store<u32>(starts + (<usize>count << 2), intervals);
  for (let k: i32 = 0; k < intervals; k++) store<u32>(numbers + (<usize>k << 2), number + k);
  return intervals;
}

@inline function column(first: usize): void {
  let winding = 0;
  let from = -Infinity;
  let below = OPEN;
  let crossing = first;
  let last: usize = 0;
  while (crossing) {
    last = crossing;
    const turn = load<i32>(crossing, TURN);
    const wasAir = winding <= 0;
    winding += turn;
    const isAir = winding <= 0;
    const z = load<f64>(crossing);
    const triangle = load<u32>(crossing, TRIANGLE);
    crossing = <usize>load<u32>(crossing, NEXT);
    if (wasAir && isAir && turn != 0) continue;
    if (wasAir) add(from, z, below, triangle);
    if (isAir) {
      from = z;
      below = triangle;
    }
  }
  // A surface that is torn after all: the sky is air, whatever the winding says.
  if (winding > 0) add(load<f64>(last), Infinity, load<u32>(last, TRIANGLE), OPEN);
  else add(from, Infinity, below, OPEN);
}

/** Intervals lower than the contact distance count as filled. */
@inline function add(from: f64, to: f64, below: u32, above: u32): void {
  if (to - from < contact) return;
  const n = <usize>intervals;
  intervals++;
  store<f64>(bottoms + (n << 3), from);
  store<f64>(tops + (n << 3), to);
  store<u32>(floors + (n << 2), below);
  store<u32>(ceilings + (n << 2), above);
}

/** Passages between the columns of the line. Returns how many there are. */
export function join(): i32 {
  // Of every two intervals that are looked at, the walk leaves at least one behind.
  const n = <usize>(intervals * 2);
  stripStarts = take(<usize>(count + 1) << 2);
  heights = take(n << 3);
  as = take(n << 2);
  bs = take(n << 2);
  let found = 0;
  for (let k: i32 = 0; k + 1 < count; k++) {
    store<u32>(stripStarts + (<usize>k << 2), found);
    found = strip(k, found);
  }
  store<u32>(stripStarts + (<usize>(count - 1) << 2), found);
  store<u32>(stripStarts + (<usize>count << 2), found);
  return found;
}

@inline function strip(k: i32, before: i32): i32 {
  let found = before;
  const ranges = rangesOf(k);
  let a = load<u32>(starts + (<usize>k << 2));
  const aEnd = load<u32>(starts + (<usize>k << 2), 4);
  let b = aEnd;
  const bEnd = load<u32>(starts + (<usize>k << 2), 8);
  while (a < aEnd && b < bEnd) {
    const aTop = load<f64>(tops + (<usize>a << 3));
    const bTop = load<f64>(tops + (<usize>b << 3));
    const low = max(load<f64>(bottoms + (<usize>a << 3)), load<f64>(bottoms + (<usize>b << 3)));
    const height = lowestFree(ranges, low, min(aTop, bTop));
    if (height < Infinity) {
      store<f64>(heights + (<usize>found << 3), height);
      store<u32>(as + (<usize>found << 2), load<u32>(numbers + (<usize>a << 2)));
      store<u32>(bs + (<usize>found << 2), load<u32>(numbers + (<usize>b << 2)));
      found++;
    }
    if (aTop <= bTop) a++;
    if (bTop <= aTop) b++;
  }
  return found;
}

/** Infinity where nothing is free. */
@inline function lowestFree(ranges: usize, low: f64, high: f64): f64 {
  let z = low;
  for (let range = ranges; range; range = <usize>load<u32>(range, NEXT_RANGE)) {
    const to = load<f64>(range, HIGHEST);
    if (to <= z) continue;
    if (load<f64>(range) - z >= contact) break;
    z = to;
  }
  // Both ends at infinity: a strip between two empty columns.
  return high == Infinity || high - z >= contact ? z : Infinity;
}
