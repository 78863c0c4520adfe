/**
 * Levels of standing liquid: for every interval of air the height to which one must at least rise on the way to the
 * outside, by Dijkstra's method with the cost "highest passage on the way". Runs of equal cost skip the queue (the
 * idea of the pit queue in Barnes, Lehman and Mulla, Priority-Flood, 2014).
 *
 * A whole grid is first swept along its rows and files (the idea of fast sweeping, Zhao 2005): most air lies straight
 * before the outside, and passages in the order of the memory are gone through several times faster than in that of
 * heights. The queue then only sees what lies around a corner.
 */
import FlatQueue from 'flatqueue';
import type { Columns } from './columns.ts';
import { Indices } from './grow.ts';
import type { Passages } from './passages.ts';

export interface Flood {
  readonly columns: Columns;
  /** Per interval; -Infinity outside at any height, Infinity for air that nothing joins to the outside. */
  readonly level: Float64Array;
  /** The interval from which the level came; its own number where the level was given. */
  readonly from: Uint32Array;
}

/** Floods from the ground: intervals that reach down to it are outside. `pause`: see `spread`. */
export function floodFromOutside(columns: Columns, pause?: () => void): Flood {
  const count = columns.bottom.length;
  const level = new Float64Array(count).fill(Infinity);
  for (let n = 0; n < count; n++) if (columns.bottom[n] === -Infinity) level[n] = -Infinity;
  const flood = { columns, level, from: own(count) };
  settleLevels(flood, pause);
  return flood;
}

/** Carries given levels on over a whole grid; the rest may be too high, Infinity to begin with. `pause`: see `spread`. */
export function settleLevels(flood: Flood, pause: () => void = () => {}): void {
  const { alongU, alongV } = flood.columns;
  sweep(flood, alongU, pause);
  sweep(flood, alongV, pause);
  sweep(flood, alongU, pause);
  spread(flood, unsettled(flood), pause);
}

/** 0, 1, 2 … */
export function own(count: number): Uint32Array {
  const from = new Uint32Array(count);
  for (let n = 0; n < count; n++) from[n] = n;
  return from;
}

/** Along all lines of one direction, to and fro. */
function sweep({ level, from }: Flood, { a, b, height }: Passages, pause: () => void): void {
  const pass = (e: number): void => {
    const p = a[e];
    const q = b[e];
    const atP = level[p];
    const atQ = level[q];
    if (atP < atQ) {
      const candidate = Math.max(height[e], atP);
      if (candidate >= atQ) return;
      level[q] = candidate;
      from[q] = p;
    } else if (atQ < atP) {
      const candidate = Math.max(height[e], atQ);
      if (candidate >= atP) return;
      level[p] = candidate;
      from[p] = q;
    }
  };
  const count = height.length;
  for (let e = 0; e < count; e++) {
    if (e % untilPause === 0) pause();
    pass(e);
  }
  for (let e = count - 1; e >= 0; e--) {
    if (e % untilPause === 0) pause();
    pass(e);
  }
}

/** Intervals that could still lower a neighbour. */
function unsettled({ columns: { alongU, alongV }, level }: Flood): number[] {
  const found = new Set<number>();
  for (const { a, b, height } of [alongU, alongV]) {
    for (let e = 0; e < height.length; e++) {
      const p = level[a[e]];
      const q = level[b[e]];
      if (p < q && Math.max(height[e], p) < q) found.add(a[e]);
      else if (q < p && Math.max(height[e], q) < p) found.add(b[e]);
    }
  }
  return [...found];
}

/** Intervals between two pauses: some hundredths of a second. */
const untilPause = 1 << 16;

/**
 * Carries the levels of the seeds on to whatever they lower. Levels elsewhere only ever fall. `pause` is called now and then,
 * and may throw to stop.
 */
export function spread(
  { columns, level, from }: Flood,
  seeds: readonly number[],
  pause: () => void = () => {},
): void {
  if (seeds.length === 0) return;
  const { grid, columnOf, alongU, alongV, low, high } = columns;
  const { nu, nv } = grid;
  const queue = new HeightQueue(level, low, high);
  const run = new Indices(1024);
  for (const n of seeds) {
    if (level[n] === -Infinity) run.push(n);
    else queue.push(n);
  }

  const relax = (passages: Passages, strip: number, node: number, height: number): void => {
    const { first, a, b, height: at } = passages;
    const end = first[strip + 1];
    for (let e = first[strip]; e < end; e++) {
      const other = a[e] === node ? b[e] : b[e] === node ? a[e] : -1;
      if (other < 0) continue;
      const candidate = Math.max(at[e], height);
      if (candidate >= level[other]) continue;
      level[other] = candidate;
      from[other] = node;
      if (candidate === height) run.push(other);
      else queue.push(other);
    }
  };

  for (let done = 1; ; done++) {
    if (done % untilPause === 0) pause();
    const node = run.length > 0 ? run.data[--run.length] : queue.pop();
    if (node < 0) return;
    const height = level[node];
    const c = columnOf[node];
    const i = c % nu;
    const j = (c - i) / nu;
    relax(alongU, c, node, height);
    if (i > 0) relax(alongU, c - 1, node, height);
    relax(alongV, i * nv + j, node, height);
    if (j > 0) relax(alongV, i * nv + j - 1, node, height);
  }
}

/** Buckets of the queue: few enough to be made anew for a small grid. */
const mostBuckets = 4096;
const perBucket = 16;

/**
 * Intervals by level, lowest first. Buckets of equal height range are plain stacks; only the lowest is kept in order.
 * An interval may be in it twice when its level fell meanwhile; of its entries only one with its present level comes out.
 */
class HeightQueue {
  readonly #level: Float64Array;
  readonly #head: Int32Array;
  readonly #low: number;
  readonly #perHeight: number;
  readonly #node = new Indices(1024);
  readonly #next = new Indices(1024);
  readonly #sorted = new FlatQueue<number>();
  #current = -1;

  constructor(level: Float64Array, low: number, high: number) {
    const buckets = Math.min(mostBuckets, 1 + Math.ceil(level.length / perBucket));
    this.#level = level;
    this.#head = new Int32Array(buckets).fill(-1);
    this.#low = low;
    this.#perHeight = high > low ? (buckets - 1) / (high - low) : 0;
  }

  push(node: number): void {
    const height = this.#level[node];
    const last = this.#head.length - 1;
    const bucket = Math.min(last, Math.max(0, Math.floor((height - this.#low) * this.#perHeight)));
    if (bucket <= this.#current) {
      this.#sorted.push(node, height);
      return;
    }
    this.#next.push(this.#head[bucket] + 1);
    this.#head[bucket] = this.#node.length;
    this.#node.push(node);
  }

  /** -1 when empty. */
  pop(): number {
    for (;;) {
      const height = this.#sorted.peekValue();
      const node = this.#sorted.pop();
      if (node !== undefined && height === this.#level[node]) return node;
      if (node !== undefined) continue;
      if (++this.#current >= this.#head.length) return -1;
      for (let slot = this.#head[this.#current]; slot >= 0; slot = this.#next.data[slot] - 1) {
        const waiting = this.#node.data[slot];
        this.#sorted.push(waiting, this.#level[waiting]);
      }
    }
  }
}
