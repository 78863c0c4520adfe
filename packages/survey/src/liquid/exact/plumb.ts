import type { Solid } from './solid.ts';

/** Slack with which a plumb line meets the edge of a triangle, as a share of its size. */
const slack = 1e-9;
/** Finer than single precision resolves at the size of a machine, coarser than rounding. */
const nudge_mm = [3.1e-6, 4.7e-6] as const;

/** Plumb lines down to a surface, over square bins of the ground plan. */
export class Plumb {
  readonly #solid: Solid;
  readonly #low: readonly [number, number];
  readonly #size: number;
  readonly #across: readonly [number, number];
  readonly #first: Uint32Array;
  readonly #entries: Uint32Array;
  /** Height at which the last line met the surface. */
  height = Number.NaN;

  constructor(solid: Solid) {
    const { positions, triangles } = solid;
    this.#solid = solid;
    let [xLow, xHigh, yLow, yHigh] = [Infinity, -Infinity, Infinity, -Infinity];
    for (let i = 0; i < positions.length; i += 3) {
      xLow = Math.min(xLow, positions[i]);
      xHigh = Math.max(xHigh, positions[i]);
      yLow = Math.min(yLow, positions[i + 1]);
      yHigh = Math.max(yHigh, positions[i + 1]);
    }
    const n = triangles.length / 3;
    const wanted = Math.min(Math.max(Math.sqrt(n), 1), 512);
    this.#low = [xLow, yLow];
    this.#size = Math.max(xHigh - xLow, yHigh - yLow, 1e-9) / wanted;
    this.#across = [Math.floor((xHigh - xLow) / this.#size) + 1, Math.floor((yHigh - yLow) / this.#size) + 1];
    // Bins that the triangle's ground plan touches, one more where it ends at a border: i0, j0, i1, j1.
    const spans = new Uint16Array(n * 4);
    const margin = this.#size * slack;
    const first = new Uint32Array(this.#across[0] * this.#across[1] + 2);
    for (let t = 0; t < n; t++) {
      const a = triangles[t * 3] * 3;
      const b = triangles[t * 3 + 1] * 3;
      const c = triangles[t * 3 + 2] * 3;
      for (const k of [0, 1] as const) {
        const p = positions[a + k];
        const q = positions[b + k];
        const r = positions[c + k];
        spans[t * 4 + k] = this.#bin(k, Math.min(p, q, r) - margin);
        spans[t * 4 + 2 + k] = this.#bin(k, Math.max(p, q, r) + margin);
      }
      for (let j = spans[t * 4 + 1]; j <= spans[t * 4 + 3]; j++) {
        const row = j * this.#across[0];
        for (let i = spans[t * 4]; i <= spans[t * 4 + 2]; i++) first[row + i + 2]++;
      }
    }
    for (let b = 2; b < first.length; b++) first[b] += first[b - 1];
    this.#entries = new Uint32Array(first[first.length - 1]);
    for (let t = 0; t < n; t++) {
      for (let j = spans[t * 4 + 1]; j <= spans[t * 4 + 3]; j++) {
        const row = j * this.#across[0];
        for (let i = spans[t * 4]; i <= spans[t * 4 + 2]; i++) this.#entries[first[row + i + 1]++] = t;
      }
    }
    this.#first = first;
  }

  /** The first triangle straight below a vertex that is no corner of it, or -1. */
  dropFrom(vertex: number): number {
    const { positions } = this.#solid;
    return this.drop(positions[vertex * 3], positions[vertex * 3 + 1], positions[vertex * 3 + 2], vertex);
  }

  /** The first triangle straight below a place, or -1; those with the corner `without` do not count. */
  drop(x: number, y: number, z: number, without = -1): number {
    const { positions, triangles } = this.#solid;
    const bin = this.#bin(1, y) * this.#across[0] + this.#bin(0, x);
    let hit = -1;
    let highest = -Infinity;
    for (let e = this.#first[bin]; e < this.#first[bin + 1]; e++) {
      const t = this.#entries[e];
      const a = triangles[t * 3];
      const b = triangles[t * 3 + 1];
      const c = triangles[t * 3 + 2];
      if (a === without || b === without || c === without) continue;
      const height = heightAt(positions, a * 3, b * 3, c * 3, x, y, slack);
      if (height <= z && height > highest) {
        highest = height;
        hit = t;
      }
    }
    this.height = highest;
    return hit;
  }

  /**
   * How often the surface straight below a vertex, without the faces around it, is entered from below, less how often
   * it is left: above 0 where material lies below.
   */
  windingBelow(vertex: number): number {
    const { positions, triangles } = this.#solid;
    const [x, y, z] = positions.subarray(vertex * 3, vertex * 3 + 3);
    // Off the vertices and edges that lie exactly below.
    const nx = x + nudge_mm[0];
    const ny = y + nudge_mm[1];
    const bin = this.#bin(1, ny) * this.#across[0] + this.#bin(0, nx);
    let winding = 0;
    for (let e = this.#first[bin]; e < this.#first[bin + 1]; e++) {
      const t = this.#entries[e] * 3;
      if (triangles[t] === vertex || triangles[t + 1] === vertex || triangles[t + 2] === vertex) continue;
      const a = triangles[t] * 3;
      const b = triangles[t + 1] * 3;
      const c = triangles[t + 2] * 3;
      if (!(heightAt(positions, a, b, c, nx, ny, 0) < z)) continue;
      const up =
        (positions[b] - positions[a]) * (positions[c + 1] - positions[a + 1]) -
        (positions[c] - positions[a]) * (positions[b + 1] - positions[a + 1]);
      winding -= Math.sign(up);
    }
    return winding;
  }

  #bin(k: 0 | 1, value: number): number {
    const bin = Math.floor((value - this.#low[k]) / this.#size);
    return Math.min(Math.max(bin, 0), this.#across[k] - 1);
  }
}

/** Height of a triangle over a place in the ground plan; NaN on upright ones, and beside it by more than a share of its size. */
function heightAt(
  p: Float64Array,
  a: number,
  b: number,
  c: number,
  x: number,
  y: number,
  beside: number,
): number {
  const ax = p[a] - x;
  const ay = p[a + 1] - y;
  const bx = p[b] - x;
  const by = p[b + 1] - y;
  const cx = p[c] - x;
  const cy = p[c + 1] - y;
  const wa = bx * cy - by * cx;
  const wb = cx * ay - cy * ax;
  const wc = ax * by - ay * bx;
  const sum = wa + wb + wc;
  const size = Math.max(Math.abs(ax), Math.abs(ay), Math.abs(bx), Math.abs(by), Math.abs(cx), Math.abs(cy));
  if (Math.abs(sum) <= slack * slack * size * size) return Number.NaN;
  if (wa / sum < -beside || wb / sum < -beside || wc / sum < -beside) return Number.NaN;
  return (wa * p[a + 2] + wb * p[b + 2] + wc * p[c + 2]) / sum;
}
