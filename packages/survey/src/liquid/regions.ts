/** Connected sets of intervals: pools of standing liquid, and hollows that nothing joins to the outside. */
import type { Flood } from './flood.ts';
import type { Passages } from './passages.ts';

export interface Region {
  readonly flood: Flood;
  /** Intervals, ascending. */
  readonly nodes: Uint32Array;
  /** Height of the liquid; Infinity in a hollow. */
  readonly level: number;
  readonly volume_mm3: number;
}

/** Heights closer than this are one height, mm: rounding, not geometry. */
export const sameHeight_mm = 1e-9;

/** Pools and hollows of a flood, in the order of their first interval. */
export function regionsOf(flood: Flood): Region[] {
  const { columns, level } = flood;
  const count = level.length;
  const holds = new Uint8Array(count);
  for (let n = 0; n < count; n++) {
    // A passage as high as the level only lets the surplus over: regions that meet there are two.
    if (level[n] > columns.bottom[n] + sameHeight_mm) holds[n] = 1;
  }
  const root = new Int32Array(count).fill(-1);
  const find = (n: number): number => {
    let r = n;
    while (root[r] >= 0) r = root[r];
    while (root[n] >= 0) {
      const next = root[n];
      root[n] = r;
      n = next;
    }
    return r;
  };
  const join = ({ a, b, height }: Passages): void => {
    for (let e = 0; e < a.length; e++) {
      const p = a[e];
      const q = b[e];
      if (!holds[p] || !holds[q] || height[e] >= Math.min(level[p], level[q]) - sameHeight_mm) continue;
      const rp = find(p);
      const rq = find(q);
      if (rp !== rq) root[Math.max(rp, rq)] = Math.min(rp, rq);
    }
  };
  join(columns.alongU);
  join(columns.alongV);
  const members = new Map<number, number[]>();
  for (let n = 0; n < count; n++) {
    if (!holds[n]) continue;
    const r = find(n);
    const list = members.get(r);
    if (list) list.push(n);
    else members.set(r, [n]);
  }
  return [...members.values()].map((list) => region(flood, Uint32Array.from(list)));
}

function region(flood: Flood, nodes: Uint32Array): Region {
  const { columns } = flood;
  const level = flood.level[nodes[0]];
  let height = 0;
  for (const n of nodes) height += Math.min(level, columns.top[n]) - columns.bottom[n];
  return { flood, nodes, level, volume_mm3: height * columns.grid.pitch ** 2 };
}

/** Lowest and highest column indices of a region. */
export function extentOf({ flood, nodes }: Region): { i0: number; i1: number; j0: number; j1: number } {
  const { grid, columnOf } = flood.columns;
  let i0 = grid.nu;
  let j0 = grid.nv;
  let i1 = 0;
  let j1 = 0;
  for (const n of nodes) {
    const i = columnOf[n] % grid.nu;
    const j = (columnOf[n] - i) / grid.nu;
    if (i < i0) i0 = i;
    if (i > i1) i1 = i;
    if (j < j0) j0 = j;
    if (j > j1) j1 = j;
  }
  return { i0, i1, j0, j1 };
}

/** Lowest and highest height of the liquid or air of a region. */
export function heightsOf({ flood, nodes, level }: Region): { low: number; high: number } {
  const { bottom, top } = flood.columns;
  let low = Infinity;
  let high = -Infinity;
  for (const n of nodes) {
    if (bottom[n] < low) low = bottom[n];
    if (top[n] > high) high = top[n];
  }
  return { low, high: Math.min(high, level) };
}
