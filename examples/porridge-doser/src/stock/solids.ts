/** The few ways in which everything here is made: prisms, turned parts and bent sheets. Millimetres. */
import { type Drawing, draw, makeBox, makeCylinder, type Shape3D } from 'replicad';
import type { Point3 } from '../tree.ts';

export type Point2 = readonly [number, number];

export function box(low: Point3, high: Point3): Shape3D {
  return makeBox([...low], [...high]);
}

/** Upright on z = 0 unless a foot and a direction are given. */
export function rod(
  diameter: number,
  length: number,
  foot: Point3 = [0, 0, 0],
  direction: Point3 = [0, 0, 1],
): Shape3D {
  return makeCylinder(diameter / 2, length, [...foot], [...direction]);
}

/** Open at both ends. */
export function tube(
  outside: number,
  inside: number,
  length: number,
  foot: Point3 = [0, 0, 0],
  direction: Point3 = [0, 0, 1],
): Shape3D {
  return rod(outside, length, foot, direction).cut(rod(inside, length, foot, direction));
}

/** Turned about z from a closed outline of (radius, height). */
export function turnedPart(outline: readonly Point2[]): Shape3D {
  return polygon(outline).sketchOnPlane('XZ').revolve([0, 0, 1]) as Shape3D;
}

/** Turned about z from an outline with arcs. */
export function turnedDrawing(outline: Drawing): Shape3D {
  return outline.sketchOnPlane('XZ').revolve([0, 0, 1]) as Shape3D;
}

/** A closed outline in (y, z), drawn out along x from `from` to `to`. */
export function alongX(outline: Drawing, from: number, to: number): Shape3D {
  return outline.sketchOnPlane('YZ', from).extrude(to - from) as Shape3D;
}

/** A closed outline in (x, z), drawn out along y from `from` to `to`. */
export function alongY(outline: Drawing, from: number, to: number): Shape3D {
  // The normal of this plane points to -y.
  return outline.sketchOnPlane('XZ', -from).extrude(from - to) as Shape3D;
}

/** A closed outline in (x, y), drawn up from `from` to `to`. */
export function alongZ(outline: Drawing, from: number, to: number): Shape3D {
  return outline.sketchOnPlane('XY', from).extrude(to - from) as Shape3D;
}

export function polygon(points: readonly Point2[]): Drawing {
  let pen = draw([...points[0]]);
  for (const point of points.slice(1)) pen = pen.lineTo([...point]);
  return pen.close();
}

/**
 * Outline of a sheet bent along a line of (u, v): the line runs along the sheet's right-hand face, the thickness
 * lies to its left, and every bend has the given radius on its inside.
 */
export function bentSheet(line: readonly Point2[], thickness: number, insideRadius: number): Drawing {
  const left = line.map((_, i) => offsetPoint(line, i, thickness));
  const last = line.length - 1;
  let pen = draw([...line[0]]);
  for (let i = 1; i <= last; i++) {
    pen = pen.lineTo([...line[i]]);
    if (i < last) pen = pen.customCorner(turnsLeft(line, i) ? insideRadius + thickness : insideRadius);
  }
  for (let i = last; i >= 0; i--) {
    pen = pen.lineTo([...left[i]]);
    if (i > 0 && i < last)
      pen = pen.customCorner(turnsLeft(line, i) ? insideRadius : insideRadius + thickness);
  }
  return pen.close();
}

function direction(a: Point2, b: Point2): Point2 {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}

function turnsLeft(line: readonly Point2[], i: number): boolean {
  const a = direction(line[i - 1], line[i]);
  const b = direction(line[i], line[i + 1]);
  return a[0] * b[1] - a[1] * b[0] > 0;
}

/** The i-th corner of the line moved to the left by `distance`, along the mitre. */
function offsetPoint(line: readonly Point2[], i: number, distance: number): Point2 {
  const before = direction(line[Math.max(0, i - 1)], line[Math.max(1, i)]);
  const after = i + 1 < line.length ? direction(line[i], line[i + 1]) : before;
  const normal: Point2 = [-(before[1] + after[1]), before[0] + after[0]];
  const scale = (2 * distance) / (normal[0] ** 2 + normal[1] ** 2);
  return [line[i][0] + normal[0] * scale, line[i][1] + normal[1] * scale];
}
