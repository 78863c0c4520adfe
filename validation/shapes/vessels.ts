import { type Mesh, meshOf, type Point } from './mesh.ts';
import { arc, revolve } from './revolve.ts';

/** Spherical dish: half a hollow sphere about the origin, rim in the plane z = 0. */
export function dish(radius: number, wall: number, segments: number): Mesh {
  const steps = segments / 4;
  return revolve(
    [...arc([0, 0], radius + wall, -90, 0, steps), ...arc([0, 0], radius, 0, -90, steps)],
    segments,
  );
}

/** Open cylindrical vessel: inside from z = 0, radius and depth of the inside. */
export function cup(radius: number, depth: number, wall: number, segments: number): Mesh {
  return revolve(
    [
      [0, -wall],
      [radius + wall, -wall],
      [radius + wall, depth],
      [radius, depth],
      [radius, 0],
      [0, 0],
    ],
    segments,
  );
}

/** Round flask about the origin with a straight neck; inside radii, and height of the mouth over the centre. */
export function flask(radius: number, neck: number, mouth: number, wall: number, segments: number): Mesh {
  const steps = segments / 4;
  const inside = (Math.acos(neck / radius) * 180) / Math.PI;
  const outside = (Math.acos((neck + wall) / (radius + wall)) * 180) / Math.PI;
  return revolve(
    [
      ...arc([0, 0], radius + wall, -90, outside, steps),
      [neck + wall, mouth],
      [neck, mouth],
      ...arc([0, 0], radius, inside, -90, steps),
    ],
    segments,
  );
}

/** Flat ring about z on z = 0. */
export function ring(inside: number, outside: number, height: number, segments: number): Mesh {
  return revolve(
    [
      [inside, 0],
      [outside, 0],
      [outside, height],
      [inside, height],
    ],
    segments,
  );
}

/**
 * U of pipe in the plane y = 0: a half circle of radius `bend` below z = 0 and two straight legs up from it, at
 * x = -bend to height `left` and x = bend to height `right`; both ends open.
 */
export function uPipe(
  bore: number,
  wall: number,
  bend: number,
  left: number,
  right: number,
  segments: number,
): Mesh {
  const stations: { x: number; z: number; nx: number; nz: number }[] = [{ x: -bend, z: left, nx: -1, nz: 0 }];
  for (let k = 0; k <= segments; k++) {
    const a = Math.PI + (Math.PI * k) / segments;
    const nx = k === segments ? 1 : Math.cos(a);
    const nz = k === 0 || k === segments ? 0 : Math.sin(a);
    stations.push({ x: bend * nx, z: bend * nz, nx, nz });
  }
  stations.push({ x: bend, z: right, nx: 1, nz: 0 });
  const points: Point[] = [];
  const triangles: number[][] = [];
  const tube = (radius: number): number[][] =>
    stations.map(({ x, z, nx, nz }) =>
      Array.from({ length: segments }, (_, s) => {
        const a = (2 * Math.PI * s) / segments;
        const out = radius * Math.cos(a);
        points.push([x + out * nx, radius * Math.sin(a), z + out * nz]);
        return points.length - 1;
      }),
    );
  const quad = (a: number, b: number, c: number, d: number): void => {
    triangles.push([a, b, c], [a, c, d]);
  };
  const outer = tube(bore / 2 + wall);
  const inner = tube(bore / 2);
  const last = stations.length - 1;
  for (let s = 0; s < segments; s++) {
    const t = (s + 1) % segments;
    for (let k = 0; k < last; k++) {
      quad(outer[k][s], outer[k][t], outer[k + 1][t], outer[k + 1][s]);
      quad(inner[k][s], inner[k + 1][s], inner[k + 1][t], inner[k][t]);
    }
    quad(outer[0][s], inner[0][s], inner[0][t], outer[0][t]);
    quad(outer[last][s], outer[last][t], inner[last][t], inner[last][s]);
  }
  return meshOf(points, triangles);
}
