/**
 * Passages: straight runs of ducts with their two ends, cut where something stands across the way, such as a bolt in
 * its hole or the plug of a valve.
 */
import type { Vec3 } from '@coveline/model';
import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { newHit } from '../tree/ray.ts';
import {
  axisLook,
  barrierAhead,
  isFilled,
  isSolid,
  type Looks,
  opensAround,
  ringLook,
  ringRadius,
} from './looks.ts';
import type { Piece, Run } from './runs.ts';
import { along } from './vector.ts';

export interface End {
  /** Where the passage ends along its direction, mm from the origin: for a closed end its deepest point. */
  readonly at: number;
  /** The part that closes it; undefined where it is open. */
  readonly closedBy?: number;
  /** Open all round between the last wall and what closes it, mm; 0 for none. */
  readonly slit_mm: number;
  /** A part that stands in the passage before its end, and where it begins. */
  readonly within?: { readonly part: number; readonly at: number };
}

export interface Passage extends Run {
  readonly from: number;
  readonly to: number;
  readonly low: End;
  readonly high: End;
}

/** A drill point of 90 degrees, the bluntest end that one bores with, is as deep as the radius. */
const drillPoint = 1.05;
/** What faces the axis like this is an end; the wall of a bend stands askew. */
const facing = 0.95;
/** An end with a wider slit than this share of the radius is open. */
const widestSlit = 0.15;
/** A passage is longer than this share of its radius. */
const leastLength = 0.05;
/** Steps into the air or the material behind a surface, share of the radius. */
const hair = 1e-4;
/** Rings that are deeper than the axis by this share of the radius: something stands in the middle. */
const standing = 0.1;
/** Runs between two looks at the signal. */
const watch = 500;

export function passagesOf(
  runs: readonly Run[],
  looks: Looks,
  contact_mm: number,
  control: Control = {},
): Passage[] {
  return runs.flatMap((run, r) => {
    if (r % watch === 0) step(control, 'hollows', 0.4 + (0.2 * r) / runs.length);
    return cutAtBarriers(run, looks, contact_mm);
  });
}

/** The radius at a place; that of the nearest piece in a gap. */
export function radiusAt({ pieces }: Run, s: number): number {
  let best = pieces[0];
  let least = Infinity;
  for (const piece of pieces) {
    const away = Math.max(piece.from - s, s - piece.to, 0);
    if (away < least) {
      least = away;
      best = piece;
    }
  }
  return best.radius;
}

export function pointAt({ origin, direction }: Pick<Run, 'origin' | 'direction'>, s: number): Vec3 {
  return along(origin, direction, s);
}

function cutAtBarriers(run: Run, looks: Looks, contact_mm: number): Passage[] {
  const { direction, pieces } = run;
  const first = pieces[0];
  const last = pieces[pieces.length - 1];
  const found: Passage[] = [];
  let begin = first.from;
  let low: End | undefined;
  let s = first.from + hair * first.radius;
  if (isSolid(looks, pointAt(run, s))) {
    const free = leaveMaterial(run, looks, s, last.to);
    if (isFilled(looks, pointAt(run, s), direction, first.radius)) {
      begin = free.at;
      low = { at: begin, slit_mm: 0, ...(free.part !== undefined && { closedBy: free.part }) };
    } else
      low = endAround(run, looks, begin, last.to, -1, { part: free.part ?? -1, at: free.at }, contact_mm);
    s = free.at + hair * first.radius;
  }
  const close = (to: number, high: End | undefined): void => {
    const radius = radiusAt(run, (begin + to) / 2);
    if (to - begin <= leastLength * radius) return;
    found.push({
      ...run,
      pieces: clipped(pieces, begin, to),
      from: begin,
      to,
      low: low ?? endOf(run, looks, begin, to, -1, contact_mm),
      high: high ?? endOf(run, looks, to, begin, 1, contact_mm),
    });
  };
  while (s < last.to) {
    const radius = radiusAt(run, s);
    const ahead = axisLook(looks, pointAt(run, s), direction, radius, last.to - s, hit);
    if (ahead < 0) break;
    const met = s + ahead;
    const { part } = hit;
    const own = radiusAt(run, met);
    const back = Math.max(begin + hair * own, met - own);
    const barrier = barrierAhead(looks, pointAt(run, back), direction, own, met - back + own);
    const free = leaveMaterial(run, looks, met + hair * own, last.to);
    if (barrier) {
      close(met, { at: met, closedBy: part, slit_mm: 0 });
      begin = free.at;
      low = { at: begin, closedBy: free.part ?? part, slit_mm: 0 };
    }
    s = free.at + hair * own;
    if (!barrier && s >= last.to)
      close(last.to, endAround(run, looks, last.to, begin, 1, { part, at: met }, contact_mm));
  }
  if (s < last.to) close(last.to, undefined);
  return found;
}

