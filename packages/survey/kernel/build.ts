/**
 * Four-wide trees: of the triangles of one part, and of the parts above them. A node's range is divided at its widest
 * piece until there are four.
 */
import { BLOCK_SHIFT, CHILDREN, corners, IDS, infinite, LEAF, NODE, nodeAt, SIZES, SLOT } from './layout';
import { beginSplits, halfArea, RECORD, split, SPLIT_SCRATCH } from './split';

/** Begin, end and bounds of a piece of a node's range; four a level. */
const PIECE: usize = 48;
/** Divisions by cost down to here, by halves below: 16 levels of four are enough for any number. */
const COST_LEVELS: i32 = 80;
const LEVELS: usize = 98;

/** Smaller triangles pass the tests in single precision, where their products would vanish, mm. */
const LEAST_SIZE: f32 = 1e-10;

/** Pieces of a part above this share of the whole surface are opened. */
const OPEN_ABOVE: f32 = 1 / 4096;

/** Scratch before the records. */
export const BUILD_SCRATCH: usize = SPLIT_SCRATCH + 98 * 4 * 48;

let pieces: usize = 0;
let records: usize = 0;
/** Next free byte of the arena. */
let arena: usize = 0;
/** 2: leaves of up to four triangles; 0: the records are references themselves. */
let leafShift: i32 = 0;

function begin(scratch: usize, arenaAt: usize, shift: i32): void {
  pieces = scratch + SPLIT_SCRATCH;
  records = pieces + LEVELS * 4 * PIECE;
  arena = arenaAt;
  leafShift = shift;
  beginSplits(scratch, records, shift);
}

export function arenaEnd(): usize {
  return arena;
}

/**
 * Tree of slots [first, first + count), count > 0. `scratch` has BUILD_SCRATCH bytes and RECORD more for each slot; the
 * part's own record (bounds, number `part`) goes to `record`. Returns the root; see `arenaEnd` for the memory used.
 */
export function buildPart(first: i32, count: i32, part: i32, scratch: usize, arenaAt: usize, record: usize): i32 {
  begin(scratch, arenaAt, 2);
  let lo = infinite();
  let hi = f32x4.neg(infinite());
  for (let i: i32 = 0; i < count; i++) {
    const r = records + <usize>i * RECORD;
    const c = corners + <usize>(first + i) * SLOT;
    for (let axis: usize = 0; axis < 3; axis++) {
      const x = load<f64>(c + axis * 8);
      const y = load<f64>(c + axis * 8, 24);
      const z = load<f64>(c + axis * 8, 48);
      store<f32>(r + axis * 4, down(min(x, min(y, z))));
      store<f32>(r + axis * 4, up(max(x, max(y, z))), 16);
    }
    store<f32>(r, 0, 12);
    store<f32>(r, 0, 28);
    lo = f32x4.pmin(lo, v128.load(r));
    hi = f32x4.pmax(hi, v128.load(r, 16));
    store<i32>(r, first + i, 12);
  }
  v128.store(record, lo);
  v128.store(record, hi, 16);
  store<i32>(record, part, 12);
  return buildRoot(count);
}

/**
 * Tree over `count` > 0 parts by their records, whose leaves are the complements of their numbers.
 */
export function buildPartsTop(count: i32, from: usize, scratch: usize, arenaAt: usize): i32 {
  begin(scratch, arenaAt, 0);
  memory.copy(records, from, <usize>count * RECORD);
  for (let i: i32 = 0; i < count; i++) {
    const r = records + <usize>i * RECORD;
    store<i32>(r, ~load<i32>(r, 12), 12);
  }
  return buildRoot(count);
}

/**
 * Tree over the trees of `count` > 0 parts, by their records and the references at `roots`, an i32 a part number. Parts
 * overlap, so the upper nodes of large ones are opened first, up to `most` pieces in all, and what is below them is
 * sorted anew (after Benthin et al., Improved two-level BVHs using partial re-braiding, 2017).
 */
export function buildTop(count: i32, most: i32, from: usize, roots: usize, scratch: usize, arenaAt: usize): i32 {
  begin(scratch, arenaAt, 0);
  memory.copy(records, from, <usize>count * RECORD);
  for (let i: i32 = 0; i < count; i++) {
    const r = records + <usize>i * RECORD;
    store<i32>(r, load<i32>(roots + (<usize>load<u32>(r, 12) << 2)), 12);
  }
  measure(pieces, 0, count);
  const small = halfArea(v128.load(pieces, 16), v128.load(pieces, 32)) * OPEN_ABOVE;
  for (let i: i32 = 0; i < count && count + 3 <= most; i++) {
    const r = records + <usize>i * RECORD;
    const ref = load<i32>(r, 12);
    if (ref < 0 || halfArea(v128.load(r), v128.load(r, 16)) <= small) continue;
    const node = nodeAt(ref);
    let to = r;
    for (let lane: usize = 0; lane < 16; lane += 4) {
      // An absent child.
      if (load<f32>(node + lane) == Infinity) continue;
      if (to != r) to = records + <usize>(count++) * RECORD;
      copyChild(node + lane, to);
      to = 0;
    }
    // The first child stands where its parent stood, and is looked at next.
    i--;
  }
  return buildRoot(count);
}

