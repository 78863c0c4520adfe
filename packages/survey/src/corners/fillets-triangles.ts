import { facetBend, isSmooth } from '../weld/bend.ts';
import { facetsOf } from '../weld/facets.ts';
import { membersOf, newGroups, unite } from '../weld/groups.ts';
import { following } from '../weld/pair.ts';
import { cavityTriangles } from '../weld/shells.ts';
import { edgeLength, turnAt } from '../weld/turn.ts';
import type { Weld } from '../weld/weld.ts';
import type { ShapeCorner } from './corner.ts';
import { fitCylinder } from './fit-cylinder.ts';
import { measurePatch, type RoundPatch } from './patch.ts';
import { cylinderFrame } from './round.ts';
import { angleTolerance_deg } from './sharp-triangles.ts';

/** Facets at the rim of a fillet bend less than the others, and coarse ones are off: look a little above the limit. */
const margin = 1.6;
/** The estimate is good to about 1 %, so a fillet just at the limit is not reported as below it. */
const leeway = 0.99;
const largestSweep = (200 * Math.PI) / 180;
/** A cylinder fits when its vertices lie within this share of its radius. */
const goodFit = 0.03;
/** Pieces of a fillet that runs round a bend: their directions differ by less than this from the first one's. */
const straight = Math.cos((2.5 * Math.PI) / 180);
/** Neighbouring pieces of one fillet agree in radius this well. */
const sameRadius = 0.15;

interface Fillet {
  readonly radius_mm: number;
  readonly triangles: readonly number[];
  readonly patch: RoundPatch;
}

/**
 * Rounded inside corners estimated from triangles: connected facets that bend inwards alike, a cylinder fitted to the
 * vertices of each straight piece. `only` narrows the choice of triangles.
 */
export function filletsFromTriangles(
  weld: Weld,
  radiusBelow_mm: number,
  angleBelow_deg: number,
  only: (triangle: number) => boolean = () => true,
): ShapeCorner[] {
  const inward = inwardTriangles(weld, radiusBelow_mm * margin, only);
  const fillets: Fillet[] = [];
  const ownerOf = new Int32Array(inward.length).fill(-1);
  const add = (triangles: readonly number[]): boolean => {
    const fillet = fit(weld, triangles);
    if (!fillet) return false;
    const angle_deg = 180 - (fillet.patch.sweep * 180) / Math.PI;
    const counts =
      fillet.radius_mm < radiusBelow_mm * leeway &&
      fillet.patch.sweep < largestSweep &&
      angle_deg < angleBelow_deg - angleTolerance_deg &&
      smoothRim(weld, triangles) > fillet.patch.length_mm;
    if (!counts) return true;
    for (const t of triangles) ownerOf[t] = fillets.length;
    fillets.push(fillet);
    return true;
  };
  const along = ruling(weld, inward);
  for (const region of connected(weld, inward, () => true)) {
    if (add(region)) continue;
    // A fillet that runs round corners: piece by piece.
    const inRegion = new Uint8Array(inward.length);
    for (const t of region) inRegion[t] = 1;
    for (const piece of connected(weld, inRegion, (seed, t) => sameDirection(along, seed, t))) add(piece);
  }
  return joinPieces(weld, fillets, ownerOf);
}

/** 1 on triangles of facets that bend inwards to a radius below the limit. */
function inwardTriangles(weld: Weld, below_mm: number, only: (t: number) => boolean): Uint8Array {
  const bend = facetBend(weld);
  const { facetOf } = facetsOf(weld);
  const cavity = cavityTriangles(weld);
  const out = new Uint8Array(facetOf.length);
  for (let t = 0; t < out.length; t++) {
    if (-bend[facetOf[t]] * below_mm > 1 && !cavity[t] && only(t)) out[t] = 1;
  }
  return out;
}

function fit(weld: Weld, triangles: readonly number[]): Fillet | undefined {
  if (triangles.length < 2) return undefined;
  const cylinder = fitCylinder(weld, triangles);
  if (!cylinder || cylinder.spread_mm > goodFit * cylinder.radius_mm) return undefined;
  const frame = cylinderFrame(cylinder.origin, cylinder.axis, cylinder.radius_mm);
  return { radius_mm: cylinder.radius_mm, triangles, patch: measurePatch(weld, triangles, frame) };
}

