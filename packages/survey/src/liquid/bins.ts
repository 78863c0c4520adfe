import type { Grid } from './grid.ts';
import type { Soup } from './soup.ts';

const binsAcross = 128;
/** Heights are kept in single precision: to better than this in a machine of 10 m. */
const rounding_mm = 1e-3;

/** What finds the triangles near a grid. */
export type Bins = Pick<TriangleBins, 'over'>;

/** Triangles by the square of the ground plan over which they lie, to find those in a box quickly. */
export class TriangleBins {
  readonly #low: readonly [number, number];
  readonly #size: number;
  readonly #across: readonly [number, number];
  readonly #first: Uint32Array;
  readonly #entries: Uint32Array;
  readonly #stamp: Uint32Array;
  /** Lowest and highest corner of each triangle. */
  readonly #low_mm: Float32Array;
  readonly #high_mm: Float32Array;
  #round = 0;

  constructor({ uvz, triangles, low, high }: Soup) {
    const du = Math.max(high[0] - low[0], 1e-9);
    const dv = Math.max(high[1] - low[1], 1e-9);
    this.#low = [low[0], low[1]];
    this.#size = Math.max(du, dv) / binsAcross;
    this.#across = [Math.floor(du / this.#size) + 1, Math.floor(dv / this.#size) + 1];
    const n = triangles.length / 3;
    this.#stamp = new Uint32Array(n);
    this.#low_mm = new Float32Array(n);
    this.#high_mm = new Float32Array(n);
    const boxes = new Int16Array(n * 4);
    const first = new Uint32Array(this.#across[0] * this.#across[1] + 2);
    for (let t = 0; t < n; t++) {
      for (let k = 0; k < 2; k++) {
        const a = uvz[triangles[t * 3] * 3 + k];
        const b = uvz[triangles[t * 3 + 1] * 3 + k];
        const c = uvz[triangles[t * 3 + 2] * 3 + k];
        boxes[t * 4 + k] = this.#bin(k, Math.min(a, b, c));
        boxes[t * 4 + 2 + k] = this.#bin(k, Math.max(a, b, c));
      }
      const za = uvz[triangles[t * 3] * 3 + 2];
      const zb = uvz[triangles[t * 3 + 1] * 3 + 2];
      const zc = uvz[triangles[t * 3 + 2] * 3 + 2];
      this.#low_mm[t] = Math.min(za, zb, zc);
      this.#high_mm[t] = Math.max(za, zb, zc);
      this.#each(boxes, t, (bin) => {
        first[bin + 2]++;
      });
    }
    for (let b = 2; b < first.length; b++) first[b] += first[b - 1];
    const entries = new Uint32Array(first[first.length - 1]);
    for (let t = 0; t < n; t++) {
      this.#each(boxes, t, (bin) => {
        entries[first[bin + 1]++] = t;
      });
    }
    this.#first = first;
    this.#entries = entries;
  }

  /**
   * Numbers of the triangles near the ground plan of a grid, in ascending order, without those that lie wholly above
   * `top_mm` or below `bottom_mm` (to a thousandth of a mm).
   */
  over({ u0, v0, pitch, nu, nv }: Grid, bottom_mm: number, top_mm: number): Uint32Array {
    const low = bottom_mm - rounding_mm;
    const high = top_mm + rounding_mm;
    const round = ++this.#round;
    const found: number[] = [];
    const iHigh = this.#bin(0, u0 + (nu - 1) * pitch);
    const jHigh = this.#bin(1, v0 + (nv - 1) * pitch);
    for (let j = this.#bin(1, v0); j <= jHigh; j++) {
      for (let i = this.#bin(0, u0); i <= iHigh; i++) {
        const bin = j * this.#across[0] + i;
        for (let e = this.#first[bin]; e < this.#first[bin + 1]; e++) {
          const t = this.#entries[e];
          if (this.#stamp[t] === round) continue;
          this.#stamp[t] = round;
          if (this.#low_mm[t] <= high && this.#high_mm[t] >= low) found.push(t);
        }
      }
    }
    return Uint32Array.from(found).sort();
  }

  #bin(k: 0 | 1 | number, value: number): number {
    const bin = Math.floor((value - this.#low[k]) / this.#size);
    return Math.min(Math.max(bin, 0), this.#across[k] - 1);
  }

  #each(boxes: Int16Array, t: number, visit: (bin: number) => void): void {
    for (let j = boxes[t * 4 + 1]; j <= boxes[t * 4 + 3]; j++) {
      for (let i = boxes[t * 4]; i <= boxes[t * 4 + 2]; i++) visit(j * this.#across[0] + i);
    }
  }
}
