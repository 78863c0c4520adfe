/** Arithmetic of points and directions, for the few at a time that bores and members are told by. */
import type { Vec3 } from '@coveline/model';

export function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function minus(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** The point `s` from `a` in direction `d`. */
export function along(a: Vec3, d: Vec3, s: number): Vec3 {
  return [a[0] + s * d[0], a[1] + s * d[1], a[2] + s * d[2]];
}

export function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function unit(a: Vec3): Vec3 {
  const length = Math.hypot(...a);
  return [a[0] / length, a[1] / length, a[2] / length];
}
