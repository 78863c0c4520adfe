/**
 * The surface along one line of columns: where it passes each column, and its pieces between neighbouring columns.
 */
import type { Grid } from './grid.ts';
import type { LineIndex } from './line-index.ts';
import { section } from './section.ts';
import type { Soup } from './soup.ts';

const NONE = -1;

export class Line {
  readonly count: number;
  /** Places of the columns along the line, mm. */
  readonly at: Float64Array;
  /** Per column the first crossing (rows only), per strip (k to k + 1) the first piece; then `next` until -1. */
  readonly crossingHead: Int32Array;
  readonly pieceHead: Int32Array;
  crossingNext = new Int32Array(1024);
  crossingZ = new Float64Array(1024);
  /** Change of winding when one goes up through it: +1 into material, -1 out of it, 0 at a sheet. */
  crossingTurn = new Int8Array(1024);
  crossingTriangle = new Uint32Array(1024);
  crossings = 0;
  pieceNext = new Int32Array(1024);
  /** Two ends of a piece: along the line, and z; the first end has the lower place along the line. */
  pieceFrom = new Float64Array(1024);
  pieceFromZ = new Float64Array(1024);
  pieceTo = new Float64Array(1024);
  pieceToZ = new Float64Array(1024);
  pieceTriangle = new Uint32Array(1024);
  pieces = 0;
  readonly #grid: Grid;
  readonly #axis: 0 | 1;
  readonly #cut = new Float64Array(4);

  /** `axis` 1: rows (along u), 0: files (along v). */
  constructor(grid: Grid, axis: 0 | 1) {
    this.#grid = grid;
    this.#axis = axis;
    this.count = axis === 1 ? grid.nu : grid.nv;
    const origin = axis === 1 ? grid.u0 : grid.v0;
    this.at = Float64Array.from({ length: this.count }, (_, k) => origin + k * grid.pitch);
    this.crossingHead = new Int32Array(this.count);
    this.pieceHead = new Int32Array(this.count);
  }

  /** Fills the line with number `line`. */
  load(soup: Soup, index: LineIndex, line: number): void {
    this.crossingHead.fill(NONE);
    this.pieceHead.fill(NONE);
    this.crossings = 0;
    this.pieces = 0;
    const { pitch, u0, v0 } = this.#grid;
    const where = (this.#axis === 1 ? v0 : u0) + line * pitch;
    for (let e = index.first[line]; e < index.first[line + 1]; e++) {
      const t = index.triangles[e];
      if (section(soup, t, this.#axis, where, this.#cut)) this.#lay(t, soup.sheet[t]);
    }
  }

  #lay(triangle: number, sheet: number): void {
    const { at, count } = this;
    const s = this.#cut[0];
    const sz = this.#cut[1];
    const e = this.#cut[2];
    const ez = this.#cut[3];
    const forward = e > s;
    const lo = forward ? s : e;
    const hi = forward ? e : s;
    const loZ = forward ? sz : ez;
    const hiZ = forward ? ez : sz;
    if (hi < at[0] || lo >= at[count - 1]) return;
    // First column at or past lo.
    let k = Math.max(0, Math.ceil((lo - at[0]) / this.#grid.pitch));
    while (k > 0 && at[k - 1] >= lo) k--;
    while (k < count && at[k] < lo) k++;
    const turn = sheet ? 0 : forward ? -1 : 1;
    const slope = hi > lo ? (hiZ - loZ) / (hi - lo) : 0;
    let from = lo;
    let fromZ = loZ;
    for (; k < count && at[k] < hi; k++) {
      const z = loZ + slope * (at[k] - lo);
      // The columns of a file are those of the rows: their crossings are known from there.
      if (this.#axis === 1) this.#addCrossing(k, z, turn, triangle);
      if (k > 0) this.#addPiece(k - 1, from, fromZ, at[k], z, triangle);
      from = at[k];
      fromZ = z;
    }
    if (k > 0 && k < count) this.#addPiece(k - 1, from, fromZ, hi, hiZ, triangle);
  }

  #addCrossing(column: number, z: number, turn: number, triangle: number): void {
    const n = this.crossings++;
    if (n === this.crossingNext.length) {
      this.crossingNext = widerInts(this.crossingNext);
      this.crossingZ = widerFloats(this.crossingZ);
      this.crossingTriangle = widerIndices(this.crossingTriangle);
      const turns = new Int8Array(n * 2);
      turns.set(this.crossingTurn);
      this.crossingTurn = turns;
    }
    this.crossingZ[n] = z;
    this.crossingTurn[n] = turn;
    this.crossingTriangle[n] = triangle;
    this.crossingNext[n] = this.crossingHead[column];
    this.crossingHead[column] = n;
  }

  #addPiece(strip: number, from: number, fromZ: number, to: number, toZ: number, triangle: number): void {
    const n = this.pieces++;
    if (n === this.pieceNext.length) {
      this.pieceNext = widerInts(this.pieceNext);
      this.pieceFrom = widerFloats(this.pieceFrom);
      this.pieceFromZ = widerFloats(this.pieceFromZ);
      this.pieceTo = widerFloats(this.pieceTo);
      this.pieceToZ = widerFloats(this.pieceToZ);
      this.pieceTriangle = widerIndices(this.pieceTriangle);
    }
    this.pieceFrom[n] = from;
    this.pieceFromZ[n] = fromZ;
    this.pieceTo[n] = to;
    this.pieceToZ[n] = toZ;
    this.pieceTriangle[n] = triangle;
    this.pieceNext[n] = this.pieceHead[strip];
    this.pieceHead[strip] = n;
  }
}

function widerInts(a: Int32Array): Int32Array<ArrayBuffer> {
  const wider = new Int32Array(a.length * 2);
  wider.set(a);
  return wider;
}

function widerFloats(a: Float64Array): Float64Array<ArrayBuffer> {
  const wider = new Float64Array(a.length * 2);
  wider.set(a);
  return wider;
}

function widerIndices(a: Uint32Array): Uint32Array<ArrayBuffer> {
  const wider = new Uint32Array(a.length * 2);
  wider.set(a);
  return wider;
}
