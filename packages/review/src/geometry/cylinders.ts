/** The round faces of a part, from CAD faces: bores and rods with their axes. */
import { type Model, transformPoint, type Vec3 } from '@coveline/model';
import { cross, dot, length, minus, plus } from './vector.ts';

/** A straight cylinder of one part, in the frame of the model; halves of one cylinder are one. */
export interface Cylinder {
  readonly origin: Vec3;
  /** Unit vector. */
  readonly direction: Vec3;
  readonly radius: number;
  /** The air is inside: a bore. */
  readonly hollow: boolean;
  /** Ends along the axis from the origin, mm. */
  readonly from: number;
  readonly to: number;
  /** How much of the whole round there is: 1 for a bore, 0.25 for the fillet of an edge. */
  readonly round: number;
}

/** Axes closer than this are one axis, mm. */
const sameAxis_mm = 0.05;

/** Empty for a part without CAD faces. */
export function cylindersOf(model: Model, part: number): readonly Cylinder[] {
  const { shape, placement } = model.parts[part];
  const { positions, triangles, cad } = model.shapes[shape];
  if (!cad) return [];
  type Growing = { -readonly [K in keyof Cylinder]: Cylinder[K] };
  const found: Growing[] = [];
  const ofFace = cad.faces.map((face) => {
    if (face.kind !== 'cylinder' || !face.axis || face.radius_mm === undefined) return null;
    const { origin, direction } = face.axis;
    const hollow = face.hollow ?? false;
    const known = found.find(
      (c) =>
        c.hollow === hollow &&
        Math.abs(c.radius - face.radius_mm!) < 1e-3 &&
        onLine(c, origin, direction, sameAxis_mm),
    );
    if (known) return known;
    const fresh = {
      origin,
      direction,
      radius: face.radius_mm,
      hollow,
      from: Infinity,
      to: -Infinity,
      round: 0,
    };
    found.push(fresh);
    return fresh;
  });
  for (let i = 0; i < triangles.length; i++) {
    const cylinder = ofFace[cad.faceOfTriangle[Math.floor(i / 3)]];
    if (!cylinder) continue;
    const v = 3 * triangles[i];
    const point: Vec3 = [positions[v], positions[v + 1], positions[v + 2]];
    const s = dot(minus(point, cylinder.origin), cylinder.direction);
    if (s < cylinder.from) cylinder.from = s;
    if (s > cylinder.to) cylinder.to = s;
    if (i % 3 === 0) cylinder.round += areaOf(positions, triangles, i);
  }
  return found
    .filter((c) => c.to > c.from)
    .map((c) => {
      const origin = transformPoint(placement, c.origin);
      const direction = minus(transformPoint(placement, plus(c.origin, c.direction, 1)), origin);
      return { ...c, origin, direction, round: c.round / (2 * Math.PI * c.radius * (c.to - c.from)) };
    });
}

function areaOf(positions: Float64Array, triangles: Uint32Array, at: number): number {
  const [a, b, c] = [0, 1, 2].map((k): Vec3 => {
    const v = 3 * triangles[at + k];
    return [positions[v], positions[v + 1], positions[v + 2]];
  });
  return length(cross(minus(b, a), minus(c, a))) / 2;
}

/** Whether a line with a unit direction is that of the cylinder's axis, within a distance. */
export function onLine(
  axis: { readonly origin: Vec3; readonly direction: Vec3 },
  origin: Vec3,
  direction: Vec3,
  within_mm: number,
): boolean {
  return (
    Math.abs(dot(axis.direction, direction)) > 1 - 1e-6 &&
    length(cross(minus(origin, axis.origin), axis.direction)) < within_mm
  );
}

/** Where an end of the cylinder lies on its axis. */
export function endOf({ origin, direction, from, to }: Cylinder, which: 'from' | 'to'): Vec3 {
  return plus(origin, direction, which === 'from' ? from : to);
}
