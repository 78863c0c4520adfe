/** Flat faces of a part that are rectangles, whichever way they lie. */
import { type Model, placedPositions, type Vec3 } from '@coveline/model';
import { cross, dot, length, minus } from './vector.ts';

export interface Rectangle {
  readonly at_mm: Vec3;
  /** Out of the material. */
  readonly normal: Vec3;
  /** Half of the sides: the rectangle is at + a*across + b*along, a and b from -1 to 1. */
  readonly across_mm: Vec3;
  readonly along_mm: Vec3;
  readonly area_mm2: number;
}

/** A face is a rectangle when it fills this share of the smallest one around it. */
const filled = 0.9;
/** Triangles lie in one plane when their normals and distances agree to these steps. */
const normalStep = 1e-3;
const distanceStep_mm = 0.05;

/** Larger than `least_mm2`, largest first. Triangles of one plane are one face, whatever CAD made of them. */
export function rectanglesOf(model: Model, part: number, least_mm2: number): readonly Rectangle[] {
  const xyz = placedPositions(model, part);
  const { triangles } = model.shapes[model.parts[part].shape];
  const planes = new Map<string, { normal: Vec3; area: number; points: Vec3[] }>();
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k): Vec3 => {
      const v = 3 * triangles[t + k];
      return [xyz[v], xyz[v + 1], xyz[v + 2]];
    });
    const n = cross(minus(b, a), minus(c, a));
    const twice = length(n);
    if (twice === 0) continue;
    const normal: Vec3 = [n[0] / twice, n[1] / twice, n[2] / twice];
    const steps = [...normal.map((x) => x / normalStep), dot(normal, a) / distanceStep_mm];
    const key = steps.map((x) => Math.round(x)).join(' ');
    const plane = planes.get(key) ?? { normal, area: 0, points: [] };
    plane.area += twice / 2;
    plane.points.push(a, b, c);
    planes.set(key, plane);
  }
  return [...planes.values()]
    .filter((p) => p.area >= least_mm2)
    .flatMap((p) => rectangleAround(p.normal, p.points, p.area) ?? [])
    .sort((a, b) => b.area_mm2 - a.area_mm2);
}

/** The smallest of the rectangles along the sides of the triangles, if the face fills it. */
function rectangleAround(normal: Vec3, points: readonly Vec3[], area: number): Rectangle | null {
  for (let i = 0; i + 2 < points.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const side = minus(points[i + ((k + 1) % 3)], points[i + k]);
      const l = length(side);
      const u: Vec3 = [side[0] / l, side[1] / l, side[2] / l];
      const v = cross(normal, u);
      const us = rangeAlong(points, u);
      const vs = rangeAlong(points, v);
      if (area < filled * (us.high - us.low) * (vs.high - vs.low)) continue;
      const centre = [0, 1, 2].map(
        (x) =>
          (u[x] * (us.low + us.high)) / 2 +
          (v[x] * (vs.low + vs.high)) / 2 +
          normal[x] * dot(normal, points[0]),
      );
      const half = (d: Vec3, r: { low: number; high: number }): Vec3 => {
        const h = (r.high - r.low) / 2;
        return [d[0] * h, d[1] * h, d[2] * h];
      };
      return {
        at_mm: centre as [number, number, number],
        normal,
        across_mm: half(u, us),
        along_mm: half(v, vs),
        area_mm2: area,
      };
    }
  }
  return null;
}

function rangeAlong(points: readonly Vec3[], d: Vec3): { low: number; high: number } {
  let low = Infinity;
  let high = -Infinity;
  for (const point of points) {
    const s = dot(point, d);
    if (s < low) low = s;
    if (s > high) high = s;
  }
  return { low, high };
}
