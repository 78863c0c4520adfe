/** Closed triangle meshes for tests, and models made of them. Millimetres, +Z up, counter-clockwise from the air. */
import type { Model, Part, Placement, Shape } from '@coveline/model';

export type { Placement };

export interface Mesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
}

export type Point = readonly [number, number, number];

export function meshOf(points: readonly Point[], triangles: readonly (readonly number[])[]): Mesh {
  return { positions: Float64Array.from(points.flat()), triangles: Uint32Array.from(triangles.flat()) };
}

/** Faces given as convex polygons of vertex numbers. */
export function meshOfFaces(points: readonly Point[], faces: readonly (readonly number[])[]): Mesh {
  return meshOf(
    points,
    faces.flatMap((face) => face.slice(2).map((_, k) => [face[0], face[k + 1], face[k + 2]])),
  );
}

export const identity: Placement = Float64Array.from([1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1]);

/** First turned about z, then tilted about x, then about y, then moved. Degrees, mm. */
export function placed({
  turn = 0,
  tiltX = 0,
  tiltY = 0,
  move = [0, 0, 0] as Point,
}: {
  turn?: number;
  tiltX?: number;
  tiltY?: number;
  move?: Point;
}): Placement {
  const product = multiply(multiply(about(1, tiltY), about(0, tiltX)), about(2, turn));
  product.set(move, 12);
  return product;
}

/** The rotation `b` first, then `a`. */
export function multiply(a: Placement, b: Placement): Placement {
  const out = new Float64Array(16);
  for (let column = 0; column < 4; column++) {
    for (let row = 0; row < 4; row++) {
      for (let k = 0; k < 4; k++) out[column * 4 + row] += a[k * 4 + row] * b[column * 4 + k];
    }
  }
  return out;
}

export function about(axis: 0 | 1 | 2, degrees: number): Placement {
  const c = Math.cos((degrees * Math.PI) / 180);
  const s = Math.sin((degrees * Math.PI) / 180);
  const m = identity.slice();
  const [j, k] = [(axis + 1) % 3, (axis + 2) % 3];
  m[j * 4 + j] = c;
  m[j * 4 + k] = s;
  m[k * 4 + j] = -s;
  m[k * 4 + k] = c;
  return m;
}

export function transformed({ positions, triangles }: Mesh, m: Placement): Mesh {
  const out = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      out[i + k] =
        m[k] * positions[i] + m[4 + k] * positions[i + 1] + m[8 + k] * positions[i + 2] + m[12 + k];
    }
  }
  return { positions: out, triangles };
}

/** Positive factor about the origin. */
export function scaled({ positions, triangles }: Mesh, factor: number): Mesh {
  return { positions: positions.map((c) => c * factor), triangles };
}

export interface Body {
  readonly id: string;
  readonly mesh: Mesh;
  readonly placement?: Placement;
}

export function modelOf(bodies: readonly Body[]): Model {
  const shapes: Shape[] = bodies.map(({ mesh }, k) => ({ ...mesh, hash: `test-${k}` }));
  const parts: Part[] = bodies.map(({ id, placement }, k) => ({
    id,
    name: id,
    assembly: [],
    shape: k,
    placement: placement ?? identity,
  }));
  return { shapes, parts, unit: 'mm', deviation_mm: 0, notes: [] };
}

/** The same model moved as a whole. */
export function movedModel(model: Model, by: Placement): Model {
  return {
    ...model,
    parts: model.parts.map((part) => ({ ...part, placement: multiply(by, part.placement) })),
  };
}

/** Volume enclosed by a closed mesh, mm3. */
export function meshVolume({ positions, triangles }: Mesh): number {
  let six = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => {
      const v = triangles[t + k] * 3;
      return [positions[v], positions[v + 1], positions[v + 2]];
    });
    six +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}
