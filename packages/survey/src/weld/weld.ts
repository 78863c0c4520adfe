import type { Shape } from '@coveline/model';
import { pairHalfEdges } from './pair.ts';

/** Vertices nearer than this are one vertex: above the noise of single-precision files of a few metres. */
export const weldTolerance_mm = 1e-3;

/**
 * A shape's triangles with their neighbours, in the frame of the shape. Half-edge `3 t + k` runs from corner k of
 * triangle t to the next corner, counter-clockwise seen from the air.
 */
export interface Weld {
  readonly tolerance_mm: number;
  /** xyz per welded vertex, mm. */
  readonly positions: Float64Array;
  /** Three welded vertices per triangle, in shape order. */
  readonly triangles: Uint32Array;
  /** Unit normal per triangle; zero where the triangle has no area. */
  readonly normals: Float64Array;
  /** mm2 per triangle. */
  readonly areas: Float64Array;
  /** Per half-edge: its other side, -1 at an open border and on triangles that shrank to a line. */
  readonly twin: Int32Array;
  /** Every edge has two sides. */
  readonly closed: boolean;
}

const welds = new WeakMap<Shape, Weld>();

/** The weld of a shape, made once however many parts and measures ask for it. */
export function weldOf(shape: Shape): Weld {
  let weld = welds.get(shape);
  if (!weld) {
    weld = weldShape(shape);
    welds.set(shape, weld);
  }
  return weld;
}

export function weldShape(shape: Shape): Weld {
  const { positions, triangles } = weldVertices(shape.positions, shape.triangles, weldTolerance_mm);
  const { normals, areas } = measureTriangles(positions, triangles);
  const { twin, open } = pairHalfEdges(triangles, positions.length / 3);
  return { tolerance_mm: weldTolerance_mm, positions, triangles, normals, areas, twin, closed: open === 0 };
}

/**
 * Merges vertices nearer than `tolerance`, in order: each joins the first earlier one in reach. Cells are four
 * tolerances wide, so that most vertices look into one cell only.
 */
export function weldVertices(source: Float64Array, sourceTriangles: Uint32Array, tolerance: number) {
  const n = source.length / 3;
  const size = 1 << Math.ceil(Math.log2(Math.max(16, n * 2)));
  const head = new Int32Array(size).fill(-1);
  const next = new Int32Array(n);
  const positions = new Float64Array(n * 3);
  const renamed = new Uint32Array(n);
  const cell = 4 * tolerance;
  let used = 0;
  for (let i = 0; i < n; i++) {
    const x = source[i * 3];
    const y = source[i * 3 + 1];
    const z = source[i * 3 + 2];
    let found = -1;
    const x0 = Math.floor((x - tolerance) / cell);
    const y0 = Math.floor((y - tolerance) / cell);
    const z0 = Math.floor((z - tolerance) / cell);
    const x1 = Math.floor((x + tolerance) / cell);
    const y1 = Math.floor((y + tolerance) / cell);
    const z1 = Math.floor((z + tolerance) / cell);
    for (let cx = x0; cx <= x1 && found < 0; cx++) {
      for (let cy = y0; cy <= y1 && found < 0; cy++) {
        for (let cz = z0; cz <= z1 && found < 0; cz++) {
          for (let v = head[hashCell(cx, cy, cz, size)]; v >= 0; v = next[v]) {
            const dx = positions[v * 3] - x;
            const dy = positions[v * 3 + 1] - y;
            const dz = positions[v * 3 + 2] - z;
            if (dx * dx + dy * dy + dz * dz > tolerance * tolerance) continue;
            found = v;
            break;
          }
        }
      }
    }
    if (found < 0) {
      found = used++;
      positions[found * 3] = x;
      positions[found * 3 + 1] = y;
      positions[found * 3 + 2] = z;
      const slot = hashCell(Math.floor(x / cell), Math.floor(y / cell), Math.floor(z / cell), size);
      next[found] = head[slot];
      head[slot] = found;
    }
    renamed[i] = found;
  }
  const triangles = new Uint32Array(sourceTriangles.length);
  for (let i = 0; i < triangles.length; i++) triangles[i] = renamed[sourceTriangles[i]];
  return { positions: positions.slice(0, used * 3), triangles };
}

function hashCell(x: number, y: number, z: number, size: number): number {
  let h = Math.imul(x, 0x9e3779b1) ^ Math.imul(y, 0x85ebca6b) ^ Math.imul(z, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  return (h ^ (h >>> 13)) & (size - 1);
}

function measureTriangles(p: Float64Array, triangles: Uint32Array) {
  const n = triangles.length / 3;
  const normals = new Float64Array(n * 3);
  const areas = new Float64Array(n);
  for (let t = 0; t < n; t++) {
    const a = triangles[t * 3] * 3;
    const b = triangles[t * 3 + 1] * 3;
    const c = triangles[t * 3 + 2] * 3;
    const ux = p[b] - p[a];
    const uy = p[b + 1] - p[a + 1];
    const uz = p[b + 2] - p[a + 2];
    const vx = p[c] - p[a];
    const vy = p[c + 1] - p[a + 1];
    const vz = p[c + 2] - p[a + 2];
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    areas[t] = length / 2;
    if (length === 0) continue;
    normals[t * 3] = nx / length;
    normals[t * 3 + 1] = ny / length;
    normals[t * 3 + 2] = nz / length;
  }
  return { normals, areas };
}
