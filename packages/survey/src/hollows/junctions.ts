/** Where two passages open into each other. */
import { newHit } from '../tree/ray.ts';
import { axisLook, type Looks } from './looks.ts';
import { closePairs } from './pairs.ts';
import { type Passage, pointAt, radiusAt } from './passages.ts';
import { boxOf } from './runs.ts';
import { cross, dot, minus, unit } from './vector.ts';

/** One passage as it takes part in a junction. */
export interface Side {
  /** Index of the passage. */
  readonly passage: number;
  /** Where the axes are nearest to each other, along this passage. */
  readonly at: number;
  /** From there to the inner wall of the other passage, along this one, mm. */
  readonly toWall_mm: number;
}

export interface Junction {
  readonly sides: readonly [Side, Side];
}

/** Axes at a smaller angle than this (its sine) run along each other. */
const leastSine = 0.2;
/** The axes may pass each other by this share of the larger radius: a branch set off to one side. */
const mostOffset = 0.95;
/** A passage that ends this much before the other's wall, of its radius, still opens into it. */
const slack = 0.15;

export function junctionsOf(passages: readonly Passage[], looks: Looks): Junction[] {
  const found: Junction[] = [];
  const boxes = passages.map((p) => boxOf({ ...p, radius: widest(p) }, widest(p)));
  closePairs(boxes, (a, b) => {
    const junction = junctionOf(passages, a, b, looks);
    if (junction) found.push(junction);
  });
  return found;
}

export function widest({ pieces }: Passage): number {
  return Math.max(...pieces.map(({ radius }) => radius));
}

function junctionOf(passages: readonly Passage[], a: number, b: number, looks: Looks): Junction | undefined {
  const [A, B] = [passages[a], passages[b]];
  const normal = cross(A.direction, B.direction);
  const sine = Math.hypot(...normal);
  if (sine < leastSine) return undefined;
  const apart = minus(B.origin, A.origin);
  const offset = Math.abs(dot(apart, normal)) / sine;
  const atA = dot(cross(apart, B.direction), normal) / sine ** 2;
  const atB = dot(cross(apart, A.direction), normal) / sine ** 2;
  const [rA, rB] = [radiusAt(A, atA), radiusAt(B, atB)];
  if (offset > mostOffset * Math.max(rA, rB)) return undefined;
  const cosine = Math.abs(dot(A.direction, B.direction));
  const wallAlongA = Math.sqrt(Math.max(0, rB ** 2 - offset ** 2)) / sine;
  const wallAlongB = Math.sqrt(Math.max(0, rA ** 2 - offset ** 2)) / sine;
  // A slanting branch ends on one side earlier than on its axis.
  if (!reaches(A, atA, wallAlongA + (rA * cosine) / sine + slack * rA)) return undefined;
  if (!reaches(B, atB, wallAlongB + (rB * cosine) / sine + slack * rB)) return undefined;
  if (!isFree(A, atA, B, atB, looks)) return undefined;
  return {
    sides: [
      { passage: a, at: atA, toWall_mm: wallAlongA },
      { passage: b, at: atB, toWall_mm: wallAlongB },
    ],
  };
}

function reaches({ from, to }: Passage, at: number, beyond: number): boolean {
  return at >= from - beyond && at <= to + beyond;
}

const hit = newHit();
/** How far inside a passage that ends before the axis of the other one starts to look, share of its radius. */
const inside = 0.3;

/** Nothing stands between the two axes. */
function isFree(A: Passage, atA: number, B: Passage, atB: number, looks: Looks): boolean {
  const a = pointAt(A, within(A, atA));
  const b = pointAt(B, within(B, atB));
  const way = minus(b, a);
  const length = Math.hypot(...way);
  const radius = Math.min(radiusAt(A, atA), radiusAt(B, atB));
  return length < 1e-6 * radius || axisLook(looks, a, unit(way), radius, length, hit) < 0;
}

function within(passage: Passage, at: number): number {
  const { from, to } = passage;
  const step = Math.min(inside * radiusAt(passage, at), (to - from) / 2);
  return at < from ? from + step : at > to ? to - step : at;
}
