/** Rods on which a nut sits: a plain cylinder through a nut of its size is threaded, whatever its name. */
import type { Model, Placement, Vec3 } from '@coveline/model';
import { cross, dot, minus, unit } from '../hollows/vector.ts';
import { weldOf } from '../weld/weld.ts';
import { type Axis, around } from './axis.ts';
import type { LocalHead, LocalThread } from './local.ts';
import { roundsAbout } from './rounds.ts';

/** A nut in its place, in the frame of the model. */
export interface PlacedNut extends Axis {
  readonly part: number;
  readonly from: number;
  readonly to: number;
  /** Least and greatest radius of what it could sit on, mm. */
  readonly radii: readonly [number, number];
  readonly by: LocalThread['by'];
}

/** Drawn hole over drawn rod: nuts are drawn with the nominal or with the core diameter, 0.8 of it for fine detail. */
const holeOverRod = [0.78, 1.06] as const;
/** Nuts that are drawn solid say less: diameter over width across flats of M3 to M64. */
const rodOverFlats = [0.5, 0.68] as const;

export function placedNut(
  part: number,
  placement: Placement,
  head: LocalHead,
  bore?: LocalThread,
): PlacedNut | undefined {
  if (head.kind !== 'nut' && head.kind !== 'domedNut') return undefined;
  const width = head.acrossFlats_mm ?? head.radius_mm * Math.sqrt(3);
  return {
    part,
    origin: moved(placement, head.origin, 1),
    direction: moved(placement, head.direction, 0),
    from: head.from,
    to: head.to,
    radii: bore
      ? [bore.radius_mm / holeOverRod[1], bore.radius_mm / holeOverRod[0]]
      : [(rodOverFlats[0] * width) / 2, (rodOverFlats[1] * width) / 2],
    by: head.by,
  };
}

/** The thread of `part` on which the nut sits, in the frame of its shape; undefined where the nut sits on none of it. */
export function threadUnder(model: Model, part: number, nut: PlacedNut): LocalThread | undefined {
  const { shape, placement } = model.parts[part];
  const axis: Axis = {
    origin: movedBack(placement, nut.origin),
    direction: turnedBack(placement, nut.direction),
  };
  const near = around(weldOf(model.shapes[shape]), axis, 1.2 * nut.radii[1]);
  const stem = roundsAbout(near, nut.radii[1], new Set()).find(
    (r) =>
      !r.hollow &&
      r.radius_mm >= nut.radii[0] &&
      Math.min(r.to, nut.to) - Math.max(r.from, nut.from) > 0.2 * (nut.to - nut.from),
  );
  if (!stem) return undefined;
  return {
    ...axis,
    from: stem.from,
    to: stem.to,
    radius_mm: stem.radius_mm,
    inside: false,
    by: nut.by,
    weak: false,
    caveats: ['It is a plain cylinder; that it is a thread is taken from the nut on it.'],
  };
}

/** Whether a thread that is known already is the same one. */
export function isSameThread(a: LocalThread, b: LocalThread): boolean {
  if (a.inside !== b.inside) return false;
  const turn = cross(a.direction, b.direction);
  const aside = cross(minus(b.origin, a.origin), a.direction);
  return dot(turn, turn) < 1e-3 && Math.hypot(...aside) < 0.2 * a.radius_mm;
}

export function moved(m: Placement, [x, y, z]: Vec3, w: 0 | 1): Vec3 {
  return [
    m[0] * x + m[4] * y + m[8] * z + w * m[12],
    m[1] * x + m[5] * y + m[9] * z + w * m[13],
    m[2] * x + m[6] * y + m[10] * z + w * m[14],
  ];
}

function movedBack(m: Placement, p: Vec3): Vec3 {
  return turnedBackRaw(m, [p[0] - m[12], p[1] - m[13], p[2] - m[14]]);
}

const turnedBack = (m: Placement, d: Vec3): Vec3 => unit(turnedBackRaw(m, d));

const turnedBackRaw = (m: Placement, [x, y, z]: Vec3): Vec3 => [
  m[0] * x + m[1] * y + m[2] * z,
  m[4] * x + m[5] * y + m[6] * z,
  m[8] * x + m[9] * y + m[10] * z,
];
