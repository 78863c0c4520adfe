/** Holes in the wall of a member, seen from inside. */
import type { Vec3 } from '@coveline/model';
import { firstHit, newHit } from '../tree/ray.ts';
import { type Ball, ballAt, widened } from './ball.ts';
import { onSphere } from './inner-walls.ts';
import type { Looks } from './looks.ts';
import { along, dot, minus } from './vector.ts';

/** Places inside from which one looks, directions from each, and ways out that are measured. */
const mostPlaces = 60;
const looksEach = 256;
const mostWays = 12;
/** Step on a way out, of the radius of the ball there, and its least, of the first one's. */
const stride = 0.2;
const finest = 1e-3;
const rounds = 3;
/** Walls farther from a hole than this many first radii are not those that it is in. */
const near = 4;

const hit = newHit();

/** A place on an inner wall. */
export interface WallPoint {
  readonly at: Vec3;
  readonly normal: Vec3;
}

/**
 * The widest way out of a box that a straight look from inside finds: the largest ball that passes, and its direction.
 * `walls`: inner walls around.
 */
export function wayOut(
  looks: Looks,
  balls: readonly Ball[],
  walls: readonly WallPoint[],
  box: readonly [Vec3, Vec3],
): { readonly neck: Ball; readonly direction: Vec3 } | undefined {
  const ways: { start: Ball; neck: Ball }[] = [];
  const every = Math.max(1, Math.floor(balls.length / mostPlaces));
  for (let b = 0; b < balls.length; b += every) {
    for (let r = 0; r < looksEach; r++) {
      // Another turn of the spiral at every place, so that not all look the same ways.
      const look = onSphere(r, looksEach + b);
      const reach = toLeave(balls[b].at, look, box);
      if (firstHit(looks.material.tree, ...balls[b].at, ...look, reach, hit)) continue;
      const neck = narrowest(looks, balls[b].at, look, 0, reach, balls[b].radius);
      if (neck) ways.push({ start: balls[b], neck });
    }
  }
  let best: { readonly neck: Ball; readonly direction: Vec3 } | undefined;
  for (const way of ways.sort((a, b) => b.neck.radius - a.neck.radius).slice(0, mostWays)) {
    const found = neckOf(looks, way, walls);
    if (found && (!best || found.neck.radius > best.neck.radius)) best = found;
  }
  return best;
}

/**
 * The narrowest place on a straight way out, made as wide as it gets by moving along the wall, in turns: a hole is as
 * wide as the ball at the place that is the widest across and the narrowest along its axis, which stands on the wall.
 */
function neckOf(
  looks: Looks,
  { start, neck: first }: { readonly start: Ball; readonly neck: Ball },
  walls: readonly WallPoint[],
): { readonly neck: Ball; readonly direction: Vec3 } | undefined {
  let neck: Ball | undefined = first;
  const direction = wallNormal(first.at, walls, near * start.radius);
  for (let k = 0; k < rounds && neck && direction; k++) {
    const wide = widened(looks, neck, direction, start.radius);
    neck = narrowest(looks, wide.at, direction, -wide.radius, wide.radius, start.radius);
  }
  return neck && direction && { neck, direction };
}

/** How far it is along a unit direction from inside a box to its border. */
function toLeave(at: Vec3, d: Vec3, [low, high]: readonly [Vec3, Vec3]): number {
  let least = Infinity;
  for (let k = 0; k < 3; k++) {
    if (d[k] > 0) least = Math.min(least, (high[k] - at[k]) / d[k]);
    if (d[k] < 0) least = Math.min(least, (low[k] - at[k]) / d[k]);
  }
  return least;
}

/** The normal of the wall whose plane is the nearest to a place in one of its holes. */
function wallNormal(at: Vec3, walls: readonly WallPoint[], reach: number): Vec3 | undefined {
  let least = Infinity;
  let normal: Vec3 | undefined;
  for (const wall of walls) {
    const d = minus(at, wall.at);
    const off = Math.abs(dot(d, wall.normal));
    if (off >= least || Math.hypot(...d) > reach) continue;
    least = off;
    normal = wall.normal;
  }
  return normal;
}

/** The smallest ball on a straight line, from one distance to another. */
function narrowest(
  looks: Looks,
  at: Vec3,
  direction: Vec3,
  from: number,
  to: number,
  most: number,
): Ball | undefined {
  let least: Ball | undefined;
  for (let s = from; s <= to; ) {
    const ball = ballAt(looks, along(at, direction, s), most);
    if (!ball) return undefined;
    if (!least || ball.radius < least.radius) least = ball;
    s += Math.max(stride * ball.radius, finest * most);
  }
  return least;
}
