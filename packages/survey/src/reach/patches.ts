import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { eachPiece, type Facets, piece, pieceNormal } from './facets.ts';
import { cellAt, type Lattice } from './lattice.ts';

/**
 * Pieces of facets that are judged together: those of one part in one cell that face about the same way. The largest one
 * stands for all.
 */
export interface Patches {
  readonly count: number;
  /** Per piece of a facet, in the order of `eachPiece`: its patch. */
  readonly ofPiece: Uint32Array;
  /** Per patch: xyz of a point on it, mm from the lattice's corner, and its unit direction into the air. */
  readonly points: Float32Array;
  readonly normals: Float32Array;
  readonly area_mm2: Float32Array;
  readonly part: Uint32Array;
  readonly cell: Int32Array;
}

export function patchesOf(lattice: Lattice, facets: Facets, control: Control): Patches {
  const { count: n } = facets;
  let ofPiece = new Uint32Array(n);
  let pieces = 0;
  const numbers = new Map<number, number>();
  const points: number[] = [];
  const normals: number[] = [];
  const areas: number[] = [];
  const largest: number[] = [];
  const part: number[] = [];
  const cells: number[] = [];
  // The number of a part is a digit of the key, and the six main directions are another one.
  const parts = 1 + facets.part.subarray(0, n).reduce((most, p) => Math.max(most, p), 0);
  const normal = new Float64Array(3);
  const add = (f: number): void => {
    const area = pieceNormal(normal);
    const cell = cellAt(lattice, middle(0), middle(1), middle(2));
    const key = (cell * 6 + mainDirection(normal)) * parts + facets.part[f];
    let patch = numbers.get(key);
    if (patch === undefined) {
      patch = cells.length;
      numbers.set(key, patch);
      cells.push(cell);
      part.push(facets.part[f]);
      areas.push(0);
      largest.push(-1);
    }
    if (pieces === ofPiece.length) {
      const wide = new Uint32Array(2 * pieces);
      wide.set(ofPiece);
      ofPiece = wide;
    }
    ofPiece[pieces++] = patch;
    areas[patch] += area;
    if (area <= largest[patch]) return;
    largest[patch] = area;
    for (let k = 0; k < 3; k++) {
      points[patch * 3 + k] = middle(k);
      normals[patch * 3 + k] = normal[k];
    }
  };
  for (let f = 0; f < n; f++) {
    if (f % 8192 === 0) step(control, 'reach', 0.5);
    eachPiece(facets, f, add);
  }
  return {
    count: cells.length,
    ofPiece,
    points: Float32Array.from(points),
    normals: Float32Array.from(normals),
    area_mm2: Float32Array.from(areas),
    part: Uint32Array.from(part),
    cell: Int32Array.from(cells),
  };
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
