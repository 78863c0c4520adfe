/** Solids about z as triangles, from the radius of their outside and of their hole at every angle and height. */
import { type Mesh, meshOf, type Point } from '../../shapes/mesh.ts';

type Radius = (angle: number, z: number) => number;

export function ringSolid(
  outer: Radius,
  inner: Radius | undefined,
  length: number,
  levels: number,
  segments: number,
): Mesh {
  const points: Point[] = [];
  const triangles: number[][] = [];
  const wall = (radius: Radius) => {
    const first = points.length;
    for (let k = 0; k <= levels; k++) {
      for (let s = 0; s < segments; s++) {
        const [angle, z] = [(2 * Math.PI * s) / segments, (length * k) / levels];
        const r = radius(angle, z);
        points.push([r * Math.cos(angle), r * Math.sin(angle), z]);
      }
    }
    return (k: number, s: number) => first + k * segments + (s % segments);
  };
  const skin = (at: (k: number, s: number) => number, outwards: boolean) => {
    for (let k = 0; k < levels; k++) {
      for (let s = 0; s < segments; s++) {
        const [a, b, c, d] = [at(k, s), at(k, s + 1), at(k + 1, s + 1), at(k + 1, s)];
        triangles.push(
          ...(outwards
            ? [
                [a, b, c],
                [a, c, d],
              ]
            : [
                [a, c, b],
                [a, d, c],
              ]),
        );
      }
    }
  };
  const out = wall(outer);
  skin(out, true);
  const hole = inner && wall(inner);
  if (hole) skin(hole, false);
  for (const top of [false, true]) {
    const k = top ? levels : 0;
    const middle = points.length;
    if (!hole) points.push([0, 0, top ? length : 0]);
    for (let s = 0; s < segments; s++) {
      const faces = hole
        ? [
            [out(k, s), out(k, s + 1), hole(k, s + 1)],
            [out(k, s), hole(k, s + 1), hole(k, s)],
          ]
        : [[middle, out(k, s), out(k, s + 1)]];
      triangles.push(...faces.map(([a, b, c]) => (top ? [a, b, c] : [a, c, b])));
    }
  }
  return meshOf(points, triangles);
}

/**
 * Radius of a thread with straight flanks: the outer radius on the crest, `depth` less in the root; one pitch a turn,
 * right-handed. `turns` 0 makes rings instead of a helix.
 */
export const threadRadius =
  (radius: number, pitch: number, depth: number, turns = 1): Radius =>
  (angle, z) => {
    const phase = z / pitch - (turns * angle) / (2 * Math.PI);
    return radius - depth * Math.abs(2 * (phase - Math.floor(phase)) - 1);
  };

/** Radius of a hexagon with the given width across flats. */
export const hexagonRadius =
  (flats: number): Radius =>
  (angle) => {
    const off = angle - (Math.PI / 3) * Math.round(angle / (Math.PI / 3));
    return flats / 2 / Math.cos(off);
  };
