import type { Vec3 } from '@coveline/model';

/** Two directions at right angles to a unit vector and to each other. */
export function across(n: Vec3): [Vec3, Vec3] {
  const helper: Vec3 = Math.abs(n[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0];
  const e1 = unit(cross(n, helper));
  return [e1, cross(n, e1)];
}

function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(a: Vec3): Vec3 {
  const length = Math.hypot(...a);
  return [a[0] / length, a[1] / length, a[2] / length];
}
