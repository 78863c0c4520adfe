import type { CadEdge, CadFace, CadTopology } from '@coveline/model';
import { membersOf, newGroups, unite } from '../weld/groups.ts';
import { cavityTriangles } from '../weld/shells.ts';
import type { Weld } from '../weld/weld.ts';
import type { ShapeCorner } from './corner.ts';
import { filletsFromTriangles } from './fillets-triangles.ts';
import { measurePatch, type RoundPatch } from './patch.ts';
import { cylinderFrame, type RoundFrame, torusFrame } from './round.ts';
import { angleTolerance_deg } from './sharp-triangles.ts';

/** A hollow face that goes farther round than this is a bore, not a corner; a slot's round end goes 180 degrees. */
const largestSweep = (200 * Math.PI) / 180;
/** A fillet runs out smoothly on both sides: together at least this many times its own length. */
const tangentSides = 1.5;
/** Radii of one corner differ by less than this. */
const sameRadius = 0.01;

/** One fillet face, or the halves of one that the kernel split. */
interface Fillet {
  readonly faces: readonly number[];
  readonly radius_mm: number;
  readonly triangles: readonly number[];
  readonly patch: RoundPatch;
}

/**
 * Rounded inside corners of a shape with CAD faces: hollow cylinders, tori and spheres with a radius below the limit
 * that run out smoothly on both sides. The radius is exact; lengths are taken at the surface. Free-form faces that
 * carry no radius are estimated from their triangles.
 */
export function filletsFromCad(
  weld: Weld,
  cad: CadTopology,
  radiusBelow_mm: number,
  angleBelow_deg: number,
): ShapeCorner[] {
  const trianglesOf = trianglesByFace(weld, cad);
  const tangents = tangentsOf(cad);
  const fillets: Fillet[] = [];
  const corners: ShapeCorner[] = [];
  for (const faces of roundSurfaces(cad, tangents)) {
    const face = cad.faces[faces[0]];
    const radius_mm = face.radius_mm ?? Infinity;
    if (!(radius_mm < radiusBelow_mm - 1e-6)) continue;
    const triangles = faces.flatMap((f) => trianglesOf[f]);
    if (triangles.length === 0) continue;
    if (face.kind === 'sphere') {
      corners.push(...ballCorner(weld, triangles, radius_mm, tangents, faces));
      continue;
    }
    const frame = frameOf(face, radius_mm);
    if (!frame) continue;
    const patch = measurePatch(weld, triangles, frame);
    const angle_deg = 180 - (patch.sweep * 180) / Math.PI;
    if (patch.sweep > largestSweep || angle_deg > angleBelow_deg - angleTolerance_deg) continue;
    if (tangentLength(tangents, faces) < tangentSides * patch.length_mm) continue;
    fillets.push({ faces, radius_mm, triangles, patch });
  }
  corners.push(...joinFillets(fillets, tangents));
  const shapeless = new Set<number>();
  for (let f = 0; f < cad.faces.length; f++) {
    if (cad.faces[f].kind === 'freeform' && cad.faces[f].radius_mm === undefined) shapeless.add(f);
  }
  if (shapeless.size > 0) {
    const only = (t: number) => shapeless.has(cad.faceOfTriangle[t]);
    corners.push(...filletsFromTriangles(weld, radiusBelow_mm, angleBelow_deg, only));
  }
  return corners;
}

function frameOf(face: CadFace, radius_mm: number): RoundFrame | undefined {
  const { axis, majorRadius_mm } = face;
  if (!axis) return undefined;
  if (face.kind !== 'torus') return cylinderFrame(axis.origin, axis.direction, radius_mm);
  return majorRadius_mm === undefined
    ? undefined
    : torusFrame(axis.origin, axis.direction, majorRadius_mm, radius_mm);
}

function trianglesByFace(weld: Weld, { faces, faceOfTriangle }: CadTopology): number[][] {
  const cavity = cavityTriangles(weld);
  const out: number[][] = faces.map(() => []);
  for (let t = 0; t < faceOfTriangle.length; t++) {
    if (!cavity[t] && weld.areas[t] > 0) out[faceOfTriangle[t]].push(t);
  }
  return out;
}

/** Smooth edges between two different faces, and per face the numbers of its own. */
interface Tangents {
  readonly edges: readonly CadEdge[];
  readonly ofFace: readonly (readonly number[])[];
}

function tangentsOf(cad: CadTopology): Tangents {
  const edges = cad.edges.filter((e) => e.turn === 'tangent' && e.faces[0] !== e.faces[1]);
  const ofFace: number[][] = cad.faces.map(() => []);
  for (const [i, { faces }] of edges.entries()) for (const f of faces) ofFace[f].push(i);
  return { edges, ofFace };
}

