/** Many rays or points in one call: typed arrays in and out, in batches through the kernel's work area. */
import { workBatch, workBytes } from './layout.ts';
import type { Tree } from './tree.ts';

/** Numbers a ray: origin xyz, direction xyz, tMin, tMax. Hits count when `tMin < t < tMax`. */
export const rayLength = 8;
/** Numbers a point: xyz and how far to look, mm. */
export const pointLength = 4;

const raysAtOnce = 600;
const pointsAtOnce = 680;
const placesAtOnce = 1700;

/** Per ray: distance along the direction as given, Infinity where nothing is met, and slot, -1 there. */
export interface FirstHits {
  readonly t: Float64Array;
  readonly slot: Int32Array;
}

/** As `firstHit`, for each ray of `rays` (`rayLength` numbers each). */
export function firstHits(tree: Tree, rays: Float64Array): FirstHits {
  const n = rays.length / rayLength;
  const found = { t: new Float64Array(n).fill(Infinity), slot: new Int32Array(n).fill(-1) };
  const { kernel } = tree;
  if (kernel.triangles === 0) return found;
  const { input, output } = areas(tree, raysAtOnce * rayLength);
  const t = new Float64Array(kernel.memory.buffer, output, raysAtOnce * 2);
  const slot = new Int32Array(kernel.memory.buffer, output, raysAtOnce * 4);
  for (let from = 0; from < n; from += raysAtOnce) {
    const count = Math.min(raysAtOnce, n - from);
    input.set(rays.subarray(from * rayLength, (from + count) * rayLength));
    kernel.calls.firstHits(kernel.root, kernel.work, count, output);
    for (let i = 0; i < count; i++) {
      found.t[from + i] = t[i * 2];
      found.slot[from + i] = slot[i * 4 + 2];
    }
  }
  return found;
}

/** As `anyHit`, for each ray of `rays` (`rayLength` numbers each): 1 where anything is met. */
export function anyHits(tree: Tree, rays: Float64Array): Uint8Array {
  const n = rays.length / rayLength;
  const found = new Uint8Array(n);
  const { kernel } = tree;
  if (kernel.triangles === 0) return found;
  const { input, output } = areas(tree, raysAtOnce * rayLength);
  const met = new Uint8Array(kernel.memory.buffer, output, raysAtOnce);
  for (let from = 0; from < n; from += raysAtOnce) {
    const count = Math.min(raysAtOnce, n - from);
    input.set(rays.subarray(from * rayLength, (from + count) * rayLength));
    kernel.calls.anyHits(kernel.root, kernel.work, count, output);
    found.set(met.subarray(0, count), from);
  }
  return found;
}

/**
 * Per point of `points` (xyz each): slot of some triangle between it and `to`, -1 for none, the ends not counted.
 * Triangles of `skipPart` are passed; -1 for none. Quick where one thing stands before many points that follow each
 * other.
 */
export function between(
  tree: Tree,
  points: Float64Array,
  to: readonly [number, number, number],
  skipPart: number,
): Int32Array {
  const n = points.length / 3;
  const found = new Int32Array(n).fill(-1);
  const { kernel } = tree;
  if (kernel.triangles === 0) return found;
  const { input, output } = areas(tree, placesAtOnce * 3);
  const slots = new Int32Array(kernel.memory.buffer, output, placesAtOnce);
  const from = skipPart < 0 ? 0 : tree.start[skipPart];
  const until = skipPart < 0 ? 0 : tree.start[skipPart + 1];
  for (let at = 0; at < n; at += placesAtOnce) {
    const count = Math.min(placesAtOnce, n - at);
    input.set(points.subarray(at * 3, (at + count) * 3));
    kernel.calls.between(kernel.root, kernel.work, count, ...to, from, until, output);
    found.set(slots.subarray(0, count), at);
  }
  return found;
}

/** Per point: distance (Infinity where nothing is within reach), nearest point xyz, and slot, -1 there. */
export interface ClosestPoints {
  readonly distance: Float64Array;
  readonly xyz: Float64Array;
  readonly slot: Int32Array;
}

/** As `closestPoint`, for each point of `points` (`pointLength` numbers each). */
export function closestPoints(tree: Tree, points: Float64Array): ClosestPoints {
  const n = points.length / pointLength;
  const found = {
    distance: new Float64Array(n).fill(Infinity),
    xyz: new Float64Array(n * 3).fill(Number.NaN),
    slot: new Int32Array(n).fill(-1),
  };
  const { kernel } = tree;
  if (kernel.triangles === 0) return found;
  const { input, output } = areas(tree, pointsAtOnce * pointLength);
  const numbers = new Float64Array(kernel.memory.buffer, output, pointsAtOnce * 5);
  const slot = new Int32Array(kernel.memory.buffer, output, pointsAtOnce * 10);
  for (let from = 0; from < n; from += pointsAtOnce) {
    const count = Math.min(pointsAtOnce, n - from);
    input.set(points.subarray(from * pointLength, (from + count) * pointLength));
    kernel.calls.closestPoints(kernel.root, kernel.work, count, output);
    for (let i = 0; i < count; i++) {
      const s = slot[i * 10 + 8];
      if (s < 0) continue;
      found.slot[from + i] = s;
      found.distance[from + i] = numbers[i * 5];
      found.xyz.set(numbers.subarray(i * 5 + 1, i * 5 + 4), (from + i) * 3);
    }
  }
  return found;
}

/** The batch of a work area: `length` numbers in, and what is left of it out. */
function areas({ kernel }: Tree, length: number): { input: Float64Array; output: number } {
  const input = new Float64Array(kernel.memory.buffer, kernel.work + workBatch, length);
  const output = input.byteOffset + input.byteLength;
  if (output >= kernel.work + workBytes) throw new Error('A batch does not fit its work area.');
  return { input, output };
}
