import type { Vec3 } from '@coveline/model';
import { cross, unit } from './vector.ts';

/** Two directions at right angles to a unit vector and to each other. */
export function across(n: Vec3): [Vec3, Vec3] {
  const helper: Vec3 = Math.abs(n[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0];
  const e1 = unit(cross(n, helper));
  return [e1, cross(n, e1)];
}
