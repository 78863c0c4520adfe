import { stackSize, type Tree } from './tree.ts';

/** Where a ray met a triangle. Reuse one object for many rays. */
export interface Hit {
  /** Along the direction as given: a distance in mm when the direction has length 1. */
  t: number;
  /** In model order. */
  triangle: number;
  /** Index of the part. */
  part: number;
  /** Place of the triangle in the tree. */
  slot: number;
}

export function newHit(): Hit {
  return { t: Infinity, triangle: -1, part: -1, slot: -1 };
}

/** A ray with bounds and a choice of triangles, for the measures. Reuse one object for many rays. */
export interface Ray {
  ox: number;
  oy: number;
  oz: number;
  dx: number;
  dy: number;
  dz: number;
  /** Hits count when `tMin < t < tMax`. */
  tMin: number;
  tMax: number;
  /** -1: only where the ray enters material, 1: only where it leaves material, 0: both. */
  crossing: -1 | 0 | 1;
  /** Triangles of this part count from `skipUntil` on only; -1 for none. */
  skipPart: number;
  skipUntil: number;
}

export function newRay(): Ray {
  return {
    ox: 0,
    oy: 0,
    oz: 0,
    dx: 0,
    dy: 0,
    dz: 1,
    tMin: 0,
    tMax: Infinity,
    crossing: 0,
    skipPart: -1,
    skipUntil: 0,
  };
}

const plain = newRay();
const scratch = newHit();

/** First triangle met at `0 < t < tMax`; false when there is none, and `hit` is then left alone. */
export function firstHit(
  tree: Tree,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMax: number,
  hit: Hit,
): boolean {
  aim(plain, ox, oy, oz, dx, dy, dz, tMax);
  return firstAlong(tree, plain, hit);
}

/** Whether any triangle is met at `0 < t < tMax`. */
export function anyHit(
  tree: Tree,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMax: number,
): boolean {
  aim(plain, ox, oy, oz, dx, dy, dz, tMax);
  return cast(tree, plain, scratch, true);
}

/** First triangle that the ray's own bounds and choice allow. */
export function firstAlong(tree: Tree, ray: Ray, hit: Hit): boolean {
  return cast(tree, ray, hit, false);
}

/** Whether anything is met that the ray's own bounds and choice allow. */
export function someAlong(tree: Tree, ray: Ray, hit: Hit): boolean {
  return cast(tree, ray, hit, true);
}

function aim(
  ray: Ray,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  tMax: number,
): void {
  ray.ox = ox;
  ray.oy = oy;
  ray.oz = oz;
  ray.dx = dx;
  ray.dy = dy;
  ray.dz = dz;
  ray.tMax = tMax;
}

const stack = new Int32Array(stackSize);
const stackT = new Float64Array(stackSize);
/** Stands for 1/0: finite, so that no box test multiplies zero by infinity. */
const steep = 1e300;

function cast(tree: Tree, ray: Ray, hit: Hit, anyWillDo: boolean): boolean {
  const { boxes, first, count, corners } = tree;
  const { ox, oy, oz, dx, dy, dz, tMin, crossing, skipPart, skipUntil } = ray;
  if (tree.triangle.length === 0) return false;
  const ix = dx === 0 ? steep : 1 / dx;
  const iy = dy === 0 ? steep : 1 / dy;
  const iz = dz === 0 ? steep : 1 / dz;
  const nearX = ix < 0 ? 3 : 0;
  const nearY = iy < 0 ? 4 : 1;
  const nearZ = iz < 0 ? 5 : 2;
  const farX = 3 - nearX;
  const farY = 5 - nearY;
  const farZ = 7 - nearZ;
  let tBest = ray.tMax;
  let slotBest = -1;
  let top = 0;
  stack[top] = 0;
  stackT[top++] = tMin;
  while (top > 0) {
    let node = stack[--top];
    if (stackT[top] >= tBest) continue;
    while (node >= 0 && count[node] === 0) {
      const left = first[node];
      const l = left * 6;
      const r = l + 6;
      const lIn = Math.max(
        (boxes[l + nearX] - ox) * ix,
        (boxes[l + nearY] - oy) * iy,
        (boxes[l + nearZ] - oz) * iz,
        tMin,
      );
      const lOut = Math.min(
        (boxes[l + farX] - ox) * ix,
        (boxes[l + farY] - oy) * iy,
        (boxes[l + farZ] - oz) * iz,
        tBest,
      );
      const rIn = Math.max(
        (boxes[r + nearX] - ox) * ix,
        (boxes[r + nearY] - oy) * iy,
        (boxes[r + nearZ] - oz) * iz,
        tMin,
      );
      const rOut = Math.min(
        (boxes[r + farX] - ox) * ix,
        (boxes[r + farY] - oy) * iy,
        (boxes[r + farZ] - oz) * iz,
        tBest,
      );
      if (lIn <= lOut) {
        if (rIn <= rOut) {
          const leftFirst = lIn <= rIn;
          stack[top] = leftFirst ? left + 1 : left;
          stackT[top++] = leftFirst ? rIn : lIn;
          node = leftFirst ? left : left + 1;
        } else node = left;
      } else if (rIn <= rOut) node = left + 1;
      else node = -1;
    }
    if (node < 0) continue;
    const end = first[node] + count[node];
    for (let slot = first[node]; slot < end; slot++) {
      const c = slot * 9;
      const ax = corners[c] - ox;
      const ay = corners[c + 1] - oy;
      const az = corners[c + 2] - oz;
      const bx = corners[c + 3] - ox;
      const by = corners[c + 4] - oy;
      const bz = corners[c + 5] - oz;
      const cx = corners[c + 6] - ox;
      const cy = corners[c + 7] - oy;
      const cz = corners[c + 8] - oz;
      // Signed volumes of the direction with each edge. Two triangles that share an edge get the same number with
      // opposite signs, so that no ray slips through between them (compare Woop, Benthin and Wald 2013).
      const u = dx * (by * cz - bz * cy) + dy * (bz * cx - bx * cz) + dz * (bx * cy - by * cx);
      const v = dx * (cy * az - cz * ay) + dy * (cz * ax - cx * az) + dz * (cx * ay - cy * ax);
      const w = dx * (ay * bz - az * by) + dy * (az * bx - ax * bz) + dz * (ax * by - ay * bx);
      if (!((u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0))) continue;
      const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
      const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
      const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
      const along = nx * dx + ny * dy + nz * dz;
      if (along === 0 || along * crossing < 0) continue;
      const t = (nx * ax + ny * ay + nz * az) / along;
      if (!(t > tMin && t < tBest)) continue;
      if (t < skipUntil && tree.part[slot] === skipPart) continue;
      tBest = t;
      slotBest = slot;
      if (anyWillDo) return true;
    }
  }
  if (slotBest < 0) return false;
  hit.t = tBest;
  hit.slot = slotBest;
  hit.triangle = tree.triangle[slotBest];
  hit.part = tree.part[slotBest];
  return true;
}
