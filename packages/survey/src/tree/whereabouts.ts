import { type Material, partAt } from './inside.ts';
import { newHit, newRay, type Ray, someAlong } from './ray.ts';

/**
 * Which part holds a point, for many points that lie near each other: where no surface stands between a point and one
 * that was asked for before, the answer is the same. That is a short look instead of one through the whole machine.
 */
export interface Whereabouts {
  readonly material: Material;
  /** The last point in air and the last one in material, xyz each; NaN before the first. */
  readonly known: Float64Array;
  /** The part that holds the last point in material. */
  holder: number;
  readonly ray: Ray;
}

export function newWhereabouts(material: Material): Whereabouts {
  return { material, known: new Float64Array(6).fill(Number.NaN), holder: -1, ray: newRay() };
}

/** A look at a farther point than this is no shorter than one to the outside, mm. */
const near_mm = 20;
/** A surface this near an end of the look passes through it. */
const touch_mm = 1e-6;
const hit = newHit();

/** Index of a part whose material holds the point xyz, the first in model order; -1 for air. As `partAt`. */
export function partNear(where: Whereabouts, x: number, y: number, z: number): number {
  const { known } = where;
  let part: number;
  if (isClear(where, 0, x, y, z)) part = -1;
  else if (isClear(where, 3, x, y, z)) part = where.holder;
  else part = partAt(where.material, x, y, z);
  const i = part < 0 ? 0 : 3;
  if (part >= 0) where.holder = part;
  known[i] = x;
  known[i + 1] = y;
  known[i + 2] = z;
  return part;
}

/** Whether a known point is near and nothing stands between it and xyz. */
function isClear({ material, known, ray }: Whereabouts, i: number, x: number, y: number, z: number): boolean {
  const dx = x - known[i];
  const dy = y - known[i + 1];
  const dz = z - known[i + 2];
  const square = dx * dx + dy * dy + dz * dz;
  if (!(square < near_mm * near_mm)) return false;
  if (square === 0) return true;
  ray.ox = known[i];
  ray.oy = known[i + 1];
  ray.oz = known[i + 2];
  ray.dx = dx;
  ray.dy = dy;
  ray.dz = dz;
  // Surfaces through either end count, for there the answer is a matter of the last digit.
  const slack = touch_mm / Math.sqrt(square);
  ray.tMin = -slack;
  ray.tMax = 1 + slack;
  return !someAlong(material.tree, ray, hit);
}
