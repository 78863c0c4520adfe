/**
 * Open members: tubes and profiles whose hollow is joined with the outside. From the walls inside, the largest ball is
 * put between them and walked to both ends; where both are closed, one looks for a hole in the wall.
 */
import { transformPoint, type Vec3 } from '@coveline/model';
import type { BlindChannel, ClosedHollow, Control, OpenMember } from '../result.ts';
import { step } from '../stopped.ts';
import { anyHit, firstHit, newHit } from '../tree/ray.ts';
import { type Ball, ballAt, widened } from './ball.ts';
import { circle } from './drawing.ts';
import type { Found } from './found.ts';
import { type InnerWalls, innerWallsOf } from './inner-walls.ts';
import type { Looks } from './looks.ts';
import { type MemberShape, memberShape } from './member-shape.ts';
import { along, dot, minus } from './vector.ts';
import { type Walk, walk } from './walk.ts';
import { type WallPoint, wayOut } from './way-out.ts';

/** Less inner wall is a sleeve. */
const leastInner_cm2 = 20;
/** Of the length, from the near end: where the walks begin. */
const starts = [0.5, 0.25] as const;
/** Points on inner walls near a start that are tried for the widest place. */
const tries = 12;
/** Of the width: beyond the end by this much, a tube that still has walls around is another one. */
const beyondEnd = 0.75;
/** Of the width: what is this far outside its inner walls has left the member. */
const roomAround = 0.25;

/** `closed` and `blind`: what is told already of these members. */
export function openMembers(
  looks: Looks,
  closed: readonly Omit<ClosedHollow, 'id'>[],
  blind: readonly Omit<BlindChannel, 'id'>[],
  control: Control = {},
): Found<OpenMember>[] {
  const { model } = looks;
  const shapes = model.shapes.map(memberShape);
  const inner = new Map<number, InnerWalls>();
  const found: Found<OpenMember>[] = [];
  for (let p = 0; p < model.parts.length; p++) {
    const part = model.parts[p];
    const member = shapes[part.shape];
    if (!member || isTold(part.id, member, closed, blind)) continue;
    step(control, 'hollows', 0.7 + (0.3 * p) / model.parts.length);
    const walls = inner.get(part.shape) ?? innerWallsOf(looks, p, leastInner_cm2);
    inner.set(part.shape, walls);
    if (walls.area_cm2 < leastInner_cm2) continue;
    const open = openMember(looks, p, member, walls, control);
    if (open) found.push(open);
  }
  return found;
}

/** A hollow in it is closed, or a bore as long as half of it is a blind channel. */
function isTold(
  id: string,
  { from, to }: MemberShape,
  closed: readonly Omit<ClosedHollow, 'id'>[],
  blind: readonly Omit<BlindChannel, 'id'>[],
): boolean {
  return (
    closed.some(
      ({ parts, bounds_mm: [low, high] }) =>
        parts.includes(id) && Math.hypot(...minus(high, low)) > (to - from) / 2,
    ) || blind.some(({ parts, depth_mm }) => parts.includes(id) && depth_mm > (to - from) / 2)
  );
}

function openMember(
  looks: Looks,
  p: number,
  { axis, from, to, width }: MemberShape,
  walls: InnerWalls,
  control: Control,
): Found<OpenMember> | undefined {
  const { id, placement } = looks.model.parts[p];
  const turned = (d: Vec3): Vec3 => minus(transformPoint(placement, d), transformPoint(placement, [0, 0, 0]));
  const direction = turned(axis);
  const zero = dot(transformPoint(placement, [0, 0, 0]), direction);
  const placeOf = (at: Vec3): number => dot(at, direction) - zero;
  const inside = walls.points.map(({ at, normal }) => ({
    at: transformPoint(placement, at),
    normal: turned(normal),
  }));
  const bounds_mm = boundsOf(inside.map(({ at }) => at));
  const walks = ([-1, 1] as const).flatMap((sense) => {
    const start = startOf(looks, inside, placeOf, sense > 0 ? [to, from] : [from, to], direction, width);
    if (!start) return [];
    const d: Vec3 = [sense * direction[0], sense * direction[1], sense * direction[2]];
    const margin = beyondEnd * width;
    return [walk(looks, start, d, (at) => placeOf(at) > to + margin || placeOf(at) < from - margin)];
  });
  if (walks.length === 0) return undefined;
  const ends = walks.filter(({ end }) => end === 'open');
  if (ends.length === 0 && walks.some(({ end }) => end === 'continued')) return undefined;
  const widest = ends.reduce<Walk | undefined>(
    (a, b) => (a && a.neck.radius >= b.neck.radius ? a : b),
    undefined,
  );
  const hole = widest
    ? undefined
    : wayOut(
        looks,
        walks.flatMap(({ balls }) => balls),
        inside,
        grown(bounds_mm, roomAround * width),
      );
  const neck = widest?.neck ?? hole?.neck;
  // A ball stops short of an open end, which is that of the part.
  const stops = walks.map(({ end, last }) => {
    const s = placeOf(last);
    return end === 'closed' ? s : s > (from + to) / 2 ? to : from;
  });
  const length_mm = stops.length > 1 ? Math.abs(stops[1] - stops[0]) : to - from;
  const at_mm = widest?.last ?? hole?.neck.at ?? walks[0].last;
  const caveats = [
    ...(neck
      ? []
      : [
          'It is not sealed, yet no opening was found that a straight look from inside passes: look for seams.',
        ]),
    ...(walks.some(({ end }) => end === 'continued') ? ['At one end another tube leads on.'] : []),
  ];
  const balls = walks.flatMap((w) => w.balls);
  const triangles = wallsAround(looks, p, balls, placeOf, control);
  return {
    place: {
      parts: [id],
      at_mm,
      bounds_mm,
      length_mm,
      mouth_mm: neck ? 2 * neck.radius : 0,
      through: widest ? 'end' : hole ? 'hole' : 'seam',
      openEnds: ends.length,
      inner_cm2: walls.area_cm2,
      ...(caveats.length > 0 && { caveats }),
    },
    triangles,
    drawing: {
      lines: [
        ...walks.map(({ balls }) => Float32Array.from(balls.flatMap(({ at }) => at))),
        ...ends.map((e) => circle(e.neck.at, e.direction, e.neck.radius)),
        ...(hole ? [circle(hole.neck.at, hole.direction, hole.neck.radius)] : []),
      ],
    },
  };
}

