import { stackSize, type Tree } from './tree.ts';

/**
 * Which part's material a point lies in, by signed crossings of one ray to the outside: a closed part holds the
 * point when the ray leaves it more often than it enters it. Parts may overlap, and cavities count as air.
 * A part with an open border has no inside, so its crossings are not counted.
 */
export interface Material {
  readonly tree: Tree;
  /** Per part: 1 when its surface is closed. */
  readonly closed: Uint8Array;
  /** Crossings per part, halves; all zero between queries. */
  readonly crossings: Int32Array;
  /** Parts crossed by the present ray. */
  readonly touched: Int32Array;
}

export function newMaterial(tree: Tree, closed: Uint8Array): Material {
  const parts = closed.length;
  return { tree, closed, crossings: new Int32Array(parts), touched: new Int32Array(parts) };
}

const stack = new Int32Array(stackSize);

// Upright, because machines are full of upright walls that such a ray passes at small cost; tilted by two unrelated
// small amounts, so that it does not run along walls and edges.
const dx = 0.0173;
const dy = 0.0291;
const dz = 1;

/** Index of a part whose material holds the point xyz, the first in model order; -1 for air. */
export function partAt(material: Material, x: number, y: number, z: number): number {
  const { tree, closed, crossings, touched } = material;
  const { boxes, first, count, corners, part } = tree;
  if (tree.triangle.length === 0) return -1;
  let touchedCount = 0;
  let top = 0;
  stack[top++] = 0;
  while (top > 0) {
    const node = stack[--top];
    const b = node * 6;
    if (boxes[b + 5] < z) continue;
    // The ray's shadow on the box: heights at which it is above the box's floor plan.
    const low = Math.max((boxes[b] - x) / dx, (boxes[b + 1] - y) / dy, boxes[b + 2] - z, 0);
    const high = Math.min((boxes[b + 3] - x) / dx, (boxes[b + 4] - y) / dy, boxes[b + 5] - z);
    if (!(low <= high)) continue;
    const from = first[node];
    if (count[node] === 0) {
      stack[top++] = from;
      stack[top++] = from + 1;
      continue;
    }
    for (let slot = from; slot < from + count[node]; slot++) {
      const p = part[slot];
      if (closed[p] === 0) continue;
      const weight = crossing(corners, slot * 9, x, y, z);
      if (weight === 0) continue;
      // An entry is kept apart from "never crossed" by listing the part at its first crossing.
      let listed = false;
      for (let i = 0; i < touchedCount && !listed; i++) listed = touched[i] === p;
      if (!listed) touched[touchedCount++] = p;
      crossings[p] += weight;
    }
  }
  let found = -1;
  for (let i = 0; i < touchedCount; i++) {
    const p = touched[i];
    if (crossings[p] > 0 && (found < 0 || p < found)) found = p;
    crossings[p] = 0;
  }
  return found;
}

/** +2 where the ray leaves through the triangle, -2 where it enters, half of it on an edge, which two share. */
function crossing(corners: Float64Array, c: number, x: number, y: number, z: number): number {
  const ax = corners[c] - x;
  const ay = corners[c + 1] - y;
  const az = corners[c + 2] - z;
  const bx = corners[c + 3] - x;
  const by = corners[c + 4] - y;
  const bz = corners[c + 5] - z;
  const cx = corners[c + 6] - x;
  const cy = corners[c + 7] - y;
  const cz = corners[c + 8] - z;
  const u = dx * (by * cz - bz * cy) + dy * (bz * cx - bx * cz) + dz * (bx * cy - by * cx);
  const v = dx * (cy * az - cz * ay) + dy * (cz * ax - cx * az) + dz * (cx * ay - cy * ax);
  const w = dx * (ay * bz - az * by) + dy * (az * bx - ax * bz) + dz * (ax * by - ay * bx);
  if (!((u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0))) return 0;
  const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
  const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
  const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  const along = nx * dx + ny * dy + nz * dz;
  if (along === 0) return 0;
  const t = (nx * ax + ny * ay + nz * az) / along;
  if (!(t > 0)) return 0;
  const half = u === 0 || v === 0 || w === 0 ? 1 : 2;
  return along > 0 ? half : -half;
}
