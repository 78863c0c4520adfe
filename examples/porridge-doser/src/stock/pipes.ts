/** Round pipes with bends, and the clamp unions that join them. */
import { drawCircle, Plane, type Shape3D, type Sketch } from 'replicad';
import type { Point3 } from '../tree.ts';
import { rod, turnedPart } from './solids.ts';

export interface PipeSize {
  readonly outside: number;
  readonly inside: number;
  readonly bendRadius: number;
}

/** ISO 2037 pipe 29 x 1.5 with a bend of about 1.3 diameters; from memory. */
export const productPipe: PipeSize = { outside: 29, inside: 26, bendRadius: 38 };
export const cleaningPipe: PipeSize = { outside: 18, inside: 15, bendRadius: 30 };

/** Clamp ferrule: DN 25, seal face 50.5; from memory. */
export const ferrule = { diameter: 50.5, length: 8, gasket: 2 } as const;

/** A round bar along corner points, bent with a radius in between. Ends are square to it. */
export function bentRod(points: readonly Point3[], diameter: number, bendRadius: number): Shape3D {
  const pieces: Shape3D[] = [];
  const corners = points.map((_, i) => cornerOf(points, i, bendRadius));
  for (let i = 1; i < points.length; i++) {
    const from = corners[i - 1]?.after ?? points[i - 1];
    const to = corners[i]?.before ?? points[i];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
    if (length > 1e-6) pieces.push(rod(diameter, length, from, unit(from, to)));
    const corner = corners[i];
    if (corner) pieces.push(elbow(corner, diameter));
  }
  return pieces.slice(1).reduce((sum, piece) => sum.fuse(piece), pieces[0]);
}

export function bentPipe(points: readonly Point3[], size: PipeSize): Shape3D {
  return bentRod(points, size.outside, size.bendRadius).cut(bentRod(points, size.inside, size.bendRadius));
}

/** Ring around a pipe end; `face` is the middle of its seal face, `out` points away from the pipe. */
export function ferruleRing(face: Point3, out: Point3, inside: number): Shape3D {
  const foot: Point3 = [
    face[0] - out[0] * ferrule.length,
    face[1] - out[1] * ferrule.length,
    face[2] - out[2] * ferrule.length,
  ];
  return rod(ferrule.diameter, ferrule.length, foot, out).cut(rod(inside, ferrule.length, foot, out));
}

/** Flush with the bore; stands on z = 0, axis z. */
export function gasket(inside: number): Shape3D {
  return turnedPart([
    [inside / 2, 0],
    [ferrule.diameter / 2, 0],
    [ferrule.diameter / 2, ferrule.gasket],
    [inside / 2, ferrule.gasket],
  ]);
}

/** A band over both ferrules, middle of the gasket at the origin, axis z. */
export function clampBand(): Shape3D {
  const half = ferrule.length * 0.75;
  const inside = ferrule.diameter / 2;
  return turnedPart([
    [inside, -half],
    [inside + 6, -half],
    [inside + 6, half],
    [inside, half],
  ]);
}

interface Corner {
  readonly before: Point3;
  readonly after: Point3;
  readonly centre: Point3;
  readonly axis: Point3;
  readonly angle_deg: number;
}

function cornerOf(points: readonly Point3[], i: number, radius: number): Corner | null {
  if (i === 0 || i === points.length - 1) return null;
  const a = unit(points[i - 1], points[i]);
  const b = unit(points[i], points[i + 1]);
  const turn = Math.acos(dot(a, b));
  if (turn < 1e-6) return null;
  const back = radius * Math.tan(turn / 2);
  const before = along(points[i], a, -back);
  const axis = scale(cross(a, b), 1 / Math.sin(turn));
  return {
    before,
    after: along(points[i], b, back),
    centre: along(before, cross(axis, a), radius),
    axis,
    angle_deg: (turn * 180) / Math.PI,
  };
}

function elbow({ before, centre, axis, angle_deg }: Corner, diameter: number): Shape3D {
  const radial = unit(centre, before);
  const plane = new Plane([...before], [...radial], [...cross(axis, radial)]);
  const disc = drawCircle(diameter / 2).sketchOnPlane(plane) as Sketch;
  return disc.revolve([...axis], { origin: [...centre], angle: angle_deg });
}

function along(p: Point3, d: Point3, by: number): Point3 {
  return [p[0] + d[0] * by, p[1] + d[1] * by, p[2] + d[2] * by];
}

function unit(from: Point3, to: Point3): Point3 {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length, (to[2] - from[2]) / length];
}

function dot(a: Point3, b: Point3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Point3, b: Point3): Point3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function scale(a: Point3, by: number): Point3 {
  return [a[0] * by, a[1] * by, a[2] * by];
}