const hit = newHit();

/** The widest ball between inner walls near a start, `[near end, far end]` along the axis. */
function startOf(
  looks: Looks,
  inside: readonly WallPoint[],
  place: (at: Vec3) => number,
  [near, far]: readonly [number, number],
  direction: Vec3,
  width: number,
): Ball | undefined {
  for (const share of starts) {
    const s = near + share * (far - near);
    let best: Ball | undefined;
    const closest = [...inside]
      .sort((a, b) => Math.abs(place(a.at) - s) - Math.abs(place(b.at) - s))
      .slice(0, tries);
    for (const { at, normal } of closest) {
      if (!firstHit(looks.material.tree, ...at, ...normal, width, hit)) continue;
      const ball = ballAt(looks, along(at, normal, hit.t / 2), width);
      if (!ball || ball.radius === 0) continue;
      const wide = widened(looks, ball, direction, width);
      if (!best || wide.radius > best.radius) best = wide;
    }
    if (best) return best;
  }
  return undefined;
}

/** Triangles of a part whose middle is seen from the nearest ball of the walks, in model order. */
function wallsAround(
  { model, material, start }: Looks,
  p: number,
  balls: readonly Ball[],
  place: (at: Vec3) => number,
  control: Control,
): number[] {
  const { shape, placement } = model.parts[p];
  const { positions: xyz, triangles } = model.shapes[shape];
  const row = balls.map(({ at }) => ({ at, s: place(at) })).sort((a, b) => a.s - b.s);
  const found: number[] = [];
  for (let t = 0; t < triangles.length / 3; t++) {
    if (t % watch === 0) step(control, 'hollows', 0.9);
    const at = transformPoint(placement, middleOf(xyz, triangles, t));
    const way = minus(nearestInRow(row, place(at)), at);
    // From just off the triangle, for it stands in its own way.
    if (!anyHit(material.tree, ...along(at, way, off), ...way, 1 - off)) found.push(start[p] + t);
  }
  return found;
}

/** Share of the way to the ball at which the look begins. */
const off = 1e-4;
/** Triangles between two looks at the signal. */
const watch = 20_000;

function middleOf(xyz: Float64Array, triangles: Uint32Array, t: number): Vec3 {
  const [a, b, c] = [0, 1, 2].map((k) => 3 * triangles[3 * t + k]);
  return [
    (xyz[a] + xyz[b] + xyz[c]) / 3,
    (xyz[a + 1] + xyz[b + 1] + xyz[c + 1]) / 3,
    (xyz[a + 2] + xyz[b + 2] + xyz[c + 2]) / 3,
  ];
}

/** By bisection in a row that ascends. */
function nearestInRow(row: readonly { readonly at: Vec3; readonly s: number }[], s: number): Vec3 {
  let low = 0;
  let high = row.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (row[middle].s < s) low = middle;
    else high = middle;
  }
  return Math.abs(row[low].s - s) <= Math.abs(row[high].s - s) ? row[low].at : row[high].at;
}

function boundsOf(points: readonly Vec3[]): [Vec3, Vec3] {
  const bound = (pick: (...values: number[]) => number): Vec3 =>
    [0, 1, 2].map((k) => points.reduce((m, at) => pick(m, at[k]), points[0][k])) as unknown as Vec3;
  return [bound(Math.min), bound(Math.max)];
}

function grown([low, high]: readonly [Vec3, Vec3], by: number): [Vec3, Vec3] {
  return [
    [low[0] - by, low[1] - by, low[2] - by],
    [high[0] + by, high[1] + by, high[2] + by],
  ];
}
