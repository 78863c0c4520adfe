/**
 * The ray that is being asked about, in double precision, and whether it meets a triangle.
 *
 * The tree is walked in single precision with every test widened by a bound of its rounding error, so that nothing is
 * lost; what passes is decided here, from the corners. They are seen along the ray, in two coordinates (Woop, Benthin
 * and Wald, Watertight ray/triangle intersection, 2013): which side of an edge the ray passes is the sign of a difference
 * of two products, and as rounding keeps order, that sign is right or zero, which counts for both triangles of an edge.
 * So no ray slips between triangles that share corners.
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

/** Axes across the ray and along it, bytes, and what is taken off across for each step along. */
let axisU: usize = 0;
let axisV: usize = 8;
let axisW: usize = 16;
let originU: f64 = 0;
let originV: f64 = 0;
let originW: f64 = 0;
let shearU: f64 = 0;
let shearV: f64 = 0;

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
  if (abs(w) >= abs(u) && abs(w) >= abs(v)) lookAlong(0, 8, 16, x, y, z, u, v, w);
  else if (abs(v) >= abs(u)) lookAlong(16, 0, 8, z, x, y, w, u, v);
  else lookAlong(8, 16, 0, y, z, x, v, w, u);
}

@inline function lookAlong(
  u: usize, v: usize, w: usize, atU: f64, atV: f64, atW: f64, alongU: f64, alongV: f64, alongW: f64,
): void {
  axisU = u;
  axisV = v;
  axisW = w;
  originU = atU;
  originV = atV;
  originW = atW;
  shearU = alongU / alongW;
  shearV = alongV / alongW;
}

/** The sides on which the ray passes the edges of a triangle. */
let sideA: f64 = 0;
let sideB: f64 = 0;
let sideC: f64 = 0;

/** Whether the line of the ray passes the triangle with its corners at `c`; sets the sides. */
@inline function hits(c: usize): bool {
  const aw = load<f64>(c + axisW) - originW;
  const bw = load<f64>(c + axisW, 24) - originW;
  const cw = load<f64>(c + axisW, 48) - originW;
  const au = load<f64>(c + axisU) - originU - shearU * aw;
  const av = load<f64>(c + axisV) - originV - shearV * aw;
  const bu = load<f64>(c + axisU, 24) - originU - shearU * bw;
  const bv = load<f64>(c + axisV, 24) - originV - shearV * bw;
  const cu = load<f64>(c + axisU, 48) - originU - shearU * cw;
  const cv = load<f64>(c + axisV, 48) - originV - shearV * cw;
  sideA = cu * bv - cv * bu;
  sideB = au * cv - av * cu;
  sideC = bu * av - bv * au;
  return (sideA >= 0 && sideB >= 0 && sideC >= 0) || (sideA <= 0 && sideB <= 0 && sideC <= 0);
}

/** Of the plane of the triangle: how the ray meets it, and the distance along the ray times that. */
let along: f64 = 0;

@inline function height(c: usize): f64 {
  const ax = load<f64>(c) - ox;
  const ay = load<f64>(c, 8) - oy;
  const az = load<f64>(c, 16) - oz;
  const bx = load<f64>(c, 24) - ox;
  const by = load<f64>(c, 32) - oy;
  const bz = load<f64>(c, 40) - oz;
  const cx = load<f64>(c, 48) - ox;
  const cy = load<f64>(c, 56) - oy;
  const cz = load<f64>(c, 64) - oz;
  const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
  const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
  const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  along = nx * dx + ny * dy + nz * dz;
  return nx * ax + ny * ay + nz * az;
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
  if (!hits(c)) return false;
  const h = height(c);
  if (along == 0 || along * crossing < 0) return false;
  const t = h / along;
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
  if (!hits(c)) return 0;
  const h = height(c);
  if (along == 0 || !(h / along > 0)) return 0;
  const half = sideA == 0 || sideB == 0 || sideC == 0 ? 1 : 2;
  return along > 0 ? half : -half;
}
