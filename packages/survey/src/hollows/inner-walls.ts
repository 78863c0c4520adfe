/** How much of a part's surface lies inside it: the inner walls of tubes, whether their ends are open or closed. */
import { type Placement, type Shape, transformPoint, type Vec3 } from '@coveline/model';
import { firstAlong, newHit, newRay } from '../tree/ray.ts';
import type { Looks } from './looks.ts';
import { cross, dot, minus } from './vector.ts';

/** Points on the surface, a few at first, and rays from each. */
const firstPoints = 60;
const points = 400;
const rays = 24;
/** A point of which this share of rays ends on the part itself lies inside. In a tube only its ends let rays out. */
const inside = 0.9;
/** Points are lifted off the surface by this much, mm. */
const lift_mm = 1e-3;

export interface InnerWalls {
  /** A lower estimate: walls within about a width of an open end see out and do not count. */
  readonly area_cm2: number;
  /** Points on them and the normals there, in the frame of the shape. */
  readonly points: readonly { readonly at: Vec3; readonly normal: Vec3 }[];
}

/** A place on a triangle of the part, in the frame of its shape, where that lies inside the part alone. */
type InsideTest = (triangle: number, seed: number) => InnerWalls['points'][number] | undefined;

/**
 * Inner walls of one part, other parts left aside. Points are spread by area, rays over the half space of the air in a
 * fixed order, so that the same shape gives the same number. Less than `least_cm2` after a first look counts as none.
 */
export function innerWallsOf(looks: Looks, part: number, least_cm2: number): InnerWalls {
  const shape = looks.model.shapes[looks.model.parts[part].shape];
  const areas = areasOf(shape);
  const total = areas.reduce((sum, a) => sum + a, 0) / 100;
  const isInside = insideTest(looks, part);
  const look = (count: number): InnerWalls => {
    const found: InnerWalls['points'][number][] = [];
    let passed = 0;
    let next = 0;
    for (let t = 0; t < areas.length; t++) {
      passed += areas[t] / 100;
      for (; next < count && (next + 0.5) * (total / count) <= passed; next++) {
        const point = isInside(t, next);
        if (point) found.push(point);
      }
    }
    return { area_cm2: (found.length / count) * total, points: found };
  };
  if (total < least_cm2 || look(firstPoints).area_cm2 < least_cm2 / 2) return { area_cm2: 0, points: [] };
  return look(points);
}

function insideTest(looks: Looks, part: number): InsideTest {
  const { shape: index, placement } = looks.model.parts[part];
  const shape = looks.model.shapes[index];
  const diagonal = diagonalOf(shape);
  return (triangle, seed) => {
    const [a, b, c] = cornersOf(shape, triangle);
    const n = cross(minus(b, a), minus(c, a));
    const length = Math.hypot(...n);
    if (length === 0) return undefined;
    const normal: Vec3 = [n[0] / length, n[1] / length, n[2] / length];
    // A place on the triangle by two low-discrepancy numbers (Roberts, the R2 sequence), folded into it.
    let u = (seed * 0.7548776662466927) % 1;
    let v = (seed * 0.5698402909980532) % 1;
    if (u + v > 1) [u, v] = [1 - u, 1 - v];
    const at = [0, 1, 2].map(
      (i) => a[i] * (1 - u - v) + b[i] * u + c[i] * v + normal[i] * lift_mm,
    ) as unknown as Vec3;
    return liesInside(looks, part, placement, at, normal, diagonal) ? { at, normal } : undefined;
  };
}

function liesInside(
  looks: Looks,
  part: number,
  placement: Placement,
  at: Vec3,
  normal: Vec3,
  diagonal: number,
): boolean {
  const start = transformPoint(placement, at);
  const mostFree = Math.floor((1 - inside) * rays);
  let free = 0;
  for (let r = 0; r < rays && free <= mostFree; r++) {
    const d = onSphere(r, rays);
    const side = dot(d, normal) < 0 ? -1 : 1;
    const end = transformPoint(placement, [at[0] + side * d[0], at[1] + side * d[1], at[2] + side * d[2]]);
    if (!meets(looks, part, start, minus(end, start), diagonal)) free++;
  }
  return free <= mostFree;
}

const ray = newRay();
const hit = newHit();

/** Whether a ray meets one part within `reach` mm, whatever other parts it passes. */
function meets({ material }: Looks, part: number, at: Vec3, d: Vec3, reach: number): boolean {
  [ray.ox, ray.oy, ray.oz] = at;
  [ray.dx, ray.dy, ray.dz] = d;
  ray.tMin = 0;
  ray.tMax = reach;
  while (firstAlong(material.tree, ray, hit)) {
    if (hit.part === part) return true;
    ray.tMin = hit.t;
  }
  return false;
}

/** The r-th of `count` directions, spread over the sphere by the golden angle. */
export function onSphere(r: number, count: number): Vec3 {
  const z = 1 - (2 * r + 1) / count;
  const wide = Math.sqrt(1 - z * z);
  const turn = r * Math.PI * (3 - Math.sqrt(5));
  return [wide * Math.cos(turn), wide * Math.sin(turn), z];
}

function diagonalOf({ positions: p }: Shape): number {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < p.length; i++) {
    const k = i % 3;
    if (p[i] < low[k]) low[k] = p[i];
    if (p[i] > high[k]) high[k] = p[i];
  }
  return Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
}

function cornersOf({ positions: p, triangles }: Shape, t: number): [Vec3, Vec3, Vec3] {
  const corner = (k: number): Vec3 => {
    const v = 3 * triangles[3 * t + k];
    return [p[v], p[v + 1], p[v + 2]];
  };
  return [corner(0), corner(1), corner(2)];
}

/** mm2 per triangle. */
function areasOf(shape: Shape): Float64Array {
  return Float64Array.from({ length: shape.triangles.length / 3 }, (_, t) => {
    const [a, b, c] = cornersOf(shape, t);
    return Math.hypot(...cross(minus(b, a), minus(c, a))) / 2;
  });
}
