/** The nearest point of the surface: boxes in single precision, widened; triangles in double precision. */
import { CHILDREN, corners, EPS, IDS, leafAt, magnitude, nodeAt, RESULTS, SLOT } from './layout';

/** What is found so far: squared distance, point, slot. */
let best: f64 = 0;
let bestX: f64 = 0;
let bestY: f64 = 0;
let bestZ: f64 = 0;
let bestSlot: i32 = -1;
/** Squares and sums of single precision are off by less. */
const WIDER: f64 = 1.000001;
const NOTHING: i32 = 0x7fffffff;

/** Slot of the nearest triangle within `reach`, -1 for none; distance and point, f64, go to `out`. */
export function nearest(root: i32, work: usize, stack: usize, out: usize, x: f64, y: f64, z: f64, reach: f64): i32 {
  best = reach * reach;
  bestSlot = -1;
  descend(root, work, stack, x, y, z);
  store<f64>(out, sqrt(best));
  store<f64>(out, bestX, 8);
  store<f64>(out, bestY, 16);
  store<f64>(out, bestZ, 24);
  return bestSlot;
}

function descend(root: i32, work: usize, stack: usize, x: f64, y: f64, z: f64): void {
  const sx = <f32>x;
  const sy = <f32>y;
  const sz = <f32>z;
  // Rounding of the point and of the difference to a plane.
  const slack: f32 = EPS * 8 * max(magnitude, max(abs(sx), max(abs(sy), abs(sz))));
  const upX = f32x4.splat(sx + slack);
  const upY = f32x4.splat(sy + slack);
  const upZ = f32x4.splat(sz + slack);
  const downX = f32x4.splat(sx - slack);
  const downY = f32x4.splat(sy - slack);
  const downZ = f32x4.splat(sz - slack);
  const zero = f32x4.splat(0);
  let limit = <f32>(best * WIDER);
  let top = stack;
  let ref = root;
  while (true) {
    while (ref >= 0) {
      const node = nodeAt(ref);
      const ax = f32x4.pmax(
        f32x4.pmax(f32x4.sub(v128.load(node), upX), f32x4.sub(downX, v128.load(node, 16))),
        zero,
      );
      const ay = f32x4.pmax(
        f32x4.pmax(f32x4.sub(v128.load(node, 32), upY), f32x4.sub(downY, v128.load(node, 48))),
        zero,
      );
      const az = f32x4.pmax(
        f32x4.pmax(f32x4.sub(v128.load(node, 64), upZ), f32x4.sub(downZ, v128.load(node, 80))),
        zero,
      );
      const d = f32x4.add(f32x4.add(f32x4.mul(ax, ax), f32x4.mul(ay, ay)), f32x4.mul(az, az));
      let mask = i32x4.bitmask(
        v128.and(f32x4.le(d, f32x4.splat(limit)), f32x4.lt(d, f32x4.splat(Infinity))),
      );
      if (mask == 0) {
        ref = NOTHING;
        break;
      }
      v128.store(work, d);
      const base = top;
      // The farthest at the bottom, so that the nearest is taken next.
      do {
        const c = <usize>ctz(mask) << 2;
        mask &= mask - 1;
        const dc = load<f32>(work + c);
        let at = top;
        while (at > base && load<f32>(at - 8, 4) < dc) {
          store<u64>(at, load<u64>(at - 8));
          at -= 8;
        }
        store<i32>(at, load<i32>(node + c, CHILDREN));
        store<f32>(at, dc, 4);
        top += 8;
      } while (mask != 0);
      top -= 8;
      ref = load<i32>(top);
    }
    if (ref < 0) {
      const ids = leafAt(ref) + IDS;
      for (let lane: usize = 0; lane < 16; lane += 4) {
        const slot = load<i32>(ids + lane);
        if (slot >= 0) approach(slot, x, y, z);
      }
      limit = <f32>(best * WIDER);
    }
    do {
      if (top == stack) return;
      top -= 8;
    } while (load<f32>(top, 4) > limit);
    ref = load<i32>(top);
  }
}

/** By the Voronoi regions of the triangle (Ericson, Real-Time Collision Detection, 2005, 5.1.5). */
function approach(slot: i32, x: f64, y: f64, z: f64): void {
  const c = corners + <usize>slot * SLOT;
  const ax = load<f64>(c);
  const ay = load<f64>(c, 8);
  const az = load<f64>(c, 16);
  const ux = load<f64>(c, 24) - ax;
  const uy = load<f64>(c, 32) - ay;
  const uz = load<f64>(c, 40) - az;
  const vx = load<f64>(c, 48) - ax;
  const vy = load<f64>(c, 56) - ay;
  const vz = load<f64>(c, 64) - az;
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
  let s: f64 = 0;
  let t: f64 = 0;
  if (d1 <= 0 && d2 <= 0) {
    // The first corner.
  } else if (d3 >= 0 && d4 <= d3) {
    s = 1;
  } else if (d6 >= 0 && d5 <= d6) {
    t = 1;
  } else if (vc <= 0 && d1 >= 0 && d3 <= 0) {
    s = d1 / (d1 - d3);
  } else if (vb <= 0 && d2 >= 0 && d6 <= 0) {
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
  const d = (px - qx) * (px - qx) + (py - qy) * (py - qy) + (pz - qz) * (pz - qz);
  // Of equally near triangles the first wins, so that the answer does not depend on the tree.
  if (!(d < best || (d == best && (bestSlot < 0 || slot < bestSlot)))) return;
  best = d;
  bestX = ax + qx;
  bestY = ay + qy;
  bestZ = az + qz;
  bestSlot = slot;
}
