import type { Tree } from './tree.ts';

/** The nearest point of a surface. Reuse one object for many queries. */
export interface Nearest {
  distance: number;
  x: number;
  y: number;
  z: number;
  slot: number;
  /** In model order. */
  triangle: number;
  part: number;
}

export function newNearest(): Nearest {
  return { distance: Infinity, x: 0, y: 0, z: 0, slot: -1, triangle: -1, part: -1 };
}

/**
 * Nearest point of all triangles within `reach` mm of xyz, of equally near triangles the first in model order; false
 * when there is none, and `out` is then left alone.
 */
export function closestPoint(
  tree: Tree,
  x: number,
  y: number,
  z: number,
  reach: number,
  out: Nearest,
): boolean {
  const { calls, root, work, triangles, results } = tree.kernel;
  if (triangles === 0) return false;
  const slot = calls.closest(root, work, x, y, z, reach);
  if (slot < 0) return false;
  out.distance = results[0];
  out.x = results[1];
  out.y = results[2];
  out.z = results[3];
  out.slot = slot;
  out.triangle = slot;
  out.part = tree.part[slot];
  return true;
}

/**
 * Squared distance from xyz to the triangle whose nine coordinates start at `at`; writes the nearest point.
 * By the Voronoi regions of the triangle (Ericson, Real-Time Collision Detection, 2005, 5.1.5).
 */
export function nearestOnTriangle(
  corners: Float64Array,
  at: number,
  x: number,
  y: number,
  z: number,
  out: Float64Array,
): number {
  const ax = corners[at];
  const ay = corners[at + 1];
  const az = corners[at + 2];
  const ux = corners[at + 3] - ax;
  const uy = corners[at + 4] - ay;
  const uz = corners[at + 5] - az;
  const vx = corners[at + 6] - ax;
  const vy = corners[at + 7] - ay;
  const vz = corners[at + 8] - az;
  const px = x - ax;
  const py = y - ay;
  const pz = z - az;
  const uu = ux * ux + uy * uy + uz * uz;
  const uv = ux * vx + uy * vy + uz * vz;
  const vv = vx * vx + vy * vy + vz * vz;
  const d1 = ux * px + uy * py + uz * pz;
  const d2 = vx * px + vy * py + vz * pz;
  const d3 = d1 - uu;
  const d4 = d2 - uv;
  const d5 = d1 - uv;
  const d6 = d2 - vv;
  const va = d3 * d6 - d5 * d4;
  const vb = d5 * d2 - d1 * d6;
  const vc = d1 * d4 - d3 * d2;
  let s: number;
  let t: number;
  if (d1 <= 0 && d2 <= 0) {
    s = 0;
    t = 0;
  } else if (d3 >= 0 && d4 <= d3) {
    s = 1;
    t = 0;
  } else if (d6 >= 0 && d5 <= d6) {
    s = 0;
    t = 1;
  } else if (vc <= 0 && d1 >= 0 && d3 <= 0) {
    s = d1 / (d1 - d3);
    t = 0;
  } else if (vb <= 0 && d2 >= 0 && d6 <= 0) {
    s = 0;
    t = d2 / (d2 - d6);
  } else if (va <= 0 && d4 >= d3 && d5 >= d6) {
    t = (d4 - d3) / (d4 - d3 + (d5 - d6));
    s = 1 - t;
  } else {
    const sum = 1 / (va + vb + vc);
    s = vb * sum;
    t = vc * sum;
  }
  const qx = ux * s + vx * t;
  const qy = uy * s + vy * t;
  const qz = uz * s + vz * t;
  out[0] = ax + qx;
  out[1] = ay + qy;
  out[2] = az + qz;
  return (px - qx) ** 2 + (py - qy) ** 2 + (pz - qz) ** 2;
}
