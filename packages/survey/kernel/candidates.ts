import { RAY, SIZES } from './layout';
import { DX, DY, DZ, EARLY, EDGE, EDGES, MIN, OX, OY, OZ } from './single';

/**
 * Lanes of a leaf whose triangle the ray may meet before `far`: a bit each. After Moeller and Trumbore, Fast, minimum
 * storage ray-triangle intersection, 1997, without the division, and widened by the bounds in `single.ts`. Unused lanes
 * hold zeros and may pass.
 */
@inline export function candidates(leaf: usize, work: usize, far: v128, late: v128): i32 {
  const ray = work + RAY;
  const dx = v128.load(ray, DX);
  const dy = v128.load(ray, DY);
  const dz = v128.load(ray, DZ);
  const e1x = v128.load(leaf, 48);
  const e1y = v128.load(leaf, 64);
  const e1z = v128.load(leaf, 80);
  const e2x = v128.load(leaf, 96);
  const e2y = v128.load(leaf, 112);
  const e2z = v128.load(leaf, 128);
  const px = f32x4.sub(f32x4.mul(dy, e2z), f32x4.mul(dz, e2y));
  const py = f32x4.sub(f32x4.mul(dz, e2x), f32x4.mul(dx, e2z));
  const pz = f32x4.sub(f32x4.mul(dx, e2y), f32x4.mul(dy, e2x));
  const det = f32x4.add(f32x4.add(f32x4.mul(e1x, px), f32x4.mul(e1y, py)), f32x4.mul(e1z, pz));
  const tx = f32x4.sub(v128.load(ray, OX), v128.load(leaf));
  const ty = f32x4.sub(v128.load(ray, OY), v128.load(leaf, 16));
  const tz = f32x4.sub(v128.load(ray, OZ), v128.load(leaf, 32));
  const sign = v128.and(det, i32x4.splat(0x80000000));
  const turn = v128.xor(det, sign);
  const u = v128.xor(f32x4.add(f32x4.add(f32x4.mul(tx, px), f32x4.mul(ty, py)), f32x4.mul(tz, pz)), sign);
  const qx = f32x4.sub(f32x4.mul(ty, e1z), f32x4.mul(tz, e1y));
  const qy = f32x4.sub(f32x4.mul(tz, e1x), f32x4.mul(tx, e1z));
  const qz = f32x4.sub(f32x4.mul(tx, e1y), f32x4.mul(ty, e1x));
  const v = v128.xor(f32x4.add(f32x4.add(f32x4.mul(dx, qx), f32x4.mul(dy, qy)), f32x4.mul(dz, qz)), sign);
  const t = v128.xor(f32x4.add(f32x4.add(f32x4.mul(e2x, qx), f32x4.mul(e2y, qy)), f32x4.mul(e2z, qz)), sign);
  const size = v128.load(leaf, SIZES);
  const area = f32x4.mul(size, size);
  const most = f32x4.add(turn, f32x4.mul(size, v128.load(ray, EDGES)));
  const least = f32x4.mul(size, v128.load(ray, EDGE));
  const inside = v128.and(
    f32x4.ge(f32x4.add(f32x4.pmin(u, v), least), f32x4.splat(0)),
    f32x4.le(f32x4.add(u, v), most),
  );
  const within = v128.and(
    f32x4.ge(f32x4.add(t, f32x4.mul(area, v128.load(ray, EARLY))), f32x4.mul(turn, v128.load(ray, MIN))),
    f32x4.le(f32x4.sub(t, f32x4.mul(area, late)), f32x4.mul(turn, far)),
  );
  return i32x4.bitmask(v128.and(inside, within));
}
