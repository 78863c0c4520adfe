/**
 * Where air passes between two neighbouring columns.
 *
 * Between two columns, at the heights that the section of the surface covers there, nothing passes: a wall thinner
 * than the pitch, or one that leans, holds. Two intervals are joined at the lowest height, in both of them, that
 * the section leaves free.
 */
import { Floats, Indices } from './grow.ts';
import type { Line } from './line.ts';

export interface Passages {
  /** Passages of strip s: from first[s] to first[s + 1]. */
  readonly first: Uint32Array;
  /** The two intervals, and the lowest height at which air passes from one to the other. */
  readonly a: Uint32Array;
  readonly b: Uint32Array;
  readonly height: Float64Array;
}

/** Intervals a0 to a1 on one side, b0 to b1 on the other. */
export interface Strip {
  a0: number;
  a1: number;
  b0: number;
  b1: number;
}

export class PassageBuilder {
  readonly #first: Uint32Array;
  readonly #a: Indices;
  readonly #b: Indices;
  readonly #height: Floats;
  readonly #contact: number;
  #strips = 0;
  #low = new Float64Array(256);
  #high = new Float64Array(256);
  #ranges = 0;

  /** Strips are added in order. Heights that lie closer together than `contact_mm` leave nothing free between them. */
  constructor(strips: number, contact_mm: number) {
    this.#first = new Uint32Array(strips + 1);
    this.#a = new Indices(strips * 2);
    this.#b = new Indices(strips * 2);
    this.#height = new Floats(strips * 2);
    this.#contact = contact_mm;
  }

  /** A strip without neighbours, at the end of a line. */
  skip(): void {
    this.#first[++this.#strips] = this.#a.length;
  }

  add(line: Line, strip: number, { a0, a1, b0, b1 }: Strip, bottom: Float64Array, top: Float64Array): void {
    if (line.pieceHead[strip] < 0) this.#ranges = 0;
    else this.#block(line, strip);
    let a = a0;
    let b = b0;
    while (a < a1 && b < b1) {
      const low = Math.max(bottom[a], bottom[b]);
      const high = Math.min(top[a], top[b]);
      const height = this.#lowestFree(low, high);
      if (height < Infinity) {
        this.#a.push(a);
        this.#b.push(b);
        this.#height.push(height);
      }
      if (top[a] < top[b]) a++;
      else if (top[a] > top[b]) b++;
      else {
        a++;
        b++;
      }
    }
    this.#first[++this.#strips] = this.#a.length;
  }

  done(): Passages {
    return { first: this.#first, a: this.#a.done(), b: this.#b.done(), height: this.#height.done() };
  }

  /** Merges the height ranges of the section in the strip; they stay sorted and apart. */
  #block(line: Line, strip: number): void {
    const contact = this.#contact;
    let low = this.#low;
    let high = this.#high;
    let n = 0;
    for (let piece = line.pieceHead[strip]; piece >= 0; piece = line.pieceNext[piece]) {
      const p = Math.min(line.pieceFromZ[piece], line.pieceToZ[piece]);
      const q = Math.max(line.pieceFromZ[piece], line.pieceToZ[piece]);
      // First range that the new one touches or precedes.
      let k = n;
      while (k > 0 && high[k - 1] + contact > p) k--;
      if (k === n || low[k] - q >= contact) {
        if (n === low.length) {
          this.#widen();
          low = this.#low;
          high = this.#high;
        }
        for (let m = n; m > k; m--) {
          low[m] = low[m - 1];
          high[m] = high[m - 1];
        }
        low[k] = p;
        high[k] = q;
        n++;
        continue;
      }
      if (p < low[k]) low[k] = p;
      if (q <= high[k]) continue;
      high[k] = q;
      let next = k + 1;
      while (next < n && low[next] - high[k] < contact) {
        if (high[next] > high[k]) high[k] = high[next];
        next++;
      }
      const gone = next - k - 1;
      if (gone === 0) continue;
      for (let m = next; m < n; m++) {
        low[m - gone] = low[m];
        high[m - gone] = high[m];
      }
      n -= gone;
    }
    this.#ranges = n;
  }

  /** Infinity where nothing is free. */
  #lowestFree(low: number, high: number): number {
    let z = low;
    for (let k = 0; k < this.#ranges; k++) {
      if (this.#high[k] <= z) continue;
      if (this.#low[k] - z >= this.#contact) break;
      z = this.#high[k];
    }
    // Both ends at infinity: a strip between two empty columns.
    return high === Infinity || high - z >= this.#contact ? z : Infinity;
  }

  #widen(): void {
    const low = new Float64Array(this.#low.length * 2);
    const high = new Float64Array(low.length);
    low.set(this.#low);
    high.set(this.#high);
    this.#low = low;
    this.#high = high;
  }
}
