import type { Vec3 } from '@coveline/model';
import type { Sealed } from '../sealed.ts';
import type { Material } from '../tree/inside.ts';
import { isCovered } from './cover.ts';
import { spreadPoints } from './spread.ts';

/** Points per face: one for every 25 mm2, but enough for a share and no more than needed for half a per cent. */
const areaPerPoint_mm2 = 25;
const fewest = 64;
const most = 2048;

export interface OpenShare {
  /** Part of the area that is open to the air. */
  readonly share: number;
  /** A point of the open part, near its middle. */
  readonly at_mm: Vec3;
  /** Number of points that were looked at. */
  readonly points: number;
}

/** Samples how much of a face (triangles of one part) is open. `alone`: no other part is near, nothing can cover it. */
export function openShare(
  material: Material,
  part: number,
  triangles: Uint32Array,
  areas: Float64Array,
  area_mm2: number,
  contact_mm: number,
  alone: boolean,
  sealed: Sealed,
): OpenShare {
  const { corners, slotOf, start } = material.tree;
  const points = Math.min(most, Math.max(fewest, Math.ceil(area_mm2 / areaPerPoint_mm2)));
  const open = new Float64Array(points * 3);
  let count = 0;
  let mx = 0;
  let my = 0;
  let mz = 0;
  const sizes = Float64Array.from(triangles, (t) => areas[t]);
  spreadPoints(sizes, points, (at, a, b, c) => {
    const i = slotOf[start[part] + triangles[at]] * 9;
    const x = corners[i] * a + corners[i + 3] * b + corners[i + 6] * c;
    const y = corners[i + 1] * a + corners[i + 4] * b + corners[i + 7] * c;
    const z = corners[i + 2] * a + corners[i + 5] * b + corners[i + 8] * c;
    const [nx, ny, nz] = normalAt(corners, i);
    if (!alone && isCovered(material, part, x, y, z, nx, ny, nz, contact_mm)) return;
    if (sealed(x, y, z, nx, ny, nz)) return;
    open[count * 3] = x;
    open[count * 3 + 1] = y;
    open[count * 3 + 2] = z;
    count++;
    mx += x;
    my += y;
    mz += z;
  });
  return { share: count / points, at_mm: nearest(open, count, mx / count, my / count, mz / count), points };
}

const normal = new Float64Array(3);

function normalAt(c: Float64Array, i: number): Float64Array {
  const ux = c[i + 3] - c[i];
  const uy = c[i + 4] - c[i + 1];
  const uz = c[i + 5] - c[i + 2];
  const vx = c[i + 6] - c[i];
  const vy = c[i + 7] - c[i + 1];
  const vz = c[i + 8] - c[i + 2];
  normal[0] = uy * vz - uz * vy;
  normal[1] = uz * vx - ux * vz;
  normal[2] = ux * vy - uy * vx;
  const length = Math.hypot(normal[0], normal[1], normal[2]) || 1;
  normal[0] /= length;
  normal[1] /= length;
  normal[2] /= length;
  return normal;
}

function nearest(points: Float64Array, count: number, x: number, y: number, z: number): Vec3 {
  let best = 0;
  let least = Infinity;
  for (let i = 0; i < count; i++) {
    const d = (points[i * 3] - x) ** 2 + (points[i * 3 + 1] - y) ** 2 + (points[i * 3 + 2] - z) ** 2;
    if (d >= least) continue;
    least = d;
    best = i;
  }
  return [points[best * 3], points[best * 3 + 1], points[best * 3 + 2]];
}