/** Length of smooth edges from a group of faces to others. */
function tangentLength({ edges, ofFace }: Tangents, faces: readonly number[]): number {
  let length = 0;
  for (const f of faces) {
    for (const i of ofFace[f]) {
      const [a, b] = edges[i].faces;
      if (!faces.includes(a === f ? b : a)) length += edges[i].length_mm;
    }
  }
  return length;
}

/** Hollow round faces; halves of one and the same surface that meet smoothly go together. */
function roundSurfaces(cad: CadTopology, { edges }: Tangents): number[][] {
  const groups = newGroups(cad.faces.length);
  for (const { faces } of edges) {
    const [a, b] = faces;
    if (isRound(cad.faces[a]) && sameSurface(cad.faces[a], cad.faces[b])) unite(groups, a, b);
  }
  return membersOf(groups, (f) => isRound(cad.faces[f]));
}

function isRound({ kind, hollow, radius_mm }: CadFace): boolean {
  return (
    hollow === true &&
    radius_mm !== undefined &&
    (kind === 'cylinder' || kind === 'torus' || kind === 'sphere' || kind === 'freeform')
  );
}

function sameSurface(a: CadFace, b: CadFace): boolean {
  if (a.kind !== b.kind || a.hollow !== b.hollow || !near(a.radius_mm, b.radius_mm)) return false;
  if (!near(a.majorRadius_mm ?? 1, b.majorRadius_mm ?? 1)) return false;
  if (!a.axis || !b.axis) return a.kind === 'sphere';
  const d = a.axis.direction;
  const e = b.axis.direction;
  if (Math.abs(d[0] * e[0] + d[1] * e[1] + d[2] * e[2]) < 1 - 1e-6) return false;
  const s = [0, 1, 2].map((k) => (b.axis?.origin[k] ?? 0) - (a.axis?.origin[k] ?? 0));
  const along = a.kind === 'torus' ? 0 : s[0] * d[0] + s[1] * d[1] + s[2] * d[2];
  return Math.hypot(s[0] - along * d[0], s[1] - along * d[1], s[2] - along * d[2]) < 1e-3;
}

function near(a: number | undefined, b: number | undefined): boolean {
  return a !== undefined && b !== undefined && Math.abs(a - b) <= sameRadius * Math.max(a, b);
}

/** Fillets of one radius that run into each other become one corner. */
function joinFillets(fillets: readonly Fillet[], { edges }: Tangents): ShapeCorner[] {
  const owner = new Map<number, number>();
  for (const [i, fillet] of fillets.entries()) for (const f of fillet.faces) owner.set(f, i);
  const groups = newGroups(fillets.length);
  for (const { faces } of edges) {
    const [i, j] = [owner.get(faces[0]), owner.get(faces[1])];
    if (i === undefined || j === undefined) continue;
    if (near(fillets[i].radius_mm, fillets[j].radius_mm)) unite(groups, i, j);
  }
  return membersOf(groups).map((numbers): ShapeCorner => {
    const members = numbers.map((i) => fillets[i]);
    const length_mm = members.reduce((sum, m) => sum + m.patch.length_mm, 0);
    const sweep = members.reduce((sum, m) => sum + m.patch.sweep * m.patch.length_mm, 0) / length_mm;
    return {
      lines: members.map((m) => m.patch.line),
      length_mm,
      radius_mm: members[0].radius_mm,
      angle_deg: Math.max(0, 180 - (sweep * 180) / Math.PI),
      from: 'cad',
      triangles: members.flatMap((m) => m.triangles),
    };
  });
}

/**
 * A ball-shaped end where fillets meet: as long as its area is wide at a quarter turn. A hollow ball that does not
 * run out smoothly is a dimple and no corner.
 */
function ballCorner(
  weld: Weld,
  triangles: readonly number[],
  radius_mm: number,
  tangents: Tangents,
  faces: readonly number[],
): ShapeCorner[] {
  const { areas, positions: p, triangles: corners, normals } = weld;
  let area = 0;
  let biggest = triangles[0];
  for (const t of triangles) {
    area += areas[t];
    if (areas[t] > areas[biggest]) biggest = t;
  }
  const length_mm = area / (radius_mm * (Math.PI / 2));
  if (tangentLength(tangents, faces) < length_mm) return [];
  const [a, b] = [corners[biggest * 3] * 3, corners[biggest * 3 + 1] * 3];
  const n = normals.subarray(biggest * 3, biggest * 3 + 3);
  return [
    {
      lines: [
        {
          points: Float64Array.of(p[a], p[a + 1], p[a + 2], p[b], p[b + 1], p[b + 2]),
          air: Float64Array.of(...n, ...n),
        },
      ],
      length_mm,
      radius_mm,
      angle_deg: 90,
      from: 'cad',
      triangles,
    },
  ];
}