/** Per triangle: unit direction of the edge over which it bends inwards most; zero where it does not. */
function ruling(weld: Weld, inward: Uint8Array): Float64Array {
  const { positions: p, triangles, twin } = weld;
  const { facetOf, normals } = facetsOf(weld);
  const out = new Float64Array(inward.length * 3);
  for (let t = 0; t < inward.length; t++) {
    if (!inward[t]) continue;
    let most = 0;
    for (let h = 3 * t; h < 3 * t + 3; h++) {
      if (twin[h] < 0) continue;
      const length = edgeLength(weld, h);
      const bend = -turnAt(weld, h, normals, facetOf) * length;
      if (bend <= most) continue;
      most = bend;
      const [a, b] = [triangles[h] * 3, triangles[following(h)] * 3];
      for (let k = 0; k < 3; k++) out[t * 3 + k] = (p[b + k] - p[a + k]) / length;
    }
  }
  return out;
}

function sameDirection(d: Float64Array, a: number, b: number): boolean {
  return Math.abs(d[a * 3] * d[b * 3] + d[a * 3 + 1] * d[b * 3 + 1] + d[a * 3 + 2] * d[b * 3 + 2]) > straight;
}

/** Sets of chosen triangles that hang together; `joins` compares a triangle with the first one of its set. */
function connected(
  { twin }: Weld,
  chosen: Uint8Array,
  joins: (seed: number, t: number) => boolean,
): number[][] {
  const seen = new Uint8Array(chosen.length);
  const sets: number[][] = [];
  for (let seed = 0; seed < chosen.length; seed++) {
    if (!chosen[seed] || seen[seed]) continue;
    const set = [seed];
    seen[seed] = 1;
    for (let i = 0; i < set.length; i++) {
      for (let h = 3 * set[i]; h < 3 * set[i] + 3; h++) {
        if (twin[h] < 0) continue;
        const o = (twin[h] / 3) | 0;
        if (!chosen[o] || seen[o] || !joins(seed, o)) continue;
        seen[o] = 1;
        set.push(o);
      }
    }
    sets.push(set);
  }
  return sets;
}

/** Length of the smooth edges around a set of triangles. */
function smoothRim(weld: Weld, triangles: readonly number[]): number {
  const inside = new Set(triangles);
  let length = 0;
  for (const t of triangles) {
    for (let h = 3 * t; h < 3 * t + 3; h++) {
      if (weld.twin[h] < 0 || inside.has((weld.twin[h] / 3) | 0)) continue;
      if (isSmooth(turnAt(weld, h, weld.normals))) length += edgeLength(weld, h);
    }
  }
  return length;
}

/** Neighbouring pieces of about one radius become one corner; its radius is their mean by length. */
function joinPieces({ twin }: Weld, fillets: readonly Fillet[], ownerOf: Int32Array): ShapeCorner[] {
  const groups = newGroups(fillets.length);
  for (const [i, { triangles, radius_mm }] of fillets.entries()) {
    for (const t of triangles) {
      for (let h = 3 * t; h < 3 * t + 3; h++) {
        const j = twin[h] < 0 ? -1 : ownerOf[(twin[h] / 3) | 0];
        if (j < 0 || j === i) continue;
        const other = fillets[j].radius_mm;
        if (Math.abs(radius_mm - other) <= sameRadius * Math.max(radius_mm, other)) unite(groups, i, j);
      }
    }
  }
  return membersOf(groups).map((numbers): ShapeCorner => {
    const set = numbers.map((i) => fillets[i]);
    const length_mm = set.reduce((sum, f) => sum + f.patch.length_mm, 0);
    const mean = (of: (f: Fillet) => number) =>
      set.reduce((sum, f) => sum + of(f) * f.patch.length_mm, 0) / length_mm;
    return {
      lines: set.map((f) => f.patch.line),
      length_mm,
      radius_mm: mean((f) => f.radius_mm),
      angle_deg: Math.max(0, 180 - (mean((f) => f.patch.sweep) * 180) / Math.PI),
      from: 'triangles',
      triangles: set.flatMap((f) => f.triangles),
    };
  });
}
