/** Plane pieces of a shape's surface, in its own frame: from its CAD faces, or from regions of its triangles. */
import type { Shape, Vec3 } from '@coveline/model';
import { groupOf, newGroups, unite } from '../weld/groups.ts';
import { turnAt } from '../weld/turn.ts';
import { type Weld, weldOf } from '../weld/weld.ts';

export interface Flat {
  /** Unit, out of the material. */
  readonly normal: Vec3;
  /** Middle of its area. */
  readonly centre: Vec3;
  readonly area_mm2: number;
  readonly triangles: readonly number[];
}

export interface Flats {
  readonly from: 'cad' | 'triangles';
  readonly flats: readonly Flat[];
}

/**
 * Neighbouring triangles that turn by less than this belong to one surface: above the 20 degrees of a round surface as
 * it is exported, below the 60 of a hexagon's edge and the 30 of its chamfer.
 */
const smooth_rad = (25 * Math.PI) / 180;
/** Length of the sum of the normals over the area: 1 for a plane, 0.998 for one bent by 10 degrees in all. */
const leastPlane = 0.998;

export function flatsOf(shape: Shape): Flats {
  const weld = weldOf(shape);
  const members = shape.cad ? trianglesOfPlanes(shape.cad) : smoothRegions(weld);
  const flats = members.flatMap((triangles) => flatFrom(weld, triangles) ?? []);
  return { from: shape.cad ? 'cad' : 'triangles', flats };
}

function trianglesOfPlanes({ faces, faceOfTriangle }: NonNullable<Shape['cad']>): number[][] {
  const members: number[][] = faces.map(() => []);
  for (let t = 0; t < faceOfTriangle.length; t++) {
    if (faces[faceOfTriangle[t]].kind === 'plane') members[faceOfTriangle[t]].push(t);
  }
  return members.filter((triangles) => triangles.length > 0);
}

function smoothRegions(weld: Weld): number[][] {
  const { twin, normals } = weld;
  const groups = newGroups(twin.length / 3);
  for (let h = 0; h < twin.length; h++) {
    if (twin[h] > h && Math.abs(turnAt(weld, h, normals)) < smooth_rad)
      unite(groups, (h / 3) | 0, (twin[h] / 3) | 0);
  }
  const members = new Map<number, number[]>();
  for (let t = 0; t < twin.length / 3; t++) {
    const g = groupOf(groups, t);
    const list = members.get(g);
    if (list) list.push(t);
    else members.set(g, [t]);
  }
  return [...members.values()];
}

/** Undefined where the triangles do not lie in one plane. */
function flatFrom(
  { positions: p, triangles: corners, normals, areas }: Weld,
  triangles: readonly number[],
): Flat | undefined {
  const sum = [0, 0, 0];
  const middle = [0, 0, 0];
  let area = 0;
  for (const t of triangles) {
    area += areas[t];
    for (let k = 0; k < 3; k++) {
      sum[k] += areas[t] * normals[t * 3 + k];
      const [a, b, c] = [corners[t * 3], corners[t * 3 + 1], corners[t * 3 + 2]];
      middle[k] += (areas[t] * (p[a * 3 + k] + p[b * 3 + k] + p[c * 3 + k])) / 3;
    }
  }
  const length = Math.hypot(sum[0], sum[1], sum[2]);
  if (!(length > leastPlane * area)) return undefined;
  return {
    normal: [sum[0] / length, sum[1] / length, sum[2] / length],
    centre: [middle[0] / area, middle[1] / area, middle[2] / area],
    area_mm2: area,
    triangles,
  };
}
