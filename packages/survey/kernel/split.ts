/**
 * Records of things to be put into a tree, 32 bytes each: lowest xyz (f32), number (u32), highest xyz (f32), unused;
 * and the division of a range of them by the surface area heuristic over 16 bins (Wald, On fast construction of
 * SAH-based bounding volume hierarchies, 2007).
 */
import { infinite } from './layout';

export const RECORD: usize = 32;
const BINS: i32 = 16;
/** Bounds (two v128) and count. */
const BIN: usize = 48;

/** Scratch: three axes of bins, then area and count to the right of each bin. */
export const SPLIT_SCRATCH: usize = 3 * 16 * 48 + 128;
let bins: usize = 0;
let rightArea: usize = 0;
let rightCount: usize = 0;
let records: usize = 0;
/** A leaf holds two to this power: what a range costs is counted in whole leaves. */
let leafShift: i32 = 0;

export function beginSplits(scratch: usize, recordsAt: usize, shift: i32): void {
  bins = scratch;
  rightArea = scratch + 3 * 16 * BIN;
  rightCount = rightArea + 64;
  records = recordsAt;
  leafShift = shift;
}

@inline export function halfArea(lo: v128, hi: v128): f32 {
  const d = f32x4.sub(hi, lo);
  const x = f32x4.extract_lane(d, 0);
  const y = f32x4.extract_lane(d, 1);
  const z = f32x4.extract_lane(d, 2);
  return x * y + y * z + z * x;
}

@inline function leavesFor(n: i32): f32 {
  return <f32>((n + (1 << leafShift) - 1) >> leafShift);
}

@inline function grow(bin: usize, lo: v128, hi: v128): void {
  v128.store(bin, f32x4.pmin(v128.load(bin), lo));
  v128.store(bin, f32x4.pmax(v128.load(bin, 16), hi), 16);
  store<i32>(bin, load<i32>(bin, 32) + 1, 32);
}

/** Reorders records [begin, end) into two groups and returns where the second starts, strictly between the ends. */
export function split(begin: i32, end: i32): i32 {
  let lo = infinite();
  let hi = f32x4.neg(infinite());
  for (let i = begin; i < end; i++) {
    const r = records + <usize>i * RECORD;
    // Twice the middle.
    const c = f32x4.add(v128.load(r), v128.load(r, 16));
    lo = f32x4.pmin(lo, c);
    hi = f32x4.pmax(hi, c);
  }
  const d = f32x4.sub(hi, lo);
  const ex = f32x4.extract_lane(d, 0);
  const ey = f32x4.extract_lane(d, 1);
  const ez = f32x4.extract_lane(d, 2);
  const middle = (begin + end) >> 1;
  if (max(ex, max(ey, ez)) <= 0) return middle;
  // All fall into bin 0 of an axis along which they have no extent.
  const kx: f32 = ex > 0 ? <f32>15.99 / ex : 0;
  const ky: f32 = ey > 0 ? <f32>15.99 / ey : 0;
  const kz: f32 = ez > 0 ? <f32>15.99 / ez : 0;
  const scale = f32x4(kx, ky, kz, 0);
  for (let b: usize = 0; b < 48; b++) {
    v128.store(bins + b * BIN, infinite());
    v128.store(bins + b * BIN, f32x4.neg(infinite()), 16);
    store<i32>(bins + b * BIN, 0, 32);
  }
  for (let i = begin; i < end; i++) {
    const r = records + <usize>i * RECORD;
    const l = v128.load(r);
    const h = v128.load(r, 16);
    const b = binsOf(l, h, lo, scale);
    grow(bins + <usize>i32x4.extract_lane(b, 0) * BIN, l, h);
    grow(bins + (16 + <usize>i32x4.extract_lane(b, 1)) * BIN, l, h);
    grow(bins + (32 + <usize>i32x4.extract_lane(b, 2)) * BIN, l, h);
  }
  const best = cheapest();
  if (best < 0) return middle;
  const m = divide(begin, end, best >> 4, best & 15, lo, scale);
  return m > begin && m < end ? m : middle;
}

/** Bin of a box on each axis, lane 3 unused. */
@inline function binsOf(l: v128, h: v128, lo: v128, scale: v128): v128 {
  return i32x4.trunc_sat_f32x4_s(f32x4.mul(f32x4.sub(f32x4.add(l, h), lo), scale));
}

/** Axis times 16 plus the first bin of the second group; -1 when no division separates anything. */
function cheapest(): i32 {
  let least: f32 = Infinity;
  let best: i32 = -1;
  for (let axis: i32 = 0; axis < 3; axis++) {
    const base = bins + <usize>axis * 16 * BIN;
    let l = infinite();
    let h = f32x4.neg(infinite());
    let n = 0;
    for (let b: i32 = BINS - 1; b > 0; b--) {
      const p = base + <usize>b * BIN;
      l = f32x4.pmin(l, v128.load(p));
      h = f32x4.pmax(h, v128.load(p, 16));
      n += load<i32>(p, 32);
      store<f32>(rightArea + (<usize>b << 2), n > 0 ? halfArea(l, h) : 0);
      store<i32>(rightCount + (<usize>b << 2), n);
    }
    l = infinite();
    h = f32x4.neg(infinite());
    n = 0;
    for (let b: i32 = 1; b < BINS; b++) {
      const p = base + <usize>(b - 1) * BIN;
      l = f32x4.pmin(l, v128.load(p));
      h = f32x4.pmax(h, v128.load(p, 16));
      n += load<i32>(p, 32);
      const m = load<i32>(rightCount + (<usize>b << 2));
      if (n == 0 || m == 0) continue;
      const cost = halfArea(l, h) * leavesFor(n) + load<f32>(rightArea + (<usize>b << 2)) * leavesFor(m);
      if (cost < least) {
        least = cost;
        best = axis * 16 + b;
      }
    }
  }
  return best;
}

function divide(begin: i32, end: i32, axis: i32, firstBin: i32, lo: v128, scale: v128): i32 {
  let i = begin;
  let j = end - 1;
  while (i <= j) {
    const r = records + <usize>i * RECORD;
    const l = v128.load(r);
    const h = v128.load(r, 16);
    const b = binsOf(l, h, lo, scale);
    const bin =
      axis == 0 ? i32x4.extract_lane(b, 0) : axis == 1 ? i32x4.extract_lane(b, 1) : i32x4.extract_lane(b, 2);
    if (bin < firstBin) {
      i++;
      continue;
    }
    const q = records + <usize>j * RECORD;
    v128.store(r, v128.load(q));
    v128.store(r, v128.load(q, 16), 16);
    v128.store(q, l);
    v128.store(q, h, 16);
    j--;
  }
  return i;
}
