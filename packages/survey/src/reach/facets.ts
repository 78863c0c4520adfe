import { type Model, placedPositions, triangleCount } from '@coveline/model';
import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import type { Lattice } from './lattice.ts';

/** Facets smaller than this have no direction to speak of, mm2. */
const sliver_mm2 = 1e-9;

/** The triangles of a model, doors left out. */
export interface Facets {
  readonly count: number;
  /** Nine per facet: xyz of its corners, mm from the lattice's corner. */
  readonly corners: Float32Array;
  /** Per facet: its triangle in model order, and the index of its part. */
  readonly triangle: Uint32Array;
  readonly part: Uint32Array;
  /** Square of the longest edge of a piece, mm2: see `eachPiece`. */
  readonly longest_mm2: number;
}

/** Parts in `absent` are left out. */
export function facetsOf(
  model: Model,
  absent: ReadonlySet<string>,
  { corner, pitch }: Lattice,
  control: Control,
): Facets {
  const n = triangleCount(model);
  const corners = new Float32Array(9 * n);
  const triangle = new Uint32Array(n);
  const part = new Uint32Array(n);
  let count = 0;
  let before = 0;
  for (let p = 0; p < model.parts.length; p++) {
    step(control, 'reach', 0.02);
    const { triangles } = model.shapes[model.parts[p].shape];
    if (!absent.has(model.parts[p].id)) {
      const xyz = placedPositions(model, p);
      for (let i = 0; i < triangles.length; i++) {
        const to = count * 9 + i * 3;
        for (let k = 0; k < 3; k++) corners[to + k] = xyz[triangles[i] * 3 + k] - corner[k];
      }
      for (let t = 0; t < triangles.length / 3; t++) {
        triangle[count] = before + t;
        part[count++] = p;
      }
    }
    before += triangles.length / 3;
  }
  return { count, corners, triangle, part, longest_mm2: (1.5 * pitch) ** 2 };
}

/** The piece that `eachPiece` is at: xyz of its corners. */
export const piece = new Float64Array(9);
const pending = new Float64Array(9 * 128);
const halved = new Uint8Array(128);

/**
 * Visits the pieces of a facet, always in the same order: it is halved until no edge is longer than one and a half
 * cells, so that the middles of neighbours lie no more than a cell apart. Pieces are not kept: long thin triangles have
 * many. The area of a piece is that of its facet, halved so many times.
 */
export function eachPiece(
  { corners, longest_mm2 }: Facets,
  facet: number,
  visit: (facet: number, halvings: number) => void,
): void {
  for (let i = 0; i < 9; i++) pending[i] = corners[facet * 9 + i];
  halved[0] = 0;
  let depth = 1;
  while (depth > 0) {
    const at = --depth * 9;
    const edge = longestEdge(at, longest_mm2);
    if (edge < 0) {
      for (let i = 0; i < 9; i++) piece[i] = pending[at + i];
      visit(facet, halved[depth]);
      continue;
    }
    // Halved at the middle of the edge from corner a to corner b: one half keeps b, the other one a.
    const a = at + edge * 3;
    const b = at + (edge === 2 ? 0 : edge * 3 + 3);
    for (let i = 0; i < 9; i++) pending[at + 9 + i] = pending[at + i];
    for (let k = 0; k < 3; k++) {
      const middle = (pending[a + k] + pending[b + k]) / 2;
      pending[a + k] = middle;
      pending[b + 9 + k] = middle;
    }
    halved[depth + 1] = ++halved[depth];
    depth += 2;
  }
}

/** The longest edge (0: first to second corner, …) of the pending piece if its square is above the limit, else -1. */
function longestEdge(at: number, limit: number): number {
  let best = -1;
  let length = limit;
  for (let e = 0; e < 3; e++) {
    const a = at + e * 3;
    const b = at + ((e + 1) % 3) * 3;
    const x = pending[a] - pending[b];
    const y = pending[a + 1] - pending[b + 1];
    const z = pending[a + 2] - pending[b + 2];
    const square = x * x + y * y + z * z;
    if (square <= length) continue;
    length = square;
    best = e;
  }
  return best;
}

/** Nearest point of a facet as `nearestOnFacet` found it last. */
export const foot = new Float64Array(3);

/** Squared distance from xyz to the facet; writes the nearest point to `foot` (Ericson 2005, 5.1.5). */
export function nearestOnFacet(
  corners: Float32Array,
  facet: number,
  x: number,
  y: number,
  z: number,
): number {
  const at = facet * 9;
  const ax = corners[at];
  const ay = corners[at + 1];
  const az = corners[at + 2];
  const ux = corners[at + 3] - ax;
  const uy = corners[at + 4] - ay;
  const uz = corners[at + 5] - az;
  const vx = corners[at + 6] - ax;
  const vy = corners[at + 7] - ay;
  const vz = corners[at + 8] - az;
  const px = x - ax;
  const py = y - ay;
  const pz = z - az;
  const uu = ux * ux + uy * uy + uz * uz;
  const uv = ux * vx + uy * vy + uz * vz;
  const vv = vx * vx + vy * vy + vz * vz;
  const d1 = ux * px + uy * py + uz * pz;
  const d2 = vx * px + vy * py + vz * pz;
  const d3 = d1 - uu;
  const d4 = d2 - uv;
  const d5 = d1 - uv;
  const d6 = d2 - vv;
  const va = d3 * d6 - d5 * d4;
  const vb = d5 * d2 - d1 * d6;
  const vc = d1 * d4 - d3 * d2;
  let s = 0;
  let t = 0;
  if (!(d1 <= 0 && d2 <= 0)) {
    if (d3 >= 0 && d4 <= d3) s = 1;
    else if (d6 >= 0 && d5 <= d6) t = 1;
    else if (vc <= 0 && d1 >= 0 && d3 <= 0) s = d1 / (d1 - d3);
    else if (vb <= 0 && d2 >= 0 && d6 <= 0) t = d2 / (d2 - d6);
    else if (va <= 0 && d4 >= d3 && d5 >= d6) {
      t = (d4 - d3) / (d4 - d3 + (d5 - d6));
      s = 1 - t;
    } else {
      const sum = va + vb + vc;
      s = sum > 0 ? vb / sum : 0;
      t = sum > 0 ? vc / sum : 0;
    }
  }
  const qx = ux * s + vx * t;
  const qy = uy * s + vy * t;
  const qz = uz * s + vz * t;
  foot[0] = ax + qx;
  foot[1] = ay + qy;
  foot[2] = az + qz;
  return (px - qx) * (px - qx) + (py - qy) * (py - qy) + (pz - qz) * (pz - qz);
}

/** Area of a facet, mm2; writes its unit normal, 0 for a sliver. */
export function facetNormal({ corners }: Facets, facet: number, out: Float64Array): number {
  const at = facet * 9;
  const ux = corners[at + 3] - corners[at];
  const uy = corners[at + 4] - corners[at + 1];
  const uz = corners[at + 5] - corners[at + 2];
  const vx = corners[at + 6] - corners[at];
  const vy = corners[at + 7] - corners[at + 1];
  const vz = corners[at + 8] - corners[at + 2];
  out[0] = uy * vz - uz * vy;
  out[1] = uz * vx - ux * vz;
  out[2] = ux * vy - uy * vx;
  const length = Math.sqrt(out[0] * out[0] + out[1] * out[1] + out[2] * out[2]);
  for (let k = 0; k < 3; k++) out[k] = length > 2 * sliver_mm2 ? out[k] / length : 0;
  return length / 2;
}
