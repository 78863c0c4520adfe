import type { Tree } from '../tree/tree.ts';
import { type BoxTree, boxTreeOf, groupSize } from './box-tree.ts';

/** All triangles of a model in a tree of boxes, with what a group's triangles face and which parts they are of. */
export interface SurfaceTree {
  readonly tree: BoxTree;
  /** Unit normal per triangle in model order; zero where it has no area. */
  readonly normals: Float64Array;
  /** Part of each triangle in model order. */
  readonly partOf: Uint32Array;
  /** Per level, six numbers a group: lowest and highest of each coordinate of its normals. */
  readonly turns: readonly Float64Array[];
  /** Per level, two numbers a group: lowest and highest part. */
  readonly parts: readonly Uint32Array[];
}

export function surfaceTreeOf({ corners: c, slotOf, part, start }: Tree): SurfaceTree {
  const n = start[start.length - 1];
  const boxes = new Float64Array(n * 6);
  const normals = new Float64Array(n * 3);
  const partOf = new Uint32Array(n);
  for (let t = 0; t < n; t++) {
    const i = slotOf[t] * 9;
    partOf[t] = part[slotOf[t]];
    for (let k = 0; k < 3; k++) {
      boxes[t * 6 + k] = Math.min(c[i + k], c[i + 3 + k], c[i + 6 + k]);
      boxes[t * 6 + 3 + k] = Math.max(c[i + k], c[i + 3 + k], c[i + 6 + k]);
    }
    const ux = c[i + 3] - c[i];
    const uy = c[i + 4] - c[i + 1];
    const uz = c[i + 5] - c[i + 2];
    const vx = c[i + 6] - c[i];
    const vy = c[i + 7] - c[i + 1];
    const vz = c[i + 8] - c[i + 2];
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (length === 0) continue;
    normals[t * 3] = nx / length;
    normals[t * 3 + 1] = ny / length;
    normals[t * 3 + 2] = nz / length;
  }
  const tree = boxTreeOf(boxes);
  const turns: Float64Array[] = [];
  const parts: Uint32Array[] = [];
  for (let level = 0; level < tree.levels.length; level++) {
    const groups = tree.levels[level].length / 6;
    const turn = new Float64Array(groups * 6);
    const range = new Uint32Array(groups * 2);
    const count = level === 0 ? n : tree.levels[level - 1].length / 6;
    for (let g = 0; g < groups; g++) {
      turn.fill(Infinity, g * 6, g * 6 + 3).fill(-Infinity, g * 6 + 3, g * 6 + 6);
      range[g * 2] = 0xffffffff;
      const end = Math.min(count, (g + 1) * groupSize);
      for (let i = g * groupSize; i < end; i++) {
        const t = level === 0 ? tree.order[i] : i;
        const [low, high, at, next] =
          level === 0
            ? [normals, normals, t * 3, t * 3]
            : [turns[level - 1], turns[level - 1], i * 6, i * 6 + 3];
        for (let k = 0; k < 3; k++) {
          if (low[at + k] < turn[g * 6 + k]) turn[g * 6 + k] = low[at + k];
          if (high[next + k] > turn[g * 6 + 3 + k]) turn[g * 6 + 3 + k] = high[next + k];
        }
        const first = level === 0 ? partOf[t] : parts[level - 1][i * 2];
        const last = level === 0 ? partOf[t] : parts[level - 1][i * 2 + 1];
        if (first < range[g * 2]) range[g * 2] = first;
        if (last > range[g * 2 + 1]) range[g * 2 + 1] = last;
      }
    }
    turns.push(turn);
    parts.push(range);
  }
  return { tree, normals, partOf, turns, parts };
}

/** The least that the product of two normals can be, one of each group. */
export function leastDot(a: Float64Array, i: number, b: Float64Array, j: number): number {
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    const p = a[i + k];
    const q = a[i + 3 + k];
    const r = b[j + k];
    const s = b[j + 3 + k];
    sum += Math.min(p * r, p * s, q * r, q * s);
  }
  return sum;
}
