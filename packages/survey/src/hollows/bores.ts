/**
 * Round bores of a shape, from its CAD faces: hollow cylinders that go all the way round, those in one line put
 * together. Everything in the frame of the shape.
 */
import type { CadFace, CadTopology, Shape, Vec3 } from '@coveline/model';
import { across } from './across.ts';

export interface Bore {
  /** A point on the axis; unit direction; the bore runs from `from` to `to` along it, mm from the origin. */
  readonly origin: Vec3;
  readonly direction: Vec3;
  readonly from: number;
  readonly to: number;
  /** Radius of the cylinder at either end. */
  readonly radiusFrom: number;
  readonly radiusTo: number;
  /** Faces that form it. */
  readonly faces: readonly number[];
}

/** Of the circle that must be there: less is an inside fillet or the end of a slot. */
const leastRound = 0.9;
const sectors = 72;
/** Axes within this share of the radius, and this sine of an angle, are one. */
const sameAxis = 1e-3;

interface Cylinder {
  readonly radius: number;
  readonly origin: Vec3;
  readonly direction: Vec3;
  from: number;
  to: number;
  readonly covered: Uint8Array;
  readonly faces: number[];
}

export function boresOf(shape: Shape): Bore[] {
  const { cad } = shape;
  if (!cad) return [];
  const cylinders = cylindersOf(shape, cad).filter(
    ({ covered }) => covered.reduce((n, c) => n + c, 0) >= leastRound * sectors,
  );
  return inLine(cylinders);
}

/** Hollow cylinders with the extent of their triangles; faces of one cylinder, halves say, taken together. */
function cylindersOf({ positions, triangles }: Shape, cad: CadTopology): Cylinder[] {
  const found: Cylinder[] = [];
  const ofFace = new Map<number, Cylinder>();
  cad.faces.forEach((face, f) => {
    if (!isBore(face)) return;
    const { origin, direction } = face.axis;
    const known = found.find((c) => c.radius === face.radius_mm && aligned(c, origin, direction));
    const cylinder = known ?? {
      radius: face.radius_mm,
      origin,
      direction,
      from: Infinity,
      to: -Infinity,
      covered: new Uint8Array(sectors),
      faces: [],
    };
    if (!known) found.push(cylinder);
    cylinder.faces.push(f);
    ofFace.set(f, cylinder);
  });
  for (let t = 0; t < cad.faceOfTriangle.length; t++) {
    const cylinder = ofFace.get(cad.faceOfTriangle[t]);
    if (!cylinder) continue;
    const [e1, e2] = across(cylinder.direction);
    const angles = [0, 1, 2].map((c) => {
      const v = triangles[t * 3 + c] * 3;
      const d: Vec3 = [
        positions[v] - cylinder.origin[0],
        positions[v + 1] - cylinder.origin[1],
        positions[v + 2] - cylinder.origin[2],
      ];
      const along = dot(d, cylinder.direction);
      cylinder.from = Math.min(cylinder.from, along);
      cylinder.to = Math.max(cylinder.to, along);
      return Math.atan2(dot(d, e2), dot(d, e1));
    });
    cover(cylinder.covered, angles);
  }
  return found.filter(({ from, to }) => from < to);
}

function isBore(face: CadFace): face is CadFace & Required<Pick<CadFace, 'radius_mm' | 'axis'>> {
  return (
    face.kind === 'cylinder' &&
    face.hollow === true &&
    face.radius_mm !== undefined &&
    face.axis !== undefined
  );
}

/** Marks the sectors under the span of a triangle, which is less than half a turn. */
function cover(covered: Uint8Array, angles: readonly number[]): void {
  const [a, ...others] = angles;
  const spans = others.map((b) => ((((b - a) % (2 * Math.PI)) + 3 * Math.PI) % (2 * Math.PI)) - Math.PI);
  const low = a + Math.min(0, ...spans);
  const high = a + Math.max(0, ...spans);
  const sector = (2 * Math.PI) / sectors;
  for (let s = Math.floor(low / sector); s * sector < high; s++)
    covered[((s % sectors) + sectors) % sectors] = 1;
}

/** Cylinders on one axis whose ends meet, or nearly (a chamfer, a drill point between them), make one bore. */
function inLine(cylinders: readonly Cylinder[]): Bore[] {
  const left = new Set(cylinders);
  const bores: Bore[] = [];
  for (const first of cylinders) {
    if (!left.delete(first)) continue;
    const { origin, direction } = first;
    const chain = [{ from: first.from, to: first.to, radius: first.radius, faces: first.faces }];
    let grown = true;
    while (grown) {
      grown = false;
      for (const other of left) {
        if (!aligned(first, other.origin, other.direction)) continue;
        const shift = dot(minus(other.origin, origin), direction);
        const sense = Math.sign(dot(other.direction, direction));
        const ends = [shift + sense * other.from, shift + sense * other.to];
        const [from, to] = [Math.min(...ends), Math.max(...ends)];
        const reach = Math.max(other.radius, first.radius);
        if (!chain.some((c) => from <= c.to + reach && to >= c.from - reach)) continue;
        left.delete(other);
        chain.push({ from, to, radius: other.radius, faces: other.faces });
        grown = true;
      }
    }
    const low = chain.reduce((a, b) => (b.from < a.from ? b : a));
    const high = chain.reduce((a, b) => (b.to > a.to ? b : a));
    bores.push({
      origin,
      direction,
      from: low.from,
      to: high.to,
      radiusFrom: low.radius,
      radiusTo: high.radius,
      faces: chain.flatMap(({ faces }) => faces),
    });
  }
  return bores;
}

function aligned(cylinder: Cylinder, origin: Vec3, direction: Vec3): boolean {
  if (Math.abs(Math.abs(dot(cylinder.direction, direction)) - 1) > sameAxis ** 2) return false;
  const d = minus(origin, cylinder.origin);
  const along = dot(d, cylinder.direction);
  return Math.sqrt(Math.max(0, dot(d, d) - along * along)) <= sameAxis * cylinder.radius;
}

function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function minus(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}
