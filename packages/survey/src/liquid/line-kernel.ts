/** The columns of one line after another, by the kernel in packages/survey/kernel/columns, which holds a copy of the soup. */
import { compile, exportsOf, type Memory, newMemory } from '../tree/webassembly.ts';
import type { Grid } from './grid.ts';
import { kernelBase64 } from './kernel.generated.ts';
import type { Soup } from './soup.ts';

/** What packages/survey/kernel/columns/index.ts exports. Addresses are bytes in the memory. */
interface Calls {
  open(corners: number, sheets: number, heads: number): void;
  lines(first: number, pitch_mm: number, columns: number, contact_mm: number): void;
  startLine(triangles: number): number;
  layLine(numbers: number, triangles: number, axis: number, at: number): void;
  fill(number: number): number;
  known(intervals: number): void;
  join(): number;
  readonly starts: Address;
  readonly bottoms: Address;
  readonly tops: Address;
  readonly numbers: Address;
  readonly floors: Address;
  readonly ceilings: Address;
  readonly stripStarts: Address;
  readonly heights: Address;
  readonly as: Address;
  readonly bs: Address;
}

interface Address {
  readonly value: number;
}

/** The static data of the kernel lies below. */
const model = 65536;
const perVertex = 24;

let compiled: object | undefined;
const kernels = new WeakMap<Soup, LineKernel>();

/** Throws a RangeError when the system does not give the memory. */
export function lineKernel(soup: Soup): LineKernel {
  const known = kernels.get(soup);
  if (known) return known;
  const made = new LineKernel(soup);
  kernels.set(soup, made);
  return made;
}

const full = (): never => {
  throw new RangeError(
    'The columns of the air space need more memory than there is; give a coarser pitch, or fewer parts.',
  );
};

export class LineKernel {
  readonly #memory: Memory;
  readonly #calls: Calls;
  #grid: Grid = { u0: 0, v0: 0, pitch: 1, nu: 1, nv: 1 };
  #axis: 0 | 1 = 1;

  constructor({ uvz, triangles, sheet }: Soup) {
    const corners = model + uvz.length * 8;
    const sheets = corners + triangles.length * 4;
    const heads = sheets + sheet.length;
    this.#memory = newMemory(Math.ceil(heads / 65536) + 16);
    compiled ??= compile(kernelBase64);
    this.#calls = exportsOf(compiled, this.#memory, full) as Calls;
    new Float64Array(this.#memory.buffer, model, uvz.length).set(uvz);
    const addresses = new Uint32Array(this.#memory.buffer, corners, triangles.length);
    for (let k = 0; k < triangles.length; k++) addresses[k] = model + triangles[k] * perVertex;
    new Uint8Array(this.#memory.buffer, sheets, sheet.length).set(sheet);
    this.#calls.open(corners, sheets, heads);
  }

  /** Lines along u (axis 1, rows) or along v (axis 0, files) of a grid. */
  begin(grid: Grid, axis: 0 | 1, contact_mm: number): void {
    this.#grid = grid;
    this.#axis = axis;
    if (axis === 1) this.#calls.lines(grid.u0, grid.pitch, grid.nu, contact_mm);
    else this.#calls.lines(grid.v0, grid.pitch, grid.nv, contact_mm);
  }

  /** Lays the surface of some triangles along line number `line`. */
  lay(triangles: Uint32Array, line: number): void {
    const { pitch, u0, v0 } = this.#grid;
    const at = this.#calls.startLine(triangles.length);
    this.#indices(at, triangles.length).set(triangles);
    this.#calls.layLine(at, triangles.length, this.#axis, (this.#axis === 1 ? v0 : u0) + line * pitch);
  }

  /** Air of the columns, numbered from `number` on; how many intervals there are. */
  fill(number: number): number {
    return this.#calls.fill(number);
  }

  /** Instead: intervals that the caller writes, of columns that begin at `starts` (one more than there are columns). */
  known(intervals: number): void {
    this.#calls.known(intervals);
  }

  /** How many passages there are between the columns. */
  join(): number {
    return this.#calls.join();
  }

  /** Views last until the next call. `n`: intervals. */
  intervals(n: number): {
    starts: Uint32Array;
    bottom: Float64Array;
    top: Float64Array;
    number: Uint32Array;
    floor: Uint32Array;
    ceiling: Uint32Array;
  } {
    const { starts, bottoms, tops, numbers, floors, ceilings } = this.#calls;
    return {
      starts: this.#indices(starts.value, this.#columns + 1),
      bottom: this.#floats(bottoms.value, n),
      top: this.#floats(tops.value, n),
      number: this.#indices(numbers.value, n),
      floor: this.#indices(floors.value, n),
      ceiling: this.#indices(ceilings.value, n),
    };
  }

  /** Views last until the next call. `n`: passages. Of the strip behind the last column there are none. */
  passages(n: number): { starts: Uint32Array; height: Float64Array; a: Uint32Array; b: Uint32Array } {
    const { stripStarts, heights, as, bs } = this.#calls;
    return {
      starts: this.#indices(stripStarts.value, this.#columns + 1),
      height: this.#floats(heights.value, n),
      a: this.#indices(as.value, n),
      b: this.#indices(bs.value, n),
    };
  }

  get #columns(): number {
    return this.#axis === 1 ? this.#grid.nu : this.#grid.nv;
  }

  #indices(at: number, n: number): Uint32Array {
    return new Uint32Array(this.#memory.buffer, at >>> 0, n);
  }

  #floats(at: number, n: number): Float64Array {
    return new Float64Array(this.#memory.buffer, at >>> 0, n);
  }
}
