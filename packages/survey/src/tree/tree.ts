import type { Model } from '@coveline/model';
import { placedPositions } from '@coveline/model';
import { instantiate, type Kernel, openKernel } from './kernel.ts';
import { piecesAbove, planMemory, type TreeLayout, treeBytes } from './layout.ts';
import { type Memory, newSharedMemory } from './webassembly.ts';

/**
 * Bounding-volume trees over the triangles of a model, in the frame of the model: one for each part, and one above
 * them. All of it lies in one shared memory that the kernel works on. A slot is a triangle in model order (parts in
 * model order, triangles in shape order).
 */
export interface Tree {
  /** Nine per slot: xyz of the three corners, mm. */
  readonly corners: Float64Array;
  /** Per slot: triangle in model order. */
  readonly triangle: Uint32Array;
  /** Per slot: index of the part. */
  readonly part: Uint32Array;
  /** Per triangle in model order: its slot. */
  readonly slotOf: Uint32Array;
  /** Per part: its first triangle in model order; one more at the end with the number of all triangles. */
  readonly start: Uint32Array;
  /** Lowest xyz and highest xyz of all triangles, mm; infinite the wrong way round for none. */
  readonly box: Float64Array;
  readonly kernel: Kernel;
}

const page = 65536;
const mostPages = 65536;
/** Single precision has room for the products of three such lengths, mm. */
const largest_mm = 1e12;
const empty = 0x7fffffff;

const trees = new WeakMap<Model, Tree>();

/** The tree of a model, built once however many measures ask for it. */
export function treeOf(model: Model): Tree {
  let tree = trees.get(model);
  if (!tree) {
    tree = buildTree(model);
    keepTree(model, tree);
  }
  return tree;
}

/** Lets `treeOf` answer with a tree that was built elsewhere from an equal model. */
export function keepTree(model: Model, tree: Tree): void {
  trees.set(model, tree);
}

/**
 * Builds the trees. Throws when a coordinate is not a number or beyond 1e12 mm, and when the system does not give the
 * memory (about 200 bytes a triangle; at most 4 GB).
 */
export function buildTree(model: Model): Tree {
  const counts = model.parts.map(({ shape }) => model.shapes[shape].triangles.length / 3);
  const plan = planMemory(counts);
  const memory = newMemory(plan.arena, plan.triangles);
  const start = new Uint32Array(memory.buffer, plan.start, counts.length + 1);
  for (let p = 0; p < counts.length; p++) start[p + 1] = start[p] + counts[p];
  const box = new Float64Array(memory.buffer, plan.box, 6);
  gather(model, start, new Float64Array(memory.buffer, plan.corners, plan.triangles * 9), box);
  const magnitude = box.reduce((most, c) => (Number.isFinite(c) ? Math.max(most, Math.abs(c)) : most), 0);
  const part = new Uint32Array(memory.buffer, plan.part, plan.triangles);
  for (let p = 0; p < counts.length; p++) part.fill(p, start[p], start[p + 1]);
  const numbers = new Uint32Array(memory.buffer, plan.numbers, plan.triangles);
  for (let i = 0; i < numbers.length; i++) numbers[i] = i;

  const calls = instantiate(memory);
  calls.open(plan.corners, magnitude);
  const roots = new Int32Array(memory.buffer, plan.roots, counts.length);
  let arena = plan.arena;
  let filled = 0;
  for (let p = 0; p < counts.length; p++) {
    roots[p] = empty;
    if (counts[p] === 0) continue;
    reserve(memory, arena + treeBytes(counts[p]), plan.triangles);
    roots[p] = calls.buildPart(start[p], counts[p], p, plan.scratch, arena, plan.records + 32 * filled++);
    arena = calls.arenaEnd();
  }
  const most = piecesAbove(filled);
  reserve(memory, arena + 2 * treeBytes(most), plan.triangles);
  const { records, scratch } = plan;
  const root = filled === 0 ? empty : calls.buildTop(filled, most, records, plan.roots, scratch, arena);
  const partsRoot = filled === 0 ? empty : calls.buildPartsTop(filled, records, scratch, calls.arenaEnd());
  const layout: TreeLayout = { ...plan, magnitude, root, partsRoot };
  return treeIn(memory, openKernel(memory, calls, layout, 0));
}

/** The tree that a memory holds. */
export function treeIn({ buffer }: Memory, kernel: Kernel): Tree {
  const { triangles, parts } = kernel;
  const numbers = new Uint32Array(buffer, kernel.numbers, triangles);
  return {
    corners: new Float64Array(buffer, kernel.corners, triangles * 9),
    triangle: numbers,
    part: new Uint32Array(buffer, kernel.part, triangles),
    slotOf: numbers,
    start: new Uint32Array(buffer, kernel.start, parts + 1),
    box: new Float64Array(buffer, kernel.box, 6),
    kernel,
  };
}

/** Writes the corners and the box around them. */
function gather(model: Model, start: Uint32Array, corners: Float64Array, box: Float64Array): void {
  box.fill(Infinity, 0, 3).fill(-Infinity, 3);
  for (let p = 0; p < model.parts.length; p++) {
    const xyz = placedPositions(model, p);
    const { triangles } = model.shapes[model.parts[p].shape];
    for (let i = 0, to = start[p] * 9; i < triangles.length; i++, to += 3) {
      const v = triangles[i] * 3;
      for (let axis = 0; axis < 3; axis++) {
        const x = xyz[v + axis];
        if (!(Math.abs(x) <= largest_mm)) throw unplaced(model.parts[p].name, x);
        if (x < box[axis]) box[axis] = x;
        if (x > box[axis + 3]) box[axis + 3] = x;
        corners[to + axis] = x;
      }
    }
  }
}

function unplaced(part: string, coordinate: number): RangeError {
  return new RangeError(
    `The part "${part}" has a corner at ${coordinate} mm: coordinates must be numbers within 1e12 mm. Check the unit ` +
      'of the file and the placement of the part.',
  );
}

function newMemory(bytes: number, triangles: number): Memory {
  const pages = Math.ceil(bytes / page);
  try {
    return newSharedMemory(Math.min(pages, mostPages + 1), mostPages);
  } catch (cause) {
    throw refused(bytes, triangles, cause);
  }
}

/** Makes the memory at least this long. What is never written costs no memory of the machine. */
function reserve(memory: Memory, bytes: number, triangles: number): void {
  const missing = Math.ceil((bytes - memory.buffer.byteLength) / page);
  if (missing <= 0) return;
  try {
    memory.grow(missing);
  } catch (cause) {
    throw refused(bytes, triangles, cause);
  }
}

function refused(bytes: number, triangles: number, cause: unknown): unknown {
  if (!(cause instanceof RangeError)) return cause;
  return new RangeError(
    `The tree of ${triangles} triangles needs up to ${Math.ceil(bytes / 1e6)} MB, and this system could not allocate ` +
      'memory for it (4295 MB is the most): survey fewer parts at a time, or a coarser model.',
    { cause },
  );
}
