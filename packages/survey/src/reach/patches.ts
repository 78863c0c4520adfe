import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { eachPiece, type Facets, facetNormal, piece } from './facets.ts';
import { cellAt, type Lattice } from './lattice.ts';

/**
 * Pieces of facets that are judged together: those of one part in one cell that face about the same way. The largest one
 * stands for all.
 */
export interface Patches {
  readonly count: number;
  /** Per facet: its first piece; one more at the end with the number of all pieces. */
  readonly firstPiece: Uint32Array;
  /** Per piece of a facet, in the order of `eachPiece`: its patch, and how often the facet was halved for it. */
  readonly ofPiece: Uint32Array;
  readonly halvings: Uint8Array;
  /** Per patch: xyz of a point on it, mm from the lattice's corner, and its unit direction into the air. */
  readonly points: Float32Array;
  readonly normals: Float32Array;
  readonly area_mm2: Float32Array;
  readonly part: Uint32Array;
  readonly cell: Int32Array;
}

export function patchesOf(lattice: Lattice, facets: Facets, control: Control): Patches {
  const { count: n } = facets;
  const firstPiece = new Uint32Array(n + 1);
  let ofPiece = new Uint32Array(2 * n + 16);
  let halvings = new Uint8Array(2 * n + 16);
  let pieces = 0;
  let count = 0;
  let room = 4096;
  // Per cell its newest patch, and per patch the one before it in its cell: -1 for none.
  const newest = new Int32Array(lattice.cells).fill(-1);
  let before = new Int32Array(room);
  let facing = new Uint8Array(room);
  let largest = new Float32Array(room);
  let points = new Float32Array(3 * room);
  let normals = new Float32Array(3 * room);
  let area_mm2 = new Float64Array(room);
  let part = new Uint32Array(room);
  let cell = new Int32Array(room);
  const widen = (): void => {
    room *= 2;
    before = resized(before, new Int32Array(room));
    facing = resized(facing, new Uint8Array(room));
    largest = resized(largest, new Float32Array(room));
    points = resized(points, new Float32Array(3 * room));
    normals = resized(normals, new Float32Array(3 * room));
    area_mm2 = resized(area_mm2, new Float64Array(room));
    part = resized(part, new Uint32Array(room));
    cell = resized(cell, new Int32Array(room));
  };
  const normal = new Float64Array(3);
  let whole_mm2 = 0;
  let facetFacing = 0;
  const patchAt = (at: number, facetPart: number): number => {
    for (let p = newest[at]; p >= 0; p = before[p]) {
      if (facing[p] === facetFacing && part[p] === facetPart) return p;
    }
    if (count === room) widen();
    before[count] = newest[at];
    newest[at] = count;
    facing[count] = facetFacing;
    largest[count] = -1;
    part[count] = facetPart;
    cell[count] = at;
    return count++;
  };
  const add = (f: number, halved: number): void => {
    if (pieces % 16384 === 0) step(control, 'reach', 0.5);
    const patch = patchAt(cellAt(lattice, middle(0), middle(1), middle(2)), facets.part[f]);
    if (pieces === ofPiece.length) {
      const more = Math.ceil(1.5 * pieces);
      ofPiece = resized(ofPiece, new Uint32Array(more));
      halvings = resized(halvings, new Uint8Array(more));
    }
    ofPiece[pieces] = patch;
    halvings[pieces++] = halved;
    const area = whole_mm2 * 0.5 ** halved;
    area_mm2[patch] += area;
    if (area <= largest[patch]) return;
    largest[patch] = area;
    for (let k = 0; k < 3; k++) {
      points[patch * 3 + k] = middle(k);
      normals[patch * 3 + k] = normal[k];
    }
  };
  for (let f = 0; f < n; f++) {
    firstPiece[f] = pieces;
    whole_mm2 = facetNormal(facets, f, normal);
    facetFacing = mainDirection(normal);
    eachPiece(facets, f, add);
  }
  firstPiece[n] = pieces;
  step(control, 'reach', 0.55);
  return {
    count,
    firstPiece,
    ofPiece: ofPiece.slice(0, pieces),
    halvings: halvings.slice(0, pieces),
    points: points.slice(0, 3 * count),
    normals: normals.slice(0, 3 * count),
    area_mm2: Float32Array.from(area_mm2.subarray(0, count)),
    part: part.slice(0, count),
    cell: cell.slice(0, count),
  };
}

function resized<A extends { set(from: A): void }>(old: A, wide: A): A {
  wide.set(old);
  return wide;
}

function middle(k: number): number {
  return (piece[k] + piece[3 + k] + piece[6 + k]) / 3;
}

/** 0 to 5: the axis along which a direction mostly points, and which way. */
function mainDirection(n: Float64Array): number {
  const x = Math.abs(n[0]);
  const y = Math.abs(n[1]);
  const z = Math.abs(n[2]);
  const axis = x >= y && x >= z ? 0 : y >= z ? 1 : 2;
  return axis * 2 + (n[axis] < 0 ? 1 : 0);
}
