/** Points that turn about an axis, and what they strike. */
import type { Vec3 } from '@coveline/model';
import { cross, dot, minus, plus, unit } from '../sky/vector.ts';
import { type Material, partAt } from '../tree/inside.ts';
import { firstAlong, newHit, newRay } from '../tree/ray.ts';

export interface Axis {
  readonly at: Vec3;
  /** Unit vector; turns are right-handed about it. */
  readonly along: Vec3;
}

/** A point's way: middle + cos a * out + sin a * on. */
export interface Way {
  readonly middle: Vec3;
  readonly out: Vec3;
  readonly on: Vec3;
  readonly radius: number;
}

/** `sense`: 1 turns right-handed about the axis, -1 the other way. */
export function wayOf(axis: Axis, p: Vec3, sense: number): Way {
  const from = minus(p, axis.at);
  const middle = plus(axis.at, axis.along, dot(from, axis.along));
  const out = minus(p, middle);
  const [x, y, z] = cross(axis.along, out);
  return { middle, out, on: [x * sense, y * sense, z * sense], radius: Math.hypot(...out) };
}

export function pointAt({ middle, out, on }: Way, angle: number): Vec3 {
  return plus(plus(middle, out, Math.cos(angle)), on, Math.sin(angle));
}

/** Angles at which a way meets the plane n p = d, the lower one first; null where it does not. */
export function meetsPlane({ middle, out, on }: Way, n: Vec3, d: number): readonly [number, number] | null {
  const c = dot(n, out);
  const s = dot(n, on);
  const size = Math.hypot(c, s);
  const rest = d - dot(n, middle);
  if (size === 0 || Math.abs(rest) > size) return null;
  const middleAngle = Math.atan2(s, c);
  const half = Math.acos(rest / size);
  return [middleAngle - half, middleAngle + half];
}

export interface Strike {
  /** Radians. */
  readonly angle: number;
  readonly part: number;
}

/** What lies this near to the axis is the hinge itself: pin, knuckles, a leaf that is drawn without its bore. */
const hingeRadius_mm = 15;
/** Chords that a way is cut into: at 1 m they leave the arc by 0.3 mm, which is then made good on the plane that was hit. */
const chord = (3 * Math.PI) / 180;
/** Contacts flatter than this are strikes only when they lead into the material: sine of 20 degrees. */
const grazing = Math.sin((20 * Math.PI) / 180);
const sliding = 1e-4;
/** Facets of a hinge that turn in each other overlap by less than this. */
const play_mm = 0.5;
/** A surface that the point starts on counts. */
const slack_mm = 1e-3;

const ray = newRay();
const hit = newHit();

/**
 * The first part whose material the point enters on its way from one angle to another; null when it enters none.
 * What it lies in at the start does not count. `ignore`: parts that it passes.
 */
export function firstStrike(
  material: Material,
  way: Way,
  from: number,
  to: number,
  ignore: (part: number) => boolean,
): Strike | null {
  if (way.radius <= hingeRadius_mm) return null;
  for (let a = from; a < to; a += chord) {
    const b = Math.min(to, a + chord);
    const p = pointAt(way, a);
    const d = minus(pointAt(way, b), p);
    const length = Math.hypot(...d);
    [ray.ox, ray.oy, ray.oz] = p;
    [ray.dx, ray.dy, ray.dz] = d;
    ray.crossing = -1;
    ray.tMin = -slack_mm / length;
    ray.tMax = 1;
    while (firstAlong(material.tree, ray, hit)) {
      const angle = Math.max(0, exactAngle(material, way, a + hit.t * (b - a)));
      if (!ignore(hit.part) && isStrike(material, way, angle, d, length)) {
        return { angle, part: hit.part };
      }
      ray.tMin = hit.t + 1e-7;
    }
  }
  return null;
}

/** Where the arc itself meets the plane of the triangle that its chord has hit. */
function exactAngle({ tree }: Material, way: Way, near: number): number {
  const n = normalOf(tree.corners, hit.slot * 9);
  const c = hit.slot * 9;
  const a: Vec3 = [tree.corners[c], tree.corners[c + 1], tree.corners[c + 2]];
  const angles = meetsPlane(way, n, dot(n, a));
  if (!angles) return near;
  const turn = 2 * Math.PI;
  const best = angles
    .map((x) => x - turn * Math.round((x - near) / turn))
    .reduce((x, y) => (Math.abs(y - near) < Math.abs(x - near) ? y : x));
  return Math.abs(best - near) < chord / 2 ? best : near;
}

function isStrike(material: Material, way: Way, angle: number, d: Vec3, length: number): boolean {
  const { part, slot } = hit;
  const n = normalOf(material.tree.corners, slot * 9);
  const steepness = Math.abs(dot(n, d)) / length;
  if (steepness >= grazing) return true;
  // It slides along the surface.
  if (steepness < sliding) return false;
  // Go on as far as would lead that deep below a flat surface, and look back along the normal.
  const on = (1.2 * play_mm) / Math.max(steepness, 0.02) / way.radius;
  const p = pointAt(way, angle + on);
  return wayOut(material, part, p, n) >= play_mm && partAt(material, ...p) >= 0;
}

const out = newRay();
const left = newHit();

/** Distance along a unit vector to where a part is left first, mm; infinite when it is not. */
function wayOut({ tree }: Material, part: number, p: Vec3, direction: Vec3): number {
  [out.ox, out.oy, out.oz] = p;
  [out.dx, out.dy, out.dz] = direction;
  out.crossing = 1;
  out.tMin = 0;
  while (firstAlong(tree, out, left)) {
    if (left.part === part) return left.t;
    out.tMin = left.t + 1e-7;
  }
  return Infinity;
}

function normalOf(c: Float64Array, i: number): Vec3 {
  const n = cross(
    [c[i + 3] - c[i], c[i + 4] - c[i + 1], c[i + 5] - c[i + 2]],
    [c[i + 6] - c[i], c[i + 7] - c[i + 1], c[i + 8] - c[i + 2]],
  );
  const length = Math.hypot(...n) || 1;
  return [n[0] / length, n[1] / length, n[2] / length];
}

/** A door that lies in another part from the start strikes it when this turn leads deeper by that much, mm. */
const nudge_mm = 1;
const deeper_mm = 0.3;

/** A part that holds the point from the start, and into which it is turned deeper; null for none. */
export function pressedInto(material: Material, way: Way, ignore: (part: number) => boolean): Strike | null {
  if (way.radius <= hingeRadius_mm) return null;
  const p = pointAt(way, 0);
  const part = partAt(material, ...p);
  if (part < 0 || ignore(part)) return null;
  const q = pointAt(way, nudge_mm / way.radius);
  const d = unit(minus(q, p));
  const back: Vec3 = [-d[0], -d[1], -d[2]];
  const depth = (at: Vec3) => Math.min(wayOut(material, part, at, d), wayOut(material, part, at, back));
  const isDeeper = partAt(material, ...q) === part && depth(q) > depth(p) + deeper_mm;
  return isDeeper ? { angle: 0, part } : null;
}
