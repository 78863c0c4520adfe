/**
 * The ray in single precision, scaled so that its longest component is 1, with the bounds of rounding errors.
 *
 * With e = half a unit in the last place, M the largest coordinate of model and origin, d the sum of the direction's
 * components and L the larger of two edges (largest component), the errors of the sums in `candidates` are at most
 * 8 e d L * 7 M for u and v, 8 e L L * 7 M for the distance's numerator and 8 e d L L for the determinant (products and
 * sums each add one e; the vector from corner to origin is at most 6 M long and off by 2 e M). A box plane's distance
 * is off by at most 9 e M over the direction's component. All are doubled.
 */
import { EPS, FAR, magnitude } from './layout';
import { dx, dy, dz, ox, oy, oz, tBest, tMin } from './ray';

export let sox: f32 = 0;
export let soy: f32 = 0;
export let soz: f32 = 0;
export let sdx: f32 = 0;
export let sdy: f32 = 0;
export let sdz: f32 = 0;
/** One over the direction. */
export let six: f32 = 0;
export let siy: f32 = 0;
export let siz: f32 = 0;
export let sMin: f32 = 0;
/** By how much boxes are widened, mm. */
export let boxSlack: f32 = 0;
/** Times L: for u and v. */
export let edgeSlack: f32 = 0;
/** Times L L: for the distance's numerator, and for the determinant. */
export let distanceSlack: f32 = 0;
export let turnSlack: f32 = 0;
let scale: f64 = 1;

/** Shorter directions are steeper than any box is far. */
const STEEP: f64 = 1e-20;

@inline function inverse(d: f64): f32 {
  return <f32>(1.0 / (abs(d) > STEEP ? d : d < 0 ? -STEEP : STEEP));
}

export function toSingle(): void {
  const longest = max(abs(dx), max(abs(dy), abs(dz)));
  scale = longest > 0 ? longest : 1;
  const u = dx / scale;
  const v = dy / scale;
  const w = dz / scale;
  sox = <f32>ox;
  soy = <f32>oy;
  soz = <f32>oz;
  sdx = <f32>u;
  sdy = <f32>v;
  sdz = <f32>w;
  six = inverse(u);
  siy = inverse(v);
  siz = inverse(w);
  const m = max(magnitude, max(abs(sox), max(abs(soy), abs(soz))));
  boxSlack = EPS * 18 * m;
  turnSlack = EPS * 16 * (abs(sdx) + abs(sdy) + abs(sdz));
  edgeSlack = turnSlack * 7 * m;
  distanceSlack = EPS * 16 * 7 * m;
  const from = max(min(tMin * scale, <f64>FAR), -<f64>FAR);
  sMin = <f32>(from - abs(from) * 1e-6);
}

/** The present best distance, rounded up. */
@inline export function farthest(): f32 {
  return <f32>min(tBest * scale * (1 + 1e-6 * (tBest < 0 ? -1 : 1)), <f64>FAR);
}
