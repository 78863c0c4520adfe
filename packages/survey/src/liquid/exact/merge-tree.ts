/**
 * Pools on a closed surface, exactly: the merge tree of the air space by height.
 *
 * After Carr, Snoeyink and Axen (Computing contour trees in all dimensions, 2003), applied to the air. Vertices are
 * taken in order of height; the surface up to that height falls into components, kept by union-find over the edges.
 * Two components with a path through the air between them are joined by the surface itself, except where a new one
 * starts at the lowest point of something that hangs: from there one looks straight down and joins what is met, or
 * the outside. A component that meets the outside is a pool filled to that height. What never meets it is a hollow.
 */
import { airLiesBelow } from './air-below.ts';
import { type Contents, contentsBelow } from './contents.ts';
import { Plumb } from './plumb.ts';
import type { Solid } from './solid.ts';

export interface ExactPool extends Contents {
  /** Height of the liquid, mm. */
  readonly level: number;
  /** Vertices at which it is deepest and at which it runs over. */
  readonly deepest: number;
  readonly spill: number;
}

export interface ExactPools {
  readonly pools: readonly ExactPool[];
  /** Per triangle: index of the pool that its lowest vertex lies in, or -1. */
  readonly poolOfTriangle: Int32Array;
}

/** Vertices between two pauses: some hundredths of a second. */
const untilPause = 1 << 12;

/** `pause` is called now and then, and may throw to stop. */
export function exactPools(solid: Solid, pause: () => void = () => {}): ExactPools {
  const { positions, triangles } = solid;
  const count = positions.length / 3;
  const order = Uint32Array.from({ length: count }, (_, v) => v).sort(
    (a, b) => positions[a * 3 + 2] - positions[b * 3 + 2] || a - b,
  );
  const rank = new Uint32Array(count);
  for (let k = 0; k < count; k++) rank[order[k]] = k;
  const lowest = lowestCorners(triangles, rank);
  const star = starsOf(triangles, count);
  pause();
  const plumb = new Plumb(solid);

  const outside = count;
  const root = new Int32Array(count + 1).fill(-1);
  const find = (v: number): number => {
    let r = v;
    while (root[r] >= 0) r = root[r];
    while (root[v] >= 0) {
      const next = root[v];
      root[v] = r;
      v = next;
    }
    return r;
  };
  const join = (a: number, b: number): void => {
    const p = find(a);
    const q = find(b);
    if (p === q) return;
    // The outside stays a root; else the lower vertex does, and so names the deepest point.
    const keep = p === outside || (q !== outside && rank[p] < rank[q]) ? p : q;
    root[keep === p ? q : p] = keep;
    if (keep !== outside) append(keep, keep === p ? q : p);
  };
  const next = new Int32Array(count).fill(-1);
  const last = Int32Array.from({ length: count }, (_, v) => v);
  const append = (list: number, more: number): void => {
    next[last[list]] = more;
    last[list] = last[more];
  };

  const found: { level: number; deepest: number; spill: number }[] = [];
  const poolOfVertex = new Int32Array(count).fill(-1);
  const below: number[] = [];
  for (let k = 0; k < count; k++) {
    if (k % untilPause === 0) pause();
    const v = order[k];
    if (star.first[v] === star.first[v + 1]) continue;
    below.length = 0;
    for (let s = star.first[v]; s < star.first[v + 1]; s++) {
      for (let c = 0; c < 3; c++) {
        const w = triangles[star.triangles[s] * 3 + c];
        if (rank[w] < rank[v]) below.push(w);
      }
    }
    if (below.length === 0) {
      if (!airLiesBelow(solid, star, v)) continue;
      // A sliver folded over by the triangulation looks like something that hangs, but has material below.
      if (plumb.windingBelow(v) > 0) continue;
      const hit = plumb.dropFrom(v);
      join(v, hit < 0 ? outside : lowest[hit]);
      continue;
    }
    if (below.some((w) => find(w) === outside)) {
      for (const w of below) {
        const pool = find(w);
        if (pool === outside) continue;
        for (let m = pool; m >= 0; m = next[m]) poolOfVertex[m] = found.length;
        found.push({ level: positions[v * 3 + 2], deepest: pool, spill: v });
        join(pool, outside);
      }
    }
    for (const w of below) join(v, w);
  }

  const poolOfTriangle = Int32Array.from(lowest, (v) => poolOfVertex[v]);
  const contents = contentsBelow(
    solid,
    poolOfTriangle,
    found.map(({ level }) => level),
  );
  return { pools: found.map((pool, k) => ({ ...pool, ...contents[k] })), poolOfTriangle };
}

function lowestCorners(triangles: Uint32Array, rank: Uint32Array): Uint32Array {
  const lowest = new Uint32Array(triangles.length / 3);
  for (let t = 0; t < lowest.length; t++) {
    let low = triangles[t * 3];
    for (let c = 1; c < 3; c++) if (rank[triangles[t * 3 + c]] < rank[low]) low = triangles[t * 3 + c];
    lowest[t] = low;
  }
  return lowest;
}

/** Triangles around each vertex. */
export interface Stars {
  readonly first: Uint32Array;
  readonly triangles: Uint32Array;
}

function starsOf(triangles: Uint32Array, vertices: number): Stars {
  const first = new Uint32Array(vertices + 2);
  for (const v of triangles) first[v + 2]++;
  for (let v = 2; v < first.length; v++) first[v] += first[v - 1];
  const around = new Uint32Array(triangles.length);
  for (let c = 0; c < triangles.length; c++) around[first[triangles[c] + 1]++] = (c / 3) | 0;
  return { first: first.subarray(0, vertices + 1), triangles: around };
}
