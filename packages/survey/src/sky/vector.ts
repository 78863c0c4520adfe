import type { Vec3 } from '@coveline/model';

export function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function minus(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** a + s b */
export function plus(a: Vec3, b: Vec3, s = 1): Vec3 {
  return [a[0] + b[0] * s, a[1] + b[1] * s, a[2] + b[2] * s];
}

/** Of length 1; not a number for a vector without length. */
export function unit(a: Vec3): Vec3 {
  const length = Math.hypot(...a);
  return [a[0] / length, a[1] / length, a[2] / length];
}

/** Two directions across a unit vector and each other. */
export function across(axis: Vec3): readonly [Vec3, Vec3] {
  const least = [0, 1, 2].reduce((a, b) => (Math.abs(axis[b]) < Math.abs(axis[a]) ? b : a));
  const helper: Vec3 = [least === 0 ? 1 : 0, least === 1 ? 1 : 0, least === 2 ? 1 : 0];
  const first = unit(cross(axis, helper));
  return [first, cross(axis, first)];
}
