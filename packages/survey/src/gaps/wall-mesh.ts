import type { Model } from '@coveline/model';
import type { Tree } from '../tree/tree.ts';
import { patchesOf } from '../weld/patches.ts';
import { type Weld, weldOf } from '../weld/weld.ts';
import { refine } from './refine.ts';
import { sizesOf } from './sizes.ts';

/**
 * Triangles of one part cut finer where something was marked, in the frame of the model. Vertices are shared within a
 * smooth patch and separate across its sharp edges, so that each sees with the normal of its own wall.
 */
export interface WallMesh {
  readonly part: number;
  /** xyz per vertex, mm. */
  readonly xyz: Float64Array;
  /** Unit normal per vertex. */
  readonly normals: Float64Array;
  /** Three vertices per triangle. */
  readonly triangles: Uint32Array;
  /** Per triangle: triangle of the model that it was cut from, in model order. */
  readonly source: Uint32Array;
  /** Per half-edge: 0 inside the mesh, 1 at a sharp or open edge of the wall, 2 where the mesh ends but the wall goes on. */
  readonly border: Uint8Array;
  /** Per vertex: one of its triangles. */
  readonly triangleOf: Uint32Array;
}

export const inside = 0;
export const wallEnd = 1;
export const meshEnd = 2;

/**
 * Meshes the given triangles of a part (shape order, ascending) with their smooth neighbours, finely along `borders`
 * (see `Facing`).
 */
export function meshWalls(
  model: Model,
  tree: Tree,
  part: number,
  chosen: readonly number[],
  borders: readonly number[],
  step: () => void,
): WallMesh {
  const weld = weldOf(model.shapes[model.parts[part].shape]);
  const { patchOf, smooth } = patchesOf(weld);
  const taken = new Uint8Array(weld.areas.length);
  for (const t of chosen) {
    taken[t] = 1;
    for (let h = 3 * t; h < 3 * t + 3; h++) if (smooth[h] === 1) taken[(weld.twin[h] / 3) | 0] = 1;
  }
  const list: number[] = [];
  const numberOf = new Int32Array(taken.length).fill(-1);
  for (let t = 0; t < taken.length; t++) {
    if (taken[t] === 0 || weld.areas[t] === 0) continue;
    numberOf[t] = list.length;
    list.push(t);
  }
  const border = new Uint8Array(list.length * 3);
  for (let i = 0; i < list.length; i++) {
    for (let k = 0; k < 3; k++) {
      const h = 3 * list[i] + k;
      if (smooth[h] === 0) border[3 * i + k] = wallEnd;
      else if (numberOf[(weld.twin[h] / 3) | 0] < 0) border[3 * i + k] = meshEnd;
    }
  }
  const { corners, slotOf, start } = tree;
  const { xyz, triangles } = sharedVertices(
    weld,
    patchOf,
    list,
    (t, k) => slotOf[start[part] + t] * 9 + 3 * k,
    corners,
  );
  const source = Uint32Array.from(list, (t) => start[part] + t);
  const sizes = sizesOf(Float64Array.from(borders));
  const fine = refine({ xyz, triangles, source, border }, sizes, step);
  return { part, ...fine, ...vertexNormals(fine.xyz, fine.triangles) };
}

/** One vertex per welded vertex and patch, at its place in the frame of the model. */
function sharedVertices(
  weld: Weld,
  patchOf: Uint32Array,
  list: readonly number[],
  cornerAt: (triangle: number, k: number) => number,
  corners: Float64Array,
) {
  const xyz: number[] = [];
  const triangles = new Uint32Array(list.length * 3);
  /** Per welded vertex its latest vertex here, which knows the one before it. */
  const latest = new Int32Array(weld.positions.length / 3).fill(-1);
  const before: number[] = [];
  const patch: number[] = [];
  for (let i = 0; i < list.length; i++) {
    for (let k = 0; k < 3; k++) {
      const welded = weld.triangles[3 * list[i] + k];
      let v = latest[welded];
      while (v >= 0 && patch[v] !== patchOf[list[i]]) v = before[v];
      if (v < 0) {
        v = patch.length;
        patch.push(patchOf[list[i]]);
        before.push(latest[welded]);
        latest[welded] = v;
        const c = cornerAt(list[i], k);
        xyz.push(corners[c], corners[c + 1], corners[c + 2]);
      }
      triangles[3 * i + k] = v;
    }
  }
  return { xyz, triangles };
}

function vertexNormals(xyz: Float64Array, triangles: Uint32Array) {
  const normals = new Float64Array(xyz.length);
  const triangleOf = new Uint32Array(xyz.length / 3);
  for (let t = triangles.length / 3 - 1; t >= 0; t--) {
    const [a, b, c] = [triangles[3 * t] * 3, triangles[3 * t + 1] * 3, triangles[3 * t + 2] * 3];
    const [ux, uy, uz] = [xyz[b] - xyz[a], xyz[b + 1] - xyz[a + 1], xyz[b + 2] - xyz[a + 2]];
    const [vx, vy, vz] = [xyz[c] - xyz[a], xyz[c + 1] - xyz[a + 1], xyz[c + 2] - xyz[a + 2]];
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    for (let k = 0; k < 3; k++) {
      const v = triangles[3 * t + k];
      triangleOf[v] = t;
      normals[3 * v] += nx;
      normals[3 * v + 1] += ny;
      normals[3 * v + 2] += nz;
    }
  }
  for (let v = 0; v < normals.length; v += 3) {
    const length = Math.hypot(normals[v], normals[v + 1], normals[v + 2]) || 1;
    for (let k = 0; k < 3; k++) normals[v + k] /= length;
  }
  return { normals, triangleOf };
}
