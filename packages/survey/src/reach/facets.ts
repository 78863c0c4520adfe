import { type Model, placedPositions } from '@coveline/model';
import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import type { Lattice } from './lattice.ts';

/**
 * The surface in pieces no longer than one and a half cells, so that the middles of neighbours lie no more than a cell
 * apart: large triangles are halved until they are.
 */
export interface Facets {
  readonly count: number;
  /** Nine per facet: xyz of its corners, mm from the lattice's corner. */
  readonly corners: Float32Array;
  /** Per facet: its triangle in model order, and the index of its part. */
  readonly triangle: Uint32Array;
  readonly part: Uint32Array;
}

/** Parts in `absent` are left out. */
export function facetsOf(
  model: Model,
  absent: ReadonlySet<string>,
  { corner, pitch }: Lattice,
  control: Control,
): Facets {
  let corners = new Float32Array(9 * 65536);
  let triangle = new Uint32Array(65536);
  let part = new Uint32Array(65536);
  let count = 0;
  let before = 0;
  const longest = (1.5 * pitch) ** 2;
  const pending: number[][] = [];
  for (let p = 0; p < model.parts.length; p++) {
    step(control, 'reach', 0.02);
    const { triangles } = model.shapes[model.parts[p].shape];
    if (!absent.has(model.parts[p].id)) {
      const xyz = placedPositions(model, p);
      for (let t = 0; t < triangles.length; t += 3) {
        const whole: number[] = [];
        for (let v = t; v < t + 3; v++) {
          for (let k = 0; k < 3; k++) whole.push(xyz[triangles[v] * 3 + k] - corner[k]);
        }
        pending.push(whole);
        for (let piece = pending.pop(); piece; piece = pending.pop()) {
          const edge = longestEdge(piece, longest);
          if (edge >= 0) {
            pending.push(...halves(piece, edge));
            continue;
          }
          if (count === triangle.length) {
            corners = widened(corners, new Float32Array(corners.length * 2));
            triangle = widened(triangle, new Uint32Array(triangle.length * 2));
            part = widened(part, new Uint32Array(part.length * 2));
          }
          corners.set(piece, count * 9);
          triangle[count] = before + t / 3;
          part[count++] = p;
        }
      }
    }
    before += triangles.length / 3;
  }
  return { count, corners, triangle, part };
}

/** The longest edge (0: first to second corner, …) if its square is above the limit, else -1. */
function longestEdge(c: readonly number[], limit: number): number {
  let best = -1;
  let length = limit;
  for (let e = 0; e < 3; e++) {
    const a = e * 3;
    const b = ((e + 1) % 3) * 3;
    const square = (c[a] - c[b]) ** 2 + (c[a + 1] - c[b + 1]) ** 2 + (c[a + 2] - c[b + 2]) ** 2;
    if (square <= length) continue;
    length = square;
    best = e;
  }
  return best;
}

function halves(c: readonly number[], edge: number): [number[], number[]] {
  const point = (k: number) => c.slice((k % 3) * 3, (k % 3) * 3 + 3);
  const a = point(edge);
  const b = point(edge + 1);
  const opposite = point(edge + 2);
  const middle = a.map((x, k) => (x + b[k]) / 2);
  return [
    [...a, ...middle, ...opposite],
    [...middle, ...b, ...opposite],
  ];
}

function widened<A extends Float32Array | Uint32Array>(old: A, wide: A): A {
  wide.set(old);
  return wide;
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

export function facetArea(c: Float32Array, facet: number): number {
  const a = facet * 9;
  const ux = c[a + 3] - c[a];
  const uy = c[a + 4] - c[a + 1];
  const uz = c[a + 5] - c[a + 2];
  const vx = c[a + 6] - c[a];
  const vy = c[a + 7] - c[a + 1];
  const vz = c[a + 8] - c[a + 2];
  return Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2;
}
