import { kernelBase64 } from './kernel.generated.ts';
import { type TreeLayout, workBytes, workResults } from './layout.ts';
import { compile, exportsOf, type Memory } from './webassembly.ts';

/** What packages/survey/kernel/index.ts exports. Addresses are bytes in the memory. */
export interface KernelCalls {
  open(corners: number, magnitude: number): void;
  buildPart(
    first: number,
    count: number,
    part: number,
    scratch: number,
    arena: number,
    record: number,
  ): number;
  buildTop(
    count: number,
    most: number,
    records: number,
    roots: number,
    scratch: number,
    arena: number,
  ): number;
  buildPartsTop(count: number, records: number, scratch: number, arena: number): number;
  arenaEnd(): number;
  firstAlong: Cast;
  someAlong: Cast;
  firstHits: Batch;
  anyHits: Batch;
  between(
    root: number,
    work: number,
    n: number,
    x: number,
    y: number,
    z: number,
    skipFrom: number,
    skipTo: number,
    out: number,
  ): void;
  closest(root: number, work: number, x: number, y: number, z: number, reach: number): number;
  closestPoints: Batch;
  partAt(parts: number, work: number, roots: number, closed: number, x: number, y: number, z: number): number;
}

type Batch = (root: number, work: number, n: number, out: number) => void;

type Cast = (
  root: number,
  work: number,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMin: number,
  tMax: number,
  crossing: number,
  skipFrom: number,
  skipTo: number,
  skipUntil: number,
) => number;

/** One thread's way to ask a tree. */
export interface Kernel extends TreeLayout {
  readonly calls: KernelCalls;
  readonly memory: Memory;
  readonly layout: TreeLayout;
  /** This thread's work area. */
  readonly work: number;
  /** Its results: see the calls. */
  readonly results: Float64Array;
  /** This thread's flags of closed parts. */
  readonly closed: Uint8Array;
}

let compiled: object | undefined;

/** The calls, working on a memory. Compiled once. */
export function instantiate(memory: Memory): KernelCalls {
  compiled ??= compile(kernelBase64);
  return exportsOf(compiled, memory) as KernelCalls;
}

/** For thread `thread`, from 0: two threads at once need two numbers. */
export function openKernel(memory: Memory, calls: KernelCalls, layout: TreeLayout, thread: number): Kernel {
  calls.open(layout.corners, layout.magnitude);
  const work = layout.works + thread * workBytes;
  const results = new Float64Array(memory.buffer, work + workResults, 8);
  const closed = new Uint8Array(memory.buffer, layout.closeds + thread * layout.parts, layout.parts);
  return { ...layout, layout, calls, memory, work, results, closed };
}
