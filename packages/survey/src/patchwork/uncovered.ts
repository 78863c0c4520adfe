import { boxesMeet } from '../tree/boxes.ts';
import type { Material } from '../tree/inside.ts';
import { firstAlong, newHit, newRay } from '../tree/ray.ts';
import { newWhereabouts, partNear } from '../tree/whereabouts.ts';

/**
 * Whether a surface point of one part, with its outward unit normal, is shut off from the air by another part that
 * lies on it within the contact distance, or by material that it is buried in.
 */
export type Covered = (x: number, y: number, z: number, nx: number, ny: number, nz: number) => boolean;

const hit = newHit();

/** `boxes`: of all parts, see `partBoxes`. Only where the box of another part is near can anything cover a point. */
export function coverOn(material: Material, boxes: Float64Array, part: number, contact_mm: number): Covered {
  const { tree, closed } = material;
  const reach = 2 * contact_mm;
  const lift = contact_mm * 1.25;
  const near: number[] = [];
  for (let o = 0; o < boxes.length / 6; o++) {
    if (o !== part && boxesMeet(boxes, part * 6, boxes, o * 6, reach)) near.push(o * 6);
  }
  // A sheet drawn as an open surface holds no material, but covers all the same.
  const sheets = near.some((b) => closed[b / 6] === 0);
  const where = newWhereabouts(material);
  const ray = newRay();
  ray.tMax = contact_mm + lift;
  ray.crossing = -1;
  ray.skipPart = part;
  ray.skipUntil = Infinity;
  const isCovered: Covered = (x, y, z, nx, ny, nz) => {
    if (partNear(where, x + nx * lift, y + ny * lift, z + nz * lift) >= 0) return true;
    if (!sheets) return false;
    ray.ox = x - nx * contact_mm;
    ray.oy = y - ny * contact_mm;
    ray.oz = z - nz * contact_mm;
    ray.dx = nx;
    ray.dy = ny;
    ray.dz = nz;
    return firstAlong(tree, ray, hit);
  };
  return (x, y, z, nx, ny, nz) => {
    for (const b of near) {
      if (x < boxes[b] - reach || x > boxes[b + 3] + reach) continue;
      if (y < boxes[b + 1] - reach || y > boxes[b + 4] + reach) continue;
      if (z < boxes[b + 2] - reach || z > boxes[b + 5] + reach) continue;
      return isCovered(x, y, z, nx, ny, nz);
    }
    return false;
  };
}
