import type { Model } from '@coveline/model';
import type { Tree } from '../tree/tree.ts';
import { facetsOf } from '../weld/facets.ts';
import { membersOf, newGroups, unite } from '../weld/groups.ts';
import { turnAt } from '../weld/turn.ts';
import { weldOf } from '../weld/weld.ts';
import { isMarked, type Marks } from './marks.ts';
import { refine } from './refine.ts';

/** A wall ends where it turns by more than this, either way. */
const sharp = (35 * Math.PI) / 180;

/** Where points of walls see something near, and where they do not. */
export interface WallMarks {
  readonly seen: Marks;
  readonly unseen: Marks;
}

/** Where a wall sees the same all around, its mesh may be this much coarser than near the border of a region. */
const plain = 4;

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

/** Meshes the given triangles of a part (shape order, ascending) with their smooth neighbours. */
export function meshWalls(
  model: Model,
  tree: Tree,
  part: number,
  chosen: readonly number[],
  marks: WallMarks,
  edge_mm: number,
): WallMesh {
  const weld = weldOf(model.shapes[model.parts[part].shape]);
  const { facetOf, normals } = facetsOf(weld);
  const isSmooth = (h: number) => weld.twin[h] >= 0 && Math.abs(turnAt(weld, h, normals, facetOf)) < sharp;
  const members = new Set(chosen);
  for (const t of chosen) {
    for (let h = 3 * t; h < 3 * t + 3; h++) if (isSmooth(h)) members.add((weld.twin[h] / 3) | 0);
  }
  const list = [...members].filter((t) => weld.areas[t] > 0).sort((a, b) => a - b);
  const numberOf = new Map(list.map((t, i) => [t, i]));
  const patches = newGroups(list.length);
  const border = new Uint8Array(list.length * 3);
  for (let i = 0; i < list.length; i++) {
    for (let k = 0; k < 3; k++) {
      const h = 3 * list[i] + k;
      const smooth = isSmooth(h);
      const other = smooth ? numberOf.get((weld.twin[h] / 3) | 0) : undefined;
      if (other !== undefined) unite(patches, i, other);
      else border[3 * i + k] = smooth ? meshEnd : wallEnd;
    }
  }
  const xyz: number[] = [];
  const triangles = new Uint32Array(list.length * 3);
  for (const patch of membersOf(patches)) {
    const vertexOf = new Map<number, number>();
    for (const i of patch) {
      const slot = tree.slotOf[tree.start[part] + list[i]] * 9;
      for (let k = 0; k < 3; k++) {
        const welded = weld.triangles[3 * list[i] + k];
        let v = vertexOf.get(welded);
        if (v === undefined) {
          v = xyz.length / 3;
          vertexOf.set(welded, v);
          for (let c = 0; c < 3; c++) xyz.push(tree.corners[slot + 3 * k + c]);
        }
        triangles[3 * i + k] = v;
      }
    }
  }
  const source = Uint32Array.from(list, (t) => tree.start[part] + t);
  const { seen, unseen } = marks;
  const allowed = (x: number, y: number, z: number, half: number) => {
    if (!isMarked(seen, x, y, z, half + seen.cell_mm)) return Infinity;
    return isMarked(unseen, x, y, z, half + 1.5 * unseen.cell_mm) ? edge_mm : edge_mm * plain;
  };
  const fine = refine({ xyz, triangles, source, border }, edge_mm, allowed);
  return { part, ...fine, ...vertexNormals(fine.xyz, fine.triangles) };
}

function vertexNormals(xyz: Float64Array, triangles: Uint32Array) {
  const normals = new Float64Array(xyz.length);
  const triangleOf = new Uint32Array(xyz.length / 3);
  for (let t = triangles.length / 3 - 1; t >= 0; t--) {
    const [a, b, c] = [triangles[3 * t] * 3, triangles[3 * t + 1] * 3, triangles[3 * t + 2] * 3];
    const [ux, uy, uz] = [xyz[b] - xyz[a], xyz[b + 1] - xyz[a + 1], xyz[b + 2] - xyz[a + 2]];
    const [vx, vy, vz] = [xyz[c] - xyz[a], xyz[c + 1] - xyz[a + 1], xyz[c + 2] - xyz[a + 2]];
    const n = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    for (const v of [a, b, c]) {
      triangleOf[v / 3] = t;
      for (let k = 0; k < 3; k++) normals[v + k] += n[k];
    }
  }
  for (let v = 0; v < normals.length; v += 3) {
    const length = Math.hypot(normals[v], normals[v + 1], normals[v + 2]) || 1;
    for (let k = 0; k < 3; k++) normals[v + k] /= length;
  }
  return { normals, triangleOf };
}
