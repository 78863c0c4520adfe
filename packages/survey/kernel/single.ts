/**
 * The ray in single precision, scaled so that its longest component is 1, with the bounds of rounding errors.
 *
 * With e = half a unit in the last place, M the largest coordinate of model and origin, d the sum of the direction's
 * components and L the larger of two edges (largest component), the errors of the sums in `candidates` are at most
 * 8 e d L * 7 M for u and v, 8 e L L * 7 M for the distance's numerator and 8 e d L L for the determinant (products and
 * sums each add one e; the vector from corner to origin is at most 6 M long and off by 2 e M). A box plane's distance
 * is off by at most 9 e M over the direction's component. All are doubled, the distance's numerator twice: then a
 * triangle seen on edge, whose determinant may come out with the wrong sign, passes too. (Its determinant is at most
 * 4 e d L L and the ray's way to it at most 3.5 M, so its numerator is at most 14 e M d L L, d at most 3, and half of
 * the slack of 8 e 7 M 4 L L covers that beside its own error; u and v are smaller than the determinant.)
 */
import { EPS, FAR, magnitude, RAY } from './layout';
import { dx, dy, dz, ox, oy, oz, tBest, tMin } from './ray';

export let six: f32 = 0;
export let siy: f32 = 0;
export let siz: f32 = 0;
/** By how much boxes are widened, mm. */
export let boxSlack: f32 = 0;
/** Times L L: for the distance's numerator, and for the determinant. */
export let distanceSlack: f32 = 0;
export let turnSlack: f32 = 0;
let scale: f64 = 1;

/** In the ray of a work area, four equal lanes each. `EDGE` times L is the slack of u and v. */
export const OX: usize = 0;
export const OY: usize = 16;
export const OZ: usize = 32;
export const DX: usize = 48;
export const DY: usize = 64;
export const DZ: usize = 80;
export const EDGE: usize = 96;
/** Three times `EDGE`, which covers the determinant's slack, for L is at most 2 M. */
export const EDGES: usize = 112;
/** Times L L. */
export const EARLY: usize = 128;
export const MIN: usize = 144;

/** Shorter directions are steeper than any box is far. */
const STEEP: f32 = 1e-20;
/** Smaller models are tested as if they were of this size, where products do not vanish, mm. */
const LEAST_MAGNITUDE: f32 = 1e-6;

@inline function inverse(d: f32): f32 {
  return 1 / (abs(d) > STEEP ? d : d < 0 ? -STEEP : STEEP);
}

@inline function put(work: usize, x: f32, at: usize): void {
  v128.store(work + RAY + at, f32x4.splat(x));
}

export function toSingle(work: usize): void {
  const longest = max(abs(dx), max(abs(dy), abs(dz)));
  scale = longest > 0 ? longest : 1;
  const shorter = 1 / scale;
  const x = <f32>ox;
  const y = <f32>oy;
  const z = <f32>oz;
  const u = <f32>(dx * shorter);
  const v = <f32>(dy * shorter);
  const w = <f32>(dz * shorter);
  six = inverse(u);
  siy = inverse(v);
  siz = inverse(w);
  const m = max(max(magnitude, LEAST_MAGNITUDE), max(abs(x), max(abs(y), abs(z))));
  boxSlack = EPS * 18 * m;
  turnSlack = EPS * 16 * (abs(u) + abs(v) + abs(w));
  distanceSlack = EPS * 32 * 7 * m;
  const from = max(min(tMin * scale, <f64>FAR), -<f64>FAR);
  const least = <f32>(from - abs(from) * 1e-6);
  const edgeSlack = turnSlack * 7 * m;
  put(work, x, OX);
  put(work, y, OY);
  put(work, z, OZ);
  put(work, u, DX);
  put(work, v, DY);
  put(work, w, DZ);
  put(work, edgeSlack, EDGE);
  put(work, edgeSlack * 3, EDGES);
  put(work, distanceSlack + abs(least) * turnSlack, EARLY);
  put(work, least, MIN);
}

/** The present best distance, rounded up. */
@inline export function farthest(): f32 {
  return <f32>min(tBest * scale * (1 + 1e-6 * (tBest < 0 ? -1 : 1)), <f64>FAR);
}

/** Times L L: the slack of the distance's numerator at `far`. */
@inline export function lateSlack(far: f32): f32 {
  return distanceSlack + abs(far) * turnSlack;
}
