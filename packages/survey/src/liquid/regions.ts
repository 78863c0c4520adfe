/** Connected sets of intervals: pools of standing liquid, and hollows that nothing joins to the outside. */
import type { Flood } from './flood.ts';
import { Indices } from './grow.ts';
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

/** Intervals that liquid stands in, ascending. */
export function wetIntervals({ columns: { bottom }, level }: Flood): Uint32Array {
  const wet = new Indices(1024);
  for (let n = 0; n < level.length; n++)
    if (level[n] > bottom[n] + sameHeight_mm && level[n] < Infinity) wet.push(n);
  return wet.done();
}

/** Intervals that nothing joins to the outside, ascending. None of them has a passage to one that liquid stands in. */
export function sealedIntervals({ level }: Flood): Uint32Array {
  const sealed = new Indices(1024);
  for (let n = 0; n < level.length; n++) if (level[n] === Infinity) sealed.push(n);
  return sealed.done();
}

/**
 * Pools and hollows of a flood, in the order of their first interval. `among`: the intervals to look at (ascending); all
 * when absent.
 */
export function regionsOf(flood: Flood, among?: Uint32Array): Region[] {
  const { columns, level } = flood;
  const { bottom, columnOf, grid, alongU, alongV } = columns;
  const { nu, nv } = grid;
  const holding = new Indices(1024);
  const count = among ? among.length : level.length;
  for (let k = 0; k < count; k++) {
    const n = among ? among[k] : k;
    if (level[n] > bottom[n] + sameHeight_mm) holding.push(n);
  }
  const nodes = holding.done();
  // Per interval its place among those, or -1.
  const place = new Int32Array(level.length).fill(-1);
  for (let m = 0; m < nodes.length; m++) place[nodes[m]] = m;
  const root = new Int32Array(nodes.length).fill(-1);
  const find = (m: number): number => {
    let r = m;
    while (root[r] >= 0) r = root[r];
    while (root[m] >= 0) {
      const next = root[m];
      root[m] = r;
      m = next;
    }
    return r;
  };
  const join = ({ first, a, b, height }: Passages, strip: number, n: number): void => {
    for (let e = first[strip]; e < first[strip + 1]; e++) {
      if (a[e] !== n || place[b[e]] < 0) continue;
      // A passage as high as the level only lets the surplus over: regions that meet there are two.
      if (height[e] >= Math.min(level[n], level[b[e]]) - sameHeight_mm) continue;
      const p = find(place[n]);
      const q = find(place[b[e]]);
      if (p !== q) root[Math.max(p, q)] = Math.min(p, q);
    }
  };
  for (const n of nodes) {
    const c = columnOf[n];
    const i = c % nu;
    join(alongU, c, n);
    join(alongV, i * nv + (c - i) / nu, n);
  }
  // Roots are the first of their region: regions are numbered in the order of their first interval.
  const region = new Uint32Array(nodes.length);
  const sizes: number[] = [];
  for (let m = 0; m < nodes.length; m++) {
    const r = find(m);
    if (r === m) region[m] = sizes.push(0) - 1;
    else region[m] = region[r];
    sizes[region[m]]++;
  }
  const lists = sizes.map((size) => new Uint32Array(size));
  sizes.fill(0);
  for (let m = 0; m < nodes.length; m++) lists[region[m]][sizes[region[m]]++] = nodes[m];
  return lists.map((list) => regionAt(flood, list, level[list[0]]));
}

/** Intervals of a flood (ascending), filled to a level. */
export function regionAt(flood: Flood, nodes: Uint32Array, level: number): Region {
  const { columns } = flood;
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
