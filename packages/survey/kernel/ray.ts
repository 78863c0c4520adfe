/**
 * The ray that is being asked about, in double precision, and whether it meets a triangle.
 *
 * The tree is walked in single precision with every test widened by a bound of its rounding error, so that nothing is
 * lost; what passes is decided here, from the corners. Two triangles that share an edge compute the same number for it
 * with opposite signs, so no ray slips between them.
 */
import { corners, SLOT } from './layout';

export let ox: f64 = 0;
export let oy: f64 = 0;
export let oz: f64 = 0;
export let dx: f64 = 0;
export let dy: f64 = 0;
export let dz: f64 = 0;
export let tMin: f64 = 0;
/** The best distance so far, and its slot, -1 for none. */
export let tBest: f64 = 0;
export let slotBest: i32 = -1;
/** -1: only where the ray enters material, 1: only where it leaves it, 0: both. */
let crossing: f64 = 0;
/** Slots from here up to there count from `skipUntil` on only. */
let skipFrom: i32 = 0;
let skipTo: i32 = 0;
let skipUntil: f64 = 0;

export function aim(x: f64, y: f64, z: f64, u: f64, v: f64, w: f64, from: f64, to: f64): void {
  ox = x;
  oy = y;
  oz = z;
  dx = u;
  dy = v;
  dz = w;
  tMin = from;
  tBest = to;
  slotBest = -1;
}

export function choose(way: f64, from: i32, to: i32, until: f64): void {
  crossing = way;
  skipFrom = from;
  skipTo = to;
  skipUntil = until;
}

/** Whether the ray meets the triangle within its bounds, no later than the best so far; that is then the new best. */
export function meets(slot: i32): bool {
  const c = corners + <usize>slot * SLOT;
  const ax = load<f64>(c) - ox;
  const ay = load<f64>(c, 8) - oy;
  const az = load<f64>(c, 16) - oz;
  const bx = load<f64>(c, 24) - ox;
  const by = load<f64>(c, 32) - oy;
  const bz = load<f64>(c, 40) - oz;
  const cx = load<f64>(c, 48) - ox;
  const cy = load<f64>(c, 56) - oy;
  const cz = load<f64>(c, 64) - oz;
  const u = dx * (by * cz - bz * cy) + dy * (bz * cx - bx * cz) + dz * (bx * cy - by * cx);
  const v = dx * (cy * az - cz * ay) + dy * (cz * ax - cx * az) + dz * (cx * ay - cy * ax);
  const w = dx * (ay * bz - az * by) + dy * (az * bx - ax * bz) + dz * (ax * by - ay * bx);
  if (!((u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0))) return false;
  const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
  const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
  const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  const along = nx * dx + ny * dy + nz * dz;
  if (along == 0 || along * crossing < 0) return false;
  const t = (nx * ax + ny * ay + nz * az) / along;
  if (!(t > tMin && t <= tBest)) return false;
  // The bound itself is outside. Of equally near triangles the first wins, so that the answer does not depend on the tree.
  if (t == tBest && (slotBest < 0 || slotBest < slot)) return false;
  if (t < skipUntil && slot >= skipFrom && slot < skipTo) return false;
  tBest = t;
  slotBest = slot;
  return true;
}

/** +2 where the ray leaves through the triangle, -2 where it enters, half of it on an edge, which two share. */
export function passes(slot: i32): i32 {
  const c = corners + <usize>slot * SLOT;
  const ax = load<f64>(c) - ox;
  const ay = load<f64>(c, 8) - oy;
  const az = load<f64>(c, 16) - oz;
  const bx = load<f64>(c, 24) - ox;
  const by = load<f64>(c, 32) - oy;
  const bz = load<f64>(c, 40) - oz;
  const cx = load<f64>(c, 48) - ox;
  const cy = load<f64>(c, 56) - oy;
  const cz = load<f64>(c, 64) - oz;
  const u = dx * (by * cz - bz * cy) + dy * (bz * cx - bx * cz) + dz * (bx * cy - by * cx);
  const v = dx * (cy * az - cz * ay) + dy * (cz * ax - cx * az) + dz * (cx * ay - cy * ax);
  const w = dx * (ay * bz - az * by) + dy * (az * bx - ax * bz) + dz * (ax * by - ay * bx);
  if (!((u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0))) return 0;
  const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
  const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
  const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  const along = nx * dx + ny * dy + nz * dz;
  if (along == 0) return 0;
  if (!((nx * ax + ny * ay + nz * az) / along > 0)) return 0;
  const half = u == 0 || v == 0 || w == 0 ? 1 : 2;
  return along > 0 ? half : -half;
}
