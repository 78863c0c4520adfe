/**
 * The air space as vertical columns: per column the intervals of height in which there is air.
 *
 * Signed winding along the column: overlapping closed parts may share room. Air is where the winding is not
 * positive. A sheet cuts an interval in two. Intervals lower than the contact distance count as filled.
 */
import type { Grid } from './grid.ts';
import { Floats, Indices } from './grow.ts';
import { lineIndex } from './line-index.ts';
import { type LineKernel, lineKernel } from './line-kernel.ts';
import type { Passages } from './passages.ts';
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

export interface ColumnOptions {
  /** Numbers of the triangles to look at; all when absent. */
  readonly near?: Uint32Array | undefined;
  readonly tick?: Tick | undefined;
}

/** Throws a RangeError where memory does not suffice. */
export function buildColumns(
  soup: Soup,
  grid: Grid,
  contact_mm: number,
  { near, tick = nothing }: ColumnOptions = {},
): Columns {
  const { nu, nv } = grid;
  const lines = nu + nv;
  const air = new AirList(nu * nv);
  const kernel = lineKernel(soup);
  const alongU = passagesOf(grid, 1, soup, kernel, contact_mm, near, (j) => {
    if (j % untilTick === 0) tick(j / lines);
    air.append(kernel, nu);
  });
  const alongV = passagesOf(grid, 0, soup, kernel, contact_mm, near, (i) => {
    if (i % untilTick === 0) tick((nv + i) / lines);
    air.tellFile(kernel, grid, i);
  });
  return { grid, ...air.done(), alongU, alongV };
}

/** Along all rows (axis 1) or files (axis 0) of a grid. `air`: lets the kernel know what the columns of a line hold. */
function passagesOf(
  grid: Grid,
  axis: 0 | 1,
  soup: Soup,
  kernel: LineKernel,
  contact_mm: number,
  near: Uint32Array | undefined,
  air: (line: number) => void,
): Passages {
  const index = lineIndex(soup, grid, axis, near);
  const [lines, columns] = axis === 1 ? [grid.nv, grid.nu] : [grid.nu, grid.nv];
  kernel.begin(grid, axis, contact_mm);
  const passages = new PassageList(lines * columns);
  for (let line = 0; line < lines; line++) {
    kernel.lay(index.triangles.subarray(index.first[line], index.first[line + 1]), line);
    air(line);
    passages.append(kernel, columns);
  }
  return passages.done();
}
/** The intervals of the columns, row after row. */
class AirList {
  readonly #cells: number;
  readonly #first: Uint32Array;
  readonly #bottom: Floats;
  readonly #top: Floats;
  readonly #floor: Indices;
  readonly #ceiling: Indices;
  #columns = 0;

  constructor(cells: number) {
    this.#cells = cells;
    this.#first = new Uint32Array(cells + 1);
    this.#bottom = new Floats(cells * 2);
    this.#top = new Floats(cells * 2);
    this.#floor = new Indices(cells * 2);
    this.#ceiling = new Indices(cells * 2);
  }

  /** Those of the next row, by the surface that the kernel has laid. */
  append(kernel: LineKernel, columns: number): void {
    const before = this.#bottom.length;
    const { starts, bottom, top, floor, ceiling } = kernel.intervals(kernel.fill(before));
    for (let k = 1; k <= columns; k++) this.#first[this.#columns + k] = before + starts[k];
    this.#columns += columns;
    this.#bottom.append(bottom);
    this.#top.append(top);
    this.#floor.append(floor);
    this.#ceiling.append(ceiling);
  }

  /** The columns of a file are those of the rows: the kernel is told what they hold. */
  tellFile(kernel: LineKernel, { nu, nv }: Grid, i: number): void {
    const first = this.#first;
    const bottom = this.#bottom.data;
    const top = this.#top.data;
    let count = 0;
    for (let c = i; c < nu * nv; c += nu) count += first[c + 1] - first[c];
    kernel.known(count);
    const file = kernel.intervals(count);
    let k = 0;
    for (let j = 0; j < nv; j++) {
      file.starts[j] = k;
      const c = j * nu + i;
      for (let n = first[c]; n < first[c + 1]; n++, k++) {
        file.bottom[k] = bottom[n];
        file.top[k] = top[n];
        file.number[k] = n;
      }
    }
    file.starts[nv] = k;
  }

  done(): Omit<Columns, 'grid' | 'alongU' | 'alongV'> {
    const first = this.#first;
    const bottom = this.#bottom.done();
    const top = this.#top.done();
    const floor = this.#floor.done();
    const ceiling = this.#ceiling.done();
    const columnOf = new Uint32Array(bottom.length);
    for (let c = 0; c < this.#cells; c++) columnOf.fill(c, first[c], first[c + 1]);
    return { first, bottom, top, floor, ceiling, columnOf, ...heightsOf(bottom, top) };
  }
}

/** Lowest top and highest bottom: the lowest and the highest crossing. */
function heightsOf(bottom: Float64Array, top: Float64Array): { low: number; high: number } {
  let low = Infinity;
  let high = -Infinity;
  for (let n = 0; n < bottom.length; n++) {
    if (bottom[n] > high) high = bottom[n];
    if (top[n] < low) low = top[n];
  }
  return low < high ? { low, high } : { low: 0, high: 0 };
}

/** Passages, line after line. */
class PassageList {
  readonly #first: Uint32Array;
  readonly #height: Floats;
  readonly #a: Indices;
  readonly #b: Indices;
  #strips = 0;

  constructor(strips: number) {
    this.#first = new Uint32Array(strips + 1);
    this.#height = new Floats(strips * 2);
    this.#a = new Indices(strips * 2);
    this.#b = new Indices(strips * 2);
  }

  /** Those between the columns that the kernel holds. */
  append(kernel: LineKernel, columns: number): void {
    const before = this.#height.length;
    const { starts, height, a, b } = kernel.passages(kernel.join());
    for (let k = 1; k <= columns; k++) this.#first[this.#strips + k] = before + starts[k];
    this.#strips += columns;
    this.#height.append(height);
    this.#a.append(a);
    this.#b.append(b);
  }

  done(): Passages {
    return { first: this.#first, height: this.#height.done(), a: this.#a.done(), b: this.#b.done() };
  }
}