const hit = newHit();

/** The first place from `s` on, at most `end`, where the axis is in air, and the part that was left there. */
function leaveMaterial(run: Run, looks: Looks, s: number, end: number): { at: number; part?: number } {
  let at = s;
  let part: number | undefined;
  while (at < end && isSolid(looks, pointAt(run, at))) {
    const radius = radiusAt(run, at);
    const ahead = axisLook(looks, pointAt(run, at), run.direction, radius, Infinity, hit);
    if (ahead < 0) return { at: end };
    at += ahead + hair * radius;
    part = hit.part;
  }
  return part === undefined ? { at } : { at, part };
}

function clipped(pieces: readonly Piece[], from: number, to: number): Piece[] {
  return pieces
    .filter((p) => p.to > from && p.from < to)
    .map((p) => ({ ...p, from: Math.max(p.from, from), to: Math.min(p.to, to) }));
}

/** What is behind the last wall of a run around a thing that stands in its middle, such as a probe. */
function endAround(
  run: Run,
  looks: Looks,
  s: number,
  other: number,
  sense: 1 | -1,
  within: { readonly part: number; readonly at: number },
  contact_mm: number,
): End {
  const radius = radiusAt(run, s);
  const back = Math.min(radius / 2, Math.abs(s - other) / 2);
  const start = pointAt(run, s - sense * back);
  const direction: Vec3 = [sense * run.direction[0], sense * run.direction[1], sense * run.direction[2]];
  const seen = ringLook(
    looks,
    start,
    direction,
    ringRadius * radius,
    back + drillPoint * radius + contact_mm,
  );
  if (!seen) return { at: s, slit_mm: 0 };
  return { at: s + sense * (seen.deepest_mm - back), closedBy: seen.part, slit_mm: 0, within };
}

/** What is behind the last wall of a run. */
function endOf(run: Run, looks: Looks, s: number, other: number, sense: 1 | -1, contact_mm: number): End {
  const radius = radiusAt(run, s);
  const back = Math.min(radius / 2, Math.abs(s - other) / 2);
  const start = pointAt(run, s - sense * back);
  const direction: Vec3 = [sense * run.direction[0], sense * run.direction[1], sense * run.direction[2]];
  const open: End = { at: s, slit_mm: 0 };
  const barrier = barrierAhead(looks, start, direction, radius, back + drillPoint * radius + contact_mm);
  if (!barrier || Math.abs(barrier.facing) < facing) return open;
  const behind = barrier.axis_mm - back;
  let slit_mm = 0;
  if (behind > contact_mm && opensAround(looks, pointAt(run, s + (sense * behind) / 2), direction, radius)) {
    if (behind > widestSlit * radius) return open;
    slit_mm = behind;
  }
  const isAround = barrier.deepest_mm > barrier.axis_mm + standing * radius;
  const deepest = s + sense * ((isAround ? barrier.deepest_mm : barrier.axis_mm) - back);
  return {
    at: deepest,
    closedBy: isAround ? barrier.deepestPart : barrier.part,
    slit_mm,
    ...(isAround && { within: { part: barrier.part, at: s + sense * behind } }),
  };
}
