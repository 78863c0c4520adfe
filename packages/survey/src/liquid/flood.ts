/**
 * Levels of standing liquid: for every interval of air the height to which one must at least rise on the way to the
 * outside, by Dijkstra's method with the cost "highest passage on the way". Runs of equal cost skip the queue (the
 * idea of the pit queue in Barnes, Lehman and Mulla, Priority-Flood, 2014).
 */
import FlatQueue from 'flatqueue';
import type { Columns } from './columns.ts';
import type { Passages } from './passages.ts';

export interface Flood {
  readonly columns: Columns;
  /** Per interval; -Infinity outside at any height, Infinity for air that nothing joins to the outside. */
  readonly level: Float64Array;
  /** The interval from which the level came; its own number where the level was given. */
  readonly from: Uint32Array;
}

/** Floods from the ground: intervals that reach down to it are outside. */
export function floodFromOutside(columns: Columns): Flood {
  const count = columns.bottom.length;
  const level = new Float64Array(count).fill(Infinity);
  const seeds: number[] = [];
  for (let n = 0; n < count; n++) {
    if (columns.bottom[n] !== -Infinity) continue;
    level[n] = -Infinity;
    seeds.push(n);
  }
  const flood = { columns, level, from: Uint32Array.from({ length: count }, (_, n) => n) };
  spread(flood, seeds);
  return flood;
}

/** Carries the levels of the seeds on to whatever they lower. Levels elsewhere only ever fall. */
export function spread({ columns, level, from }: Flood, seeds: readonly number[]): void {
  const { grid, columnOf, alongU, alongV } = columns;
  const { nu, nv } = grid;
  const heap = new FlatQueue<number>();
  const run: number[] = [];
  for (const n of seeds) {
    if (level[n] === -Infinity) run.push(n);
    else heap.push(n, level[n]);
  }

  const relax = (passages: Passages, strip: number, node: number, own: number): void => {
    const end = passages.first[strip + 1];
    for (let e = passages.first[strip]; e < end; e++) {
      const other = passages.a[e] === node ? passages.b[e] : passages.b[e] === node ? passages.a[e] : -1;
      if (other < 0) continue;
      const height = passages.height[e];
      const candidate = Math.max(height, own);
      if (candidate >= level[other]) continue;
      level[other] = candidate;
      from[other] = node;
      if (candidate === own) run.push(other);
      else heap.push(other, candidate);
    }
  };

  for (;;) {
    let node = run.pop();
    if (node === undefined) {
      const key = heap.peekValue();
      node = heap.pop();
      if (node === undefined || key === undefined) return;
      if (key > level[node]) continue;
    }
    const own = level[node];
    const c = columnOf[node];
    const i = c % nu;
    const j = (c - i) / nu;
    relax(alongU, c, node, own);
    if (i > 0) relax(alongU, c - 1, node, own);
    relax(alongV, i * nv + j, node, own);
    if (j > 0) relax(alongV, i * nv + j - 1, node, own);
  }
}