/** Writes the record of a node's child. */
@inline function copyChild(lane: usize, to: usize): void {
  for (let axis: usize = 0; axis < 3; axis++) {
    store<f32>(to + axis * 4, load<f32>(lane + axis * 32));
    store<f32>(to + axis * 4, load<f32>(lane + axis * 32, 16), 16);
  }
  store<i32>(to, load<i32>(lane, CHILDREN), 12);
}

function buildRoot(count: i32): i32 {
  if (count <= 1 << leafShift) return makeLeaf(0, count);
  const node = takeNode();
  fill(node, 0, count, 0);
  return <i32>(node >> BLOCK_SHIFT);
}

@inline function takeNode(): usize {
  const node = arena;
  arena += NODE;
  return node;
}

/** Fills a node. Its children stand side by side, so that a ray finds them in few pages of memory. */
function fill(node: usize, begin: i32, end: i32, level: i32): void {
  const mine = pieces + <usize>level * 4 * PIECE;
  measure(mine, begin, end);
  let n: i32 = 1;
  while (n < 4) {
    let widest: i32 = -1;
    let area: f32 = -1;
    for (let i: i32 = 0; i < n; i++) {
      const p = mine + <usize>i * PIECE;
      if (load<i32>(p, 4) - load<i32>(p) <= 1 << leafShift) continue;
      const a = halfArea(v128.load(p, 16), v128.load(p, 32));
      if (a > area) {
        area = a;
        widest = i;
      }
    }
    if (widest < 0) break;
    const p = mine + <usize>widest * PIECE;
    const b = load<i32>(p);
    const e = load<i32>(p, 4);
    const m = level < COST_LEVELS ? split(b, e) : (b + e) >> 1;
    measure(p, b, m);
    measure(mine + <usize>n * PIECE, m, e);
    n++;
  }
  for (let i: i32 = 0; i < 4; i++) {
    const p = mine + <usize>i * PIECE;
    const lane = node + (<usize>i << 2);
    bound(lane, i < n ? v128.load(p, 16) : infinite(), i < n ? v128.load(p, 32) : f32x4.neg(infinite()));
    if (i >= n) continue;
    const b = load<i32>(p);
    const e = load<i32>(p, 4);
    store<i32>(lane, e - b <= 1 << leafShift ? makeLeaf(b, e) : <i32>(takeNode() >> BLOCK_SHIFT), CHILDREN);
  }
  for (let i: i32 = 0; i < n; i++) {
    const p = mine + <usize>i * PIECE;
    const b = load<i32>(p);
    const e = load<i32>(p, 4);
    if (e - b > 1 << leafShift) fill(nodeAt(load<i32>(node + (<usize>i << 2), CHILDREN)), b, e, level + 1);
  }
}

function measure(piece: usize, begin: i32, end: i32): void {
  let lo = infinite();
  let hi = f32x4.neg(infinite());
  for (let i = begin; i < end; i++) {
    const r = records + <usize>i * RECORD;
    lo = f32x4.pmin(lo, v128.load(r));
    hi = f32x4.pmax(hi, v128.load(r, 16));
  }
  store<i32>(piece, begin);
  store<i32>(piece, end, 4);
  v128.store(piece, lo, 16);
  v128.store(piece, hi, 32);
}

@inline function bound(lane: usize, lo: v128, hi: v128): void {
  store<f32>(lane, f32x4.extract_lane(lo, 0));
  store<f32>(lane, f32x4.extract_lane(hi, 0), 16);
  store<f32>(lane, f32x4.extract_lane(lo, 1), 32);
  store<f32>(lane, f32x4.extract_lane(hi, 1), 48);
  store<f32>(lane, f32x4.extract_lane(lo, 2), 64);
  store<f32>(lane, f32x4.extract_lane(hi, 2), 80);
}

/** The reference of a range that is not divided. */
function makeLeaf(begin: i32, end: i32): i32 {
  if (leafShift == 0) return load<i32>(records + <usize>begin * RECORD, 12);
  const leaf = arena;
  arena += LEAF;
  memory.fill(leaf, 0, LEAF);
  for (let lane: i32 = 0; lane < 4; lane++) {
    const at = leaf + (<usize>lane << 2);
    if (begin + lane >= end) {
      store<i32>(at, -1, IDS);
      continue;
    }
    const slot = load<u32>(records + <usize>(begin + lane) * RECORD, 12);
    const c = corners + <usize>slot * SLOT;
    let size: f32 = LEAST_SIZE;
    for (let axis: usize = 0; axis < 3; axis++) {
      const a = load<f64>(c + axis * 8);
      const u = <f32>(load<f64>(c + axis * 8, 24) - a);
      const v = <f32>(load<f64>(c + axis * 8, 48) - a);
      store<f32>(at + axis * 16, <f32>a);
      store<f32>(at + axis * 16, u, 48);
      store<f32>(at + axis * 16, v, 96);
      size = max(size, max(abs(u), abs(v)));
    }
    store<i32>(at, slot, IDS);
    store<f32>(at, size, SIZES);
  }
  return ~(<i32>(leaf >> BLOCK_SHIFT));
}

@inline function down(x: f64): f32 {
  const f = <f32>x;
  return <f64>f > x ? nextDown(f) : f;
}

@inline function up(x: f64): f32 {
  const f = <f32>x;
  return <f64>f < x ? -nextDown(-f) : f;
}

@inline function nextDown(f: f32): f32 {
  if (f == 0) return -1e-45;
  const bits = reinterpret<i32>(f);
  return reinterpret<f32>(f > 0 ? bits - 1 : bits + 1);
}
