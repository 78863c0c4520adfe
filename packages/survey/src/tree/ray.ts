import type { Tree } from './tree.ts';

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

/**
 * First triangle met at `0 < t < tMax`, of equally near ones the first in model order; false when there is none, and
 * `hit` is then left alone. Hits are exact in double precision, and no ray slips through an edge that two triangles share.
 */
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
  const { calls, root, work, triangles } = tree.kernel;
  if (triangles === 0) return false;
  return take(tree, calls.firstAlong(root, work, ox, oy, oz, dx, dy, dz, 0, tMax, 0, 0, 0, 0), hit);
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
  const { calls, root, work, triangles } = tree.kernel;
  return triangles > 0 && calls.someAlong(root, work, ox, oy, oz, dx, dy, dz, 0, tMax, 0, 0, 0, 0) >= 0;
}

/** First triangle that the ray's own bounds and choice allow. */
export function firstAlong(tree: Tree, ray: Ray, hit: Hit): boolean {
  const { calls, root, work, triangles } = tree.kernel;
  if (triangles === 0) return false;
  const { ox, oy, oz, dx, dy, dz, tMin, tMax, crossing, skipPart, skipUntil } = ray;
  const from = skipPart < 0 ? 0 : tree.start[skipPart];
  const to = skipPart < 0 ? 0 : tree.start[skipPart + 1];
  const slot = calls.firstAlong(
    root,
    work,
    ox,
    oy,
    oz,
    dx,
    dy,
    dz,
    tMin,
    tMax,
    crossing,
    from,
    to,
    skipUntil,
  );
  return take(tree, slot, hit);
}

/** Whether anything is met that the ray's own bounds and choice allow: `hit` is then one of such triangles. */
export function someAlong(tree: Tree, ray: Ray, hit: Hit): boolean {
  const { calls, root, work, triangles } = tree.kernel;
  if (triangles === 0) return false;
  const { ox, oy, oz, dx, dy, dz, tMin, tMax, crossing, skipPart, skipUntil } = ray;
  const from = skipPart < 0 ? 0 : tree.start[skipPart];
  const to = skipPart < 0 ? 0 : tree.start[skipPart + 1];
  const slot = calls.someAlong(root, work, ox, oy, oz, dx, dy, dz, tMin, tMax, crossing, from, to, skipUntil);
  return take(tree, slot, hit);
}

function take({ kernel, part }: Tree, slot: number, hit: Hit): boolean {
  if (slot < 0) return false;
  hit.t = kernel.results[0];
  hit.slot = slot;
  hit.triangle = slot;
  hit.part = part[slot];
  return true;
}
