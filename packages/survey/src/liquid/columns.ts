/**
 * The air space as vertical columns: per column the intervals of height in which there is air.
 *
 * Signed winding along the column: overlapping closed parts may share room. Air is where the winding is not
 * positive. A sheet cuts an interval in two. Intervals lower than the contact distance count as filled.
 */
import type { Grid } from './grid.ts';
import { Floats, Indices } from './grow.ts';
import { Line } from './line.ts';
import type { LineIndex } from './line-index.ts';
import { PassageBuilder, type Passages, type Strip } from './passages.ts';
import type { Soup } from './soup.ts';

/** Instead of a triangle: the interval is open to the sky or to the ground. */
export const openEnd = 0xffffffff;

export interface Columns {
  readonly grid: Grid;
  /** Intervals of column c: from first[c] to first[c + 1], from low to high. */
  readonly first: Uint32Array;
  readonly bottom: Float64Array;
  readonly top: Float64Array;
  /** Triangle at the bottom and at the top, or `openEnd`. */
  readonly floor: Uint32Array;
  readonly ceiling: Uint32Array;
  readonly columnOf: Uint32Array;
  /** Lowest and highest crossing of all; both 0 where there is none. */
  readonly low: number;
  readonly high: number;
  /** Along u: strip c joins columns c and c + 1. Along v: strip i * nv + j joins (i, j) and (i, j + 1). */
  readonly alongU: Passages;
  readonly alongV: Passages;
}

/** Called on the way with the share that is done, 0 to 1; may throw to stop. */
export type Tick = (done: number) => void;

const nothing: Tick = () => {};
/** Lines between two ticks: some hundredths of a second at most. */
const untilTick = 16;

export function buildColumns(
  soup: Soup,
  grid: Grid,
  rows: LineIndex,
  files: LineIndex,
  contact_mm: number,
  tick: Tick = nothing,
): Columns {
  const { nu, nv } = grid;
  const cells = nu * nv;
  const first = new Uint32Array(cells + 1);
  const bottom = new Floats(cells * 2);
  const top = new Floats(cells * 2);
  const floor = new Indices(cells * 2);
  const ceiling = new Indices(cells * 2);

  let low = Infinity;
  let high = -Infinity;
  const add = (from: number, to: number, below: number, above: number): void => {
    if (to - from < contact_mm) return;
    if (from > high) high = from;
    if (to < low) low = to;
    bottom.push(from);
    top.push(to);
    floor.push(below);
    ceiling.push(above);
  };

  const row = new Line(grid, 1);
  const alongU = new PassageBuilder(cells, contact_mm);
  const order = new Crossings();
  for (let j = 0; j < nv; j++) {
    if (j % untilTick === 0) tick(j / (nu + nv));
    row.load(soup, rows, j);
    for (let i = 0; i < nu; i++) {
      order.sort(row, i);
      first[j * nu + i] = bottom.length;
      airOf(order, add);
    }
    first[(j + 1) * nu] = bottom.length;
    for (let i = 0; i < nu; i++) {
      const c = j * nu + i;
      if (i + 1 === nu) alongU.skip();
      else alongU.add(row, i, stripOf(first, c, c + 1), bottom.data, top.data);
    }
  }
  const file = new Line(grid, 0);
  const alongV = new PassageBuilder(cells, contact_mm);
  for (let i = 0; i < nu; i++) {
    if (i % untilTick === 0) tick((nv + i) / (nu + nv));
    file.load(soup, files, i);
    for (let j = 0; j < nv; j++) {
      const c = j * nu + i;
      if (j + 1 === nv) alongV.skip();
      else alongV.add(file, j, stripOf(first, c, c + nu), bottom.data, top.data);
    }
  }
  const columnOf = new Uint32Array(bottom.length);
  for (let c = 0; c < cells; c++) columnOf.fill(c, first[c], first[c + 1]);
  return {
    grid,
    first,
    bottom: bottom.done(),
    top: top.done(),
    floor: floor.done(),
    ceiling: ceiling.done(),
    columnOf,
    low: low < high ? low : 0,
    high: low < high ? high : 0,
    alongU: alongU.done(),
    alongV: alongV.done(),
  };
}

const strip: Strip = { a0: 0, a1: 0, b0: 0, b1: 0 };

function stripOf(first: Uint32Array, a: number, b: number): Strip {
  strip.a0 = first[a];
  strip.a1 = first[a + 1];
  strip.b0 = first[b];
  strip.b1 = first[b + 1];
  return strip;
}

/** The crossings of one column, from low to high. */
class Crossings {
  count = 0;
  z = new Float64Array(256);
  turn = new Int8Array(256);
  triangle = new Uint32Array(256);

  sort(line: Line, column: number): void {
    this.count = 0;
    for (let k = line.crossingHead[column]; k >= 0; k = line.crossingNext[k]) {
      if (this.count === this.z.length) this.#widen();
      const z = line.crossingZ[k];
      let at = this.count++;
      for (; at > 0 && this.z[at - 1] > z; at--) {
        this.z[at] = this.z[at - 1];
        this.turn[at] = this.turn[at - 1];
        this.triangle[at] = this.triangle[at - 1];
      }
      this.z[at] = z;
      this.turn[at] = line.crossingTurn[k];
      this.triangle[at] = line.crossingTriangle[k];
    }
  }

  #widen(): void {
    const z = new Float64Array(this.z.length * 2);
    const turn = new Int8Array(z.length);
    const triangle = new Uint32Array(z.length);
    z.set(this.z);
    turn.set(this.turn);
    triangle.set(this.triangle);
    this.z = z;
    this.turn = turn;
    this.triangle = triangle;
  }
}

function airOf(
  crossings: Crossings,
  add: (from: number, to: number, below: number, above: number) => void,
): void {
  let winding = 0;
  let from = -Infinity;
  let below = openEnd;
  for (let k = 0; k < crossings.count; k++) {
    const turn = crossings.turn[k];
    const wasAir = winding <= 0;
    winding += turn;
    const isAir = winding <= 0;
    if (wasAir && isAir && turn !== 0) continue;
    if (wasAir) add(from, crossings.z[k], below, crossings.triangle[k]);
    if (isAir) {
      from = crossings.z[k];
      below = crossings.triangle[k];
    }
  }
  const last = crossings.count - 1;
  // A surface that is torn after all: the sky is air, whatever the winding says.
  if (winding > 0) add(crossings.z[last], Infinity, crossings.triangle[last], openEnd);
  else add(from, Infinity, below, openEnd);
}
