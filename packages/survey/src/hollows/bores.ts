/**
 * Round bores of a shape, from its CAD faces: hollow cylinders that go all the way round, those in one line put
 * together. Everything in the frame of the shape.
 */
import type { CadFace, CadTopology, Shape, Vec3 } from '@coveline/model';
import { across } from './across.ts';
import { cover, isRound, sectors } from './cover.ts';
import { dot, minus } from './vector.ts';

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

/** Axes within this share of the radius, and this sine of an angle, are one. */
const sameAxis = 1e-3;

/** A hollow cylinder in the frame of its shape: it runs from `from` to `to` along its direction, mm from the origin. */
export interface Cylinder {
  readonly radius: number;
  readonly origin: Vec3;
  readonly direction: Vec3;
  from: number;
  to: number;
  readonly covered: Uint8Array;
  readonly faces: number[];
}

/** Hollow cylinders that go all the way round. */
export function roundCylinders(shape: Shape, cad: CadTopology): Cylinder[] {
  return cylindersOf(shape, cad).filter(({ covered }) => isRound(covered));
}

export function boresOf(shape: Shape): Bore[] {
  const { cad } = shape;
  if (!cad) return [];
  return inLine(roundCylinders(shape, cad));
}

/** Faces on one cylinder. */
interface Family {
  readonly radius: number;
  readonly origin: Vec3;
  readonly direction: Vec3;
  readonly members: Cylinder[];
}

/** Hollow cylinders with the extent of their triangles; faces of one cylinder that meet, halves say, taken together. */
function cylindersOf({ positions, triangles }: Shape, cad: CadTopology): Cylinder[] {
  const families: Family[] = [];
  const ofFace = new Map<number, Cylinder>();
  cad.faces.forEach((face, f) => {
    if (!isBore(face)) return;
    const { origin, direction } = face.axis;
    const radius = face.radius_mm;
    const known = families.find((c) => c.radius === radius && aligned(c, origin, direction));
    const family = known ?? { radius, origin, direction, members: [] };
    if (!known) families.push(family);
    const { origin: o, direction: d } = family;
    const covered = new Uint8Array(sectors);
    const own: Cylinder = {
      radius,
      origin: o,
      direction: d,
      from: Infinity,
      to: -Infinity,
      covered,
      faces: [f],
    };
    family.members.push(own);
    ofFace.set(f, own);
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
  return families.flatMap(({ members }) => joinMeeting(members));
}

/** Holes in opposite walls are on one cylinder, but two bores: only what meets along the axis is one. */
function joinMeeting(members: readonly Cylinder[]): Cylinder[] {
  const joined: Cylinder[] = [];
  for (const next of [...members].sort((a, b) => a.from - b.from)) {
    const last = joined.at(-1);
    if (!(next.from < next.to)) continue;
    if (!last || next.from > last.to + sameAxis * last.radius) {
      joined.push({ ...next, covered: next.covered.slice(), faces: [...next.faces] });
      continue;
    }
    last.to = Math.max(last.to, next.to);
    last.faces.push(...next.faces);
    for (let k = 0; k < sectors; k++) last.covered[k] |= next.covered[k];
  }
  return joined;
}

function isBore(face: CadFace): face is CadFace & Required<Pick<CadFace, 'radius_mm' | 'axis'>> {
  return (
    face.kind === 'cylinder' &&
    face.hollow === true &&
    face.radius_mm !== undefined &&
    face.axis !== undefined
  );
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

function aligned(
  cylinder: Pick<Cylinder, 'origin' | 'direction' | 'radius'>,
  origin: Vec3,
  direction: Vec3,
): boolean {
  if (Math.abs(Math.abs(dot(cylinder.direction, direction)) - 1) > sameAxis ** 2) return false;
  const d = minus(origin, cylinder.origin);
  const along = dot(d, cylinder.direction);
  return Math.sqrt(Math.max(0, dot(d, d) - along * along)) <= sameAxis * cylinder.radius;
}
