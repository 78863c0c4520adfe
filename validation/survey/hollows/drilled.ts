/**
 * Bodies with round bores, as a CAD model tells of them (cylinder faces with axis and radius) or as triangles only.
 * Solids by the general-purpose kernel manifold-3d; faces told by which cylinder the corners of a triangle lie on.
 */
import type { CadFace, Model, Shape } from '@coveline/model';
import { cylinder } from '../../shapes/cylinder.ts';
import { identity, type Mesh, type Placement, type Point, placed, transformed } from '../../shapes/mesh.ts';
import { difference, union } from '../../shapes/solid.ts';

/** A straight round bore, or a rod: from a point along a direction of any length. */
export interface Bore {
  readonly from: Point;
  readonly direction: Point;
  readonly length: number;
  readonly radius: number;
}

export interface Body {
  readonly id: string;
  readonly mesh: Mesh;
  readonly bores: readonly Bore[];
}

const segments = 48;

/** Upright, lying askew, and on its head and turned. */
export const orientations: readonly Placement[] = [
  identity,
  placed({ turn: 33, tiltX: 20, tiltY: 50, move: [300, -20, 700] }),
  placed({ turn: 110, tiltX: 170, tiltY: -35, move: [-1200, 400, 90] }),
];

export function rod({ from, direction, length, radius }: Bore, round = segments): Mesh {
  return transformed(cylinder(radius, length, round), towards(direction, from));
}

/** Takes +z to a direction, then moves the origin. */
export function towards(direction: Point, at: Point): Placement {
  const w = unit(direction);
  const helper: Point = Math.abs(w[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const u = unit(cross(helper, w));
  const v = cross(w, u);
  return Float64Array.from([...u, 0, ...v, 0, ...w, 0, ...at, 1]);
}

/** Tubes welded together: outsides joined, then bored. Bores are as long as told, walls `wall` thick; ends are open. */
export function tubes(id: string, bores: readonly Bore[], wall: number): Body {
  const outside = union(...bores.map((b) => rod({ ...b, radius: b.radius + wall })));
  return bored(
    id,
    outside,
    bores.map((b) => throughEnds(b)),
  );
}

/** Longer by a little at its far end, so that no skin stays. */
function throughEnds(b: Bore): Bore {
  const d = unit(b.direction);
  return { ...b, from: [b.from[0] - d[0], b.from[1] - d[1], b.from[2] - d[2]], length: b.length + 2 };
}

export function bored(id: string, mesh: Mesh, bores: readonly Bore[]): Body {
  return { id, mesh: difference(mesh, ...bores.map((b) => rod(b))), bores };
}

export interface Drawn {
  readonly cad?: boolean;
  /** Vertices are moved by up to this much, mm. */
  readonly noise_mm?: number;
  readonly placement?: Placement;
}

export function modelOfBodies(
  bodies: readonly Body[],
  { cad = true, noise_mm = 0, placement = identity }: Drawn = {},
): Model {
  const shapes = bodies.map((body, k): Shape => {
    const mesh = noise_mm > 0 ? shaken(body.mesh, noise_mm) : body.mesh;
    const shape: Shape = { ...mesh, hash: `body-${k}` };
    return cad ? { ...shape, cad: topologyOf(body) } : shape;
  });
  const parts = bodies.map(({ id }, k) => ({ id, name: id, assembly: [], shape: k, placement }));
  return { shapes, parts, unit: 'mm', deviation_mm: 0.05, notes: [] };
}

/** Vertices of one place move together, by a noise that depends on the place only. */
function shaken({ positions, triangles }: Mesh, by: number): Mesh {
  const moved = positions.map((x, i) => {
    const v = i - (i % 3);
    const seed = Math.sin(
      positions[v] * 12.9898 + positions[v + 1] * 78.233 + positions[v + 2] * 37.719 + (i % 3) * 11.1,
    );
    const part = seed * 43758.5453;
    return x + by * (2 * (part - Math.floor(part)) - 1);
  });
  return { positions: moved, triangles };
}

/** Single precision of the kernel and chords that other walls cut, share of the radius. */
const onWall = 4e-3;

function topologyOf({ mesh: { positions: p, triangles }, bores }: Body): NonNullable<Shape['cad']> {
  const faces: CadFace[] = [
    ...bores.map(
      ({ from, direction, radius }): CadFace => ({
        kind: 'cylinder',
        radius_mm: radius,
        hollow: true,
        axis: { origin: from, direction: unit(direction) },
      }),
    ),
    { kind: 'plane' },
  ];
  const faceOfTriangle = new Uint32Array(triangles.length / 3);
  for (let t = 0; t < faceOfTriangle.length; t++) {
    const corners = [0, 1, 2].map((k): Point => {
      const v = triangles[3 * t + k] * 3;
      return [p[v], p[v + 1], p[v + 2]];
    });
    const normal = unit(cross(minus(corners[1], corners[0]), minus(corners[2], corners[0])));
    const own = bores.findIndex(({ from, direction, radius }) => {
      const axis = unit(direction);
      return corners.every((c) => {
        const d = minus(c, from);
        const s = dot(d, axis);
        const out: Point = [d[0] - s * axis[0], d[1] - s * axis[1], d[2] - s * axis[2]];
        return (
          Math.abs(Math.hypot(...out) - radius) < onWall * radius &&
          dot(out, normal) < 0 &&
          Math.abs(dot(axis, normal)) < 0.1
        );
      });
    });
    faceOfTriangle[t] = own < 0 ? bores.length : own;
  }
  return { faceOfTriangle, faces, edges: [] };
}

function unit(a: Point): Point {
  const l = Math.hypot(...a);
  return [a[0] / l, a[1] / l, a[2] / l];
}
const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
