import { type Material, partAt } from '../tree/inside.ts';
import { firstAlong, newHit, newRay } from '../tree/ray.ts';

const ray = newRay();
const hit = newHit();

/**
 * Whether a surface point with outward normal n is shut off from the air by another part that lies on it, within
 * `contact` mm, or by material that it is buried in.
 */
export function isCovered(
  material: Material,
  part: number,
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
  contact: number,
): boolean {
  const lift = contact * 1.25;
  if (partAt(material, x + nx * lift, y + ny * lift, z + nz * lift) >= 0) return true;
  // A sheet drawn as an open surface holds no material, but covers all the same.
  ray.ox = x - nx * contact;
  ray.oy = y - ny * contact;
  ray.oz = z - nz * contact;
  ray.dx = nx;
  ray.dy = ny;
  ray.dz = nz;
  ray.tMax = contact + lift;
  ray.crossing = -1;
  ray.skipPart = part;
  ray.skipUntil = Infinity;
  return firstAlong(material.tree, ray, hit);
}
