import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import type { Facets } from './facets.ts';
import { cellAt, type Lattice } from './lattice.ts';

/**
 * Pieces of surface that are judged together: the facets of one part in one cell that face about the same way. One
 * facet of each stands for all.
 */
export interface Patches {
  readonly count: number;
  /** Per facet: its patch. */
  readonly ofFacet: Uint32Array;
  /** Per patch: xyz of a point on it, mm from the lattice's corner, and its unit direction into the air. */
  readonly points: Float32Array;
  readonly normals: Float32Array;
  readonly area_mm2: Float32Array;
  readonly part: Uint32Array;
  readonly cell: Int32Array;
}

/** Facets smaller than this have no direction to speak of, mm2. */
const sliver_mm2 = 1e-9;

export function patchesOf(lattice: Lattice, facets: Facets, control: Control): Patches {
  const { corners, count: n } = facets;
  const ofFacet = new Uint32Array(n);
  const first = new Map<number, number>();
  const standsFor = new Uint32Array(n);
  const areas = new Float32Array(n);
  const largest = new Float32Array(n);
  const cells = new Int32Array(n);
  let count = 0;
  // The number of a part is a digit of the key, and the six main directions are another one.
  const parts = 1 + facets.part.subarray(0, n).reduce((most, p) => Math.max(most, p), 0);
  const normal = new Float64Array(3);
  for (let f = 0; f < n; f++) {
    if (f % 65536 === 0) step(control, 'reach', 0.5);
    const area = normalOf(corners, f, normal);
    const cell = cellAt(lattice, middle(corners, f, 0), middle(corners, f, 1), middle(corners, f, 2));
    const key = (cell * 6 + mainDirection(normal)) * parts + facets.part[f];
    let patch = first.get(key);
    if (patch === undefined) {
      patch = count++;
      first.set(key, patch);
      cells[patch] = cell;
    }
    ofFacet[f] = patch;
    areas[patch] += area;
    if (area < largest[patch]) continue;
    largest[patch] = area;
    standsFor[patch] = f;
  }
  const points = new Float32Array(count * 3);
  const normals = new Float32Array(count * 3);
  const part = new Uint32Array(count);
  for (let patch = 0; patch < count; patch++) {
    const f = standsFor[patch];
    part[patch] = facets.part[f];
    normalOf(corners, f, normal);
    for (let k = 0; k < 3; k++) {
      points[patch * 3 + k] = middle(corners, f, k);
      normals[patch * 3 + k] = normal[k];
    }
  }
  return {
    count,
    ofFacet,
    points,
    normals,
    area_mm2: areas.slice(0, count),
    part,
    cell: cells.slice(0, count),
  };
}

function middle(c: Float32Array, f: number, k: number): number {
  return (c[f * 9 + k] + c[f * 9 + 3 + k] + c[f * 9 + 6 + k]) / 3;
}

/** Writes the unit normal (0 for a sliver) and returns the area. */
function normalOf(c: Float32Array, f: number, out: Float64Array): number {
  const a = f * 9;
  const ux = c[a + 3] - c[a];
  const uy = c[a + 4] - c[a + 1];
  const uz = c[a + 5] - c[a + 2];
  const vx = c[a + 6] - c[a];
  const vy = c[a + 7] - c[a + 1];
  const vz = c[a + 8] - c[a + 2];
  out[0] = uy * vz - uz * vy;
  out[1] = uz * vx - ux * vz;
  out[2] = ux * vy - uy * vx;
  const length = Math.hypot(out[0], out[1], out[2]);
  for (let k = 0; k < 3; k++) out[k] = length > 2 * sliver_mm2 ? out[k] / length : 0;
  return length / 2;
}

/** 0 to 5: the axis along which a direction mostly points, and which way. */
function mainDirection(n: Float64Array): number {
  const x = Math.abs(n[0]);
  const y = Math.abs(n[1]);
  const z = Math.abs(n[2]);
  const axis = x >= y && x >= z ? 0 : y >= z ? 1 : 2;
  return axis * 2 + (n[axis] < 0 ? 1 : 0);
}
