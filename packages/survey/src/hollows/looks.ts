/** Looks along passages: what bars the way, and whether it is a wall across it or the wall of a bend. */
import { type Model, transformPoint, type Vec3 } from '@coveline/model';
import { type Material, partAt } from '../tree/inside.ts';
import { materialOf } from '../tree/material.ts';
import { firstHit, type Hit, newHit } from '../tree/ray.ts';
import { across } from './across.ts';
import { along, cross, dot, unit } from './vector.ts';

export interface Looks {
  readonly model: Model;
  readonly material: Material;
  /** First triangle of each part, in model order. */
  readonly start: readonly number[];
}

export function looksAt(model: Model): Looks {
  const start: number[] = [];
  let n = 0;
  for (const { shape } of model.parts) {
    start.push(n);
    n += model.shapes[shape].triangles.length / 3;
  }
  return { model, material: materialOf(model), start };
}

/** What stands across a passage. */
export interface Barrier {
  /** Distance to it on the axis, and to the deepest point that is seen beside the axis, mm. */
  readonly axis_mm: number;
  readonly deepest_mm: number;
  /** Parts hit on the axis and at the deepest point. */
  readonly part: number;
  readonly deepestPart: number;
  /** Cosine between the axis and the mean of the normals: 1 for a cap, a drill point or a dome, less for a bend. */
  readonly facing: number;
}

/** One looks along a line beside the axis, for meshes have a vertex at the middle of a bore's end: share of the radius. */
const offAxis = [0.0061, 0.0047] as const;
const ring = 6;
/** Radius of the ring of looks, share of the bore's. */
export const ringRadius = 0.55;
const hit = newHit();

/** What a look from a point on the axis meets first, within `reach` mm; -1 where the way is free. */
export function axisLook(
  { material }: Looks,
  at: Vec3,
  direction: Vec3,
  radius: number,
  reach: number,
  out: Hit = hit,
): number {
  const [e1, e2] = across(direction);
  const [x, y, z] = along(along(at, e1, offAxis[0] * radius), e2, offAxis[1] * radius);
  return firstHit(material.tree, x, y, z, ...direction, reach, out) ? out.t : -1;
}

/** What bars the whole way within `reach` mm; undefined where some look gets through. */
export function barrierAhead(
  looks: Looks,
  at: Vec3,
  direction: Vec3,
  radius: number,
  reach: number,
): Barrier | undefined {
  const axis_mm = axisLook(looks, at, direction, radius, reach);
  if (axis_mm < 0) return undefined;
  const { part } = hit;
  const [e1, e2] = across(direction);
  let deepest_mm = axis_mm;
  let deepestPart = part;
  let mean: Vec3 = [0, 0, 0];
  for (let k = 0; k < ring; k++) {
    const [x, y, z] = onRing(at, e1, e2, k, ringRadius * radius);
    if (!firstHit(looks.material.tree, x, y, z, ...direction, reach, hit)) return undefined;
    if (hit.t > deepest_mm) {
      deepest_mm = hit.t;
      deepestPart = hit.part;
    }
    const normal = normalOf(looks, hit);
    mean = along(mean, normal, dot(normal, direction) > 0 ? 1 : -1);
  }
  const length = Math.hypot(...mean);
  return {
    axis_mm,
    deepest_mm,
    part,
    deepestPart,
    facing: length > 0 ? dot(mean, direction) / length : 0,
  };
}

/** Where the last look of a ring about the axis ends, within `reach` mm; undefined where one gets through. */
export function ringLook(
  looks: Looks,
  at: Vec3,
  direction: Vec3,
  radius: number,
  reach: number,
): { readonly deepest_mm: number; readonly part: number } | undefined {
  const [e1, e2] = across(direction);
  let deepest_mm = -1;
  let part = -1;
  for (let k = 0; k < ring; k++) {
    const [x, y, z] = onRing(at, e1, e2, k, radius);
    if (!firstHit(looks.material.tree, x, y, z, ...direction, reach, hit)) return undefined;
    if (hit.t <= deepest_mm) continue;
    deepest_mm = hit.t;
    part = hit.part;
  }
  return { deepest_mm, part };
}

function onRing(at: Vec3, e1: Vec3, e2: Vec3, k: number, radius: number): Vec3 {
  const angle = (2 * Math.PI * (k + 0.37)) / ring;
  return along(along(at, e1, Math.cos(angle) * radius), e2, Math.sin(angle) * radius);
}

const around = 16;
/** A wall farther away than this many radii is not that of the passage. */
const ownWall = 1.6;
const sameWall = 0.1;

/** Whether a look to the side from a point on the axis gets out between the walls. */
export function opensAround(looks: Looks, at: Vec3, axis: Vec3, radius: number): boolean {
  for (let k = 0; k < around; k++) if (sideLook(looks, at, axis, k, ownWall * radius) < 0) return true;
  return false;
}

/** Of the looks to the side, the share that get farther than `reach` mm. */
export function freeShare(looks: Looks, at: Vec3, axis: Vec3, reach: number): number {
  let free = 0;
  for (let k = 0; k < around; k++) if (sideLook(looks, at, axis, k, reach) < 0) free++;
  return free / around;
}

/** Whether a look to the side ends on a wall about as far away as the bore's. */
export function seesWall(looks: Looks, at: Vec3, axis: Vec3, radius: number): boolean {
  for (let k = 0; k < around; k++)
    if (sideLook(looks, at, axis, k, (1 + sameWall) * radius) > (1 - sameWall) * radius) return true;
  return false;
}

/** The k-th look square to an axis: how far it gets, -1 where that is farther than `reach`. */
function sideLook({ material }: Looks, at: Vec3, axis: Vec3, k: number, reach: number): number {
  const [e1, e2] = across(axis);
  const angle = (2 * Math.PI * (k + 0.37)) / around;
  const [x, y, z] = along(along([0, 0, 0], e1, Math.cos(angle)), e2, Math.sin(angle));
  return firstHit(material.tree, ...at, x, y, z, reach, hit) ? hit.t : -1;
}

/** Whether a point lies in material. */
export function isSolid({ material }: Looks, [x, y, z]: Vec3): boolean {
  return partAt(material, x, y, z) >= 0;
}

/** Whether the first point of the ring about a place on the axis lies in material: it is filled, not only on its axis. */
export function isFilled(looks: Looks, at: Vec3, axis: Vec3, radius: number): boolean {
  const [e1, e2] = across(axis);
  return isSolid(looks, onRing(at, e1, e2, 0, ringRadius * radius));
}

/** Unit normal of the triangle that was hit. */
export function normalOf({ model, start }: Looks, { part, triangle }: Hit): Vec3 {
  const { shape, placement } = model.parts[part];
  const { positions: p, triangles } = model.shapes[shape];
  const corner = (k: number): Vec3 => {
    const v = triangles[3 * (triangle - start[part]) + k] * 3;
    return transformPoint(placement, [p[v], p[v + 1], p[v + 2]]);
  };
  const [a, b, c] = [corner(0), corner(1), corner(2)];
  return unit(cross(along(b, a, -1), along(c, a, -1)));
}
