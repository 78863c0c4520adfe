import { SIZES } from './layout';
import { distanceSlack, edgeSlack, sdx, sdy, sdz, sMin, sox, soy, soz, turnSlack } from './single';

/** Sums below this may have lost everything to underflow. */
const TINY: f32 = 1e-30;

/**
 * Lanes of a leaf whose triangle the ray may meet before `far`: a bit each. After Moeller and Trumbore, Fast, minimum
 * storage ray-triangle intersection, 1997, without the division, and widened by the bounds in `single.ts`. Unused lanes
 * hold zeros and may pass.
 */
@inline export function candidates(leaf: usize, far: f32): i32 {
  const vdx = f32x4.splat(sdx);
  const vdy = f32x4.splat(sdy);
  const vdz = f32x4.splat(sdz);
  const e1x = v128.load(leaf, 48);
  const e1y = v128.load(leaf, 64);
  const e1z = v128.load(leaf, 80);
  const e2x = v128.load(leaf, 96);
  const e2y = v128.load(leaf, 112);
  const e2z = v128.load(leaf, 128);
  const size = v128.load(leaf, SIZES);
  const px = f32x4.sub(f32x4.mul(vdy, e2z), f32x4.mul(vdz, e2y));
  const py = f32x4.sub(f32x4.mul(vdz, e2x), f32x4.mul(vdx, e2z));
  const pz = f32x4.sub(f32x4.mul(vdx, e2y), f32x4.mul(vdy, e2x));
  const det = f32x4.add(f32x4.add(f32x4.mul(e1x, px), f32x4.mul(e1y, py)), f32x4.mul(e1z, pz));
  const tx = f32x4.sub(f32x4.splat(sox), v128.load(leaf));
  const ty = f32x4.sub(f32x4.splat(soy), v128.load(leaf, 16));
  const tz = f32x4.sub(f32x4.splat(soz), v128.load(leaf, 32));
  const sign = v128.and(det, i32x4.splat(0x80000000));
  const turn = v128.xor(det, sign);
  const u = v128.xor(f32x4.add(f32x4.add(f32x4.mul(tx, px), f32x4.mul(ty, py)), f32x4.mul(tz, pz)), sign);
  const qx = f32x4.sub(f32x4.mul(ty, e1z), f32x4.mul(tz, e1y));
  const qy = f32x4.sub(f32x4.mul(tz, e1x), f32x4.mul(tx, e1z));
  const qz = f32x4.sub(f32x4.mul(tx, e1y), f32x4.mul(ty, e1x));
  const v = v128.xor(f32x4.add(f32x4.add(f32x4.mul(vdx, qx), f32x4.mul(vdy, qy)), f32x4.mul(vdz, qz)), sign);
  const t = v128.xor(f32x4.add(f32x4.add(f32x4.mul(e2x, qx), f32x4.mul(e2y, qy)), f32x4.mul(e2z, qz)), sign);
  const tiny = f32x4.splat(TINY);
  const area = f32x4.mul(size, size);
  const turnOff = f32x4.add(f32x4.mul(area, f32x4.splat(turnSlack)), tiny);
  const edgeOff = f32x4.add(f32x4.mul(size, f32x4.splat(edgeSlack)), tiny);
  const most = f32x4.add(f32x4.add(turn, turnOff), f32x4.add(edgeOff, edgeOff));
  const least = f32x4.neg(edgeOff);
  const inside = v128.and(
    v128.and(f32x4.ge(u, least), f32x4.ge(v, least)),
    f32x4.le(f32x4.add(u, v), most),
  );
  const distanceOff = f32x4.add(f32x4.mul(area, f32x4.splat(distanceSlack)), tiny);
  const early = f32x4.sub(
    f32x4.mul(f32x4.splat(sMin), turn),
    f32x4.add(distanceOff, f32x4.mul(f32x4.splat(abs(sMin)), turnOff)),
  );
  const late = f32x4.add(
    f32x4.mul(f32x4.splat(far), turn),
    f32x4.add(distanceOff, f32x4.mul(f32x4.splat(abs(far)), turnOff)),
  );
  const within = v128.and(f32x4.ge(t, early), f32x4.le(t, late));
  // Seen on edge, or a needle: the sign of the determinant, and so of all else, is not known.
  const unsure = f32x4.le(turn, turnOff);
  if (!v128.any_true(unsure)) return i32x4.bitmask(v128.and(inside, within));
  const near = v128.and(f32x4.le(f32x4.abs(u), most), f32x4.le(f32x4.abs(v), most));
  return i32x4.bitmask(v128.or(v128.and(inside, within), v128.and(unsure, near)));
}
