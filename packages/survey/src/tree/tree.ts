import type { Model } from '@coveline/model';
import { placedPositions, triangleCount } from '@coveline/model';

/**
 * A bounding-volume tree over all triangles of a model, in the frame of the model.
 *
 * Children of an inner node stand side by side, so that one visit reads both boxes. Boxes are single precision,
 * rounded outwards; corners, and so hit distances, are double precision.
 */
export interface Tree {
  /** Six per node: lowest xyz, highest xyz, mm. Node 0 is the root. */
  readonly boxes: Float32Array;
  /** Inner node: its left child, the right one follows. Leaf: its first slot. */
  readonly first: Uint32Array;
  /** Leaf: number of slots. Inner node: 0. */
  readonly count: Uint16Array;
  /** Nine per slot: xyz of the three corners, mm. */
  readonly corners: Float64Array;
  /** Per slot: triangle in model order (parts in model order, triangles in shape order). */
  readonly triangle: Uint32Array;
  /** Per slot: index of the part. */
  readonly part: Uint32Array;
  /** Per triangle in model order: its slot. */
  readonly slotOf: Uint32Array;
  /** Per part: its first triangle in model order; one more at the end with the number of all triangles. */
  readonly start: Uint32Array;
}

const leafSize = 4;
const binCount = 16;
/** Below this depth splits go through the middle of the list, so that stacks of `stackSize` suffice for any input. */
const heuristicDepth = 60;
/** Deep enough for 60 levels by heuristic and 32 by halving. */
export const stackSize = 128;

/** Builds the tree by the surface area heuristic over 16 bins (Wald, On fast construction of SAH-based BVHs, 2007). */
export function buildTree(model: Model): Tree {
  const n = triangleCount(model);
  const { corners, part, start } = gather(model, n);
  const order = new Uint32Array(n);
  const box = new Float32Array(n * 6);
  for (let i = 0; i < n; i++) {
    order[i] = i;
    boundTriangle(corners, i, box);
  }
  const nodes = split(box, order);
  const sorted = new Float64Array(n * 9);
  const sortedPart = new Uint32Array(n);
  const slotOf = new Uint32Array(n);
  for (let slot = 0; slot < n; slot++) {
    const i = order[slot];
    for (let k = 0; k < 9; k++) sorted[slot * 9 + k] = corners[i * 9 + k];
    sortedPart[slot] = part[i];
    slotOf[i] = slot;
  }
  return { ...nodes, corners: sorted, triangle: order, part: sortedPart, slotOf, start };
}

const trees = new WeakMap<Model, Tree>();

/** The tree of a model, built once however many measures ask for it. */
export function treeOf(model: Model): Tree {
  let tree = trees.get(model);
  if (!tree) {
    tree = buildTree(model);
    trees.set(model, tree);
  }
  return tree;
}

function gather(model: Model, n: number) {
  const corners = new Float64Array(n * 9);
  const part = new Uint32Array(n);
  const start = new Uint32Array(model.parts.length + 1);
  let at = 0;
  for (let p = 0; p < model.parts.length; p++) {
    const xyz = placedPositions(model, p);
    const { triangles } = model.shapes[model.parts[p].shape];
    start[p] = at;
    for (let i = 0; i < triangles.length; i++) {
      const v = triangles[i] * 3;
      const to = at * 9 + i * 3;
      corners[to] = xyz[v];
      corners[to + 1] = xyz[v + 1];
      corners[to + 2] = xyz[v + 2];
    }
    part.fill(p, at, at + triangles.length / 3);
    at += triangles.length / 3;
  }
  start[model.parts.length] = at;
  return { corners, part, start };
}

/** Writes the box of triangle `i`, rounded outwards by two units in the last place. */
function boundTriangle(corners: Float64Array, i: number, box: Float32Array): void {
  for (let axis = 0; axis < 3; axis++) {
    const a = corners[i * 9 + axis];
    const b = corners[i * 9 + 3 + axis];
    const c = corners[i * 9 + 6 + axis];
    const low = Math.min(a, b, c);
    const high = Math.max(a, b, c);
    box[i * 6 + axis] = low - Math.abs(low) * 2.4e-7;
    box[i * 6 + 3 + axis] = high + Math.abs(high) * 2.4e-7;
  }
}

function split(box: Float32Array, order: Uint32Array) {
  const n = order.length;
  const capacity = Math.max(1, 2 * n);
  const boxes = new Float32Array(capacity * 6);
  const first = new Uint32Array(capacity);
  const count = new Uint16Array(capacity);
  let used = 1;
  const todo = [{ node: 0, from: 0, to: n, depth: 0 }];
  for (let job = todo.pop(); job; job = todo.pop()) {
    const { node, from, to, depth } = job;
    boundRange(box, order, from, to, boxes, node);
    if (to - from <= leafSize) {
      first[node] = from;
      count[node] = to - from;
      continue;
    }
    const middle = depth < heuristicDepth ? partition(box, order, from, to) : (from + to) >> 1;
    first[node] = used;
    todo.push({ node: used + 1, from: middle, to, depth: depth + 1 });
    todo.push({ node: used, from, to: middle, depth: depth + 1 });
    used += 2;
  }
  return { boxes: boxes.slice(0, used * 6), first: first.slice(0, used), count: count.slice(0, used) };
}

function boundRange(
  box: Float32Array,
  order: Uint32Array,
  from: number,
  to: number,
  out: Float32Array,
  node: number,
): void {
  for (let axis = 0; axis < 3; axis++) {
    let low = Infinity;
    let high = -Infinity;
    for (let i = from; i < to; i++) {
      const b = order[i] * 6 + axis;
      if (box[b] < low) low = box[b];
      if (box[b + 3] > high) high = box[b + 3];
    }
    out[node * 6 + axis] = low;
    out[node * 6 + 3 + axis] = high;
  }
}

const bins = new Float32Array(binCount * 6);
const binUse = new Uint32Array(binCount);
const rightArea = new Float64Array(binCount);

/** Reorders `order[from..to)` into two groups and returns where the second starts, strictly between the ends. */
function partition(box: Float32Array, order: Uint32Array, from: number, to: number): number {
  let bestCost = Infinity;
  let bestAxis = -1;
  let bestBin = 0;
  let bestLow = 0;
  let bestScale = 0;
  for (let axis = 0; axis < 3; axis++) {
    let low = Infinity;
    let high = -Infinity;
    for (let i = from; i < to; i++) {
      const c = box[order[i] * 6 + axis] + box[order[i] * 6 + axis + 3];
      if (c < low) low = c;
      if (c > high) high = c;
    }
    const scale = (binCount * (1 - 1e-7)) / (high - low);
    if (!(high > low) || !Number.isFinite(scale)) continue;
    fillBins(box, order, from, to, axis, low, scale);
    let right = 0;
    clearBox(swept);
    for (let b = binCount - 1; b > 0; b--) {
      growBox(swept, bins, b * 6);
      right += binUse[b];
      rightArea[b] = right === 0 ? 0 : right * halfArea(swept);
    }
    let left = 0;
    clearBox(swept);
    for (let b = 0; b < binCount - 1; b++) {
      growBox(swept, bins, b * 6);
      left += binUse[b];
      if (left === 0 || left === to - from) continue;
      const cost = left * halfArea(swept) + rightArea[b + 1];
      if (cost < bestCost) {
        bestCost = cost;
        bestAxis = axis;
        bestBin = b;
        bestLow = low;
        bestScale = scale;
      }
    }
  }
  if (bestAxis < 0) return (from + to) >> 1;
  let i = from;
  let j = to - 1;
  while (i <= j) {
    const c = box[order[i] * 6 + bestAxis] + box[order[i] * 6 + bestAxis + 3];
    if (Math.floor((c - bestLow) * bestScale) <= bestBin) i++;
    else {
      const swap = order[i];
      order[i] = order[j];
      order[j--] = swap;
    }
  }
  return i;
}

function fillBins(
  box: Float32Array,
  order: Uint32Array,
  from: number,
  to: number,
  axis: number,
  low: number,
  scale: number,
): void {
  binUse.fill(0);
  for (let b = 0; b < binCount; b++) {
    for (let k = 0; k < 3; k++) {
      bins[b * 6 + k] = Infinity;
      bins[b * 6 + 3 + k] = -Infinity;
    }
  }
  for (let i = from; i < to; i++) {
    const t = order[i] * 6;
    const b = Math.floor((box[t + axis] + box[t + axis + 3] - low) * scale);
    binUse[b]++;
    growBox(bins, box, t, b * 6);
  }
}

const swept = new Float32Array(6);

function clearBox(out: Float32Array): void {
  out.fill(Infinity, 0, 3).fill(-Infinity, 3, 6);
}

function growBox(out: Float32Array, box: Float32Array, at: number, to = 0): void {
  for (let k = 0; k < 3; k++) {
    if (box[at + k] < out[to + k]) out[to + k] = box[at + k];
    if (box[at + 3 + k] > out[to + 3 + k]) out[to + 3 + k] = box[at + 3 + k];
  }
}

function halfArea(b: Float32Array): number {
  const x = b[3] - b[0];
  const y = b[4] - b[1];
  const z = b[5] - b[2];
  return x * y + y * z + z * x;
}
