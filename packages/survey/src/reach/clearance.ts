import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { newBucketQueue, pop, push } from './bucket-queue.ts';
import { eachPiece, type Facets, nearestOnFacet, piece } from './facets.ts';
import { besides, type Lattice, middleX, middleY, middleZ } from './lattice.ts';
import { type Planes, planesAt } from './planes.ts';

/** How far the middle of each cell is from what stands around it. */
export interface Clearance {
  /** Per cell, mm, no more than the cap; below 0 behind a plane. */
  readonly distance: Float32Array;
  /** Per cell: the nearest facet, -1 beyond the cap. */
  readonly facet: Int32Array;
}

/**
 * Distances from the middles of all cells to the nearest facet, exact for the facet that they name. Facets are told to
 * the cells that they pass through; from there each cell hands its facet on to its neighbours, nearest first.
 */
export function clearanceOf(
  lattice: Lattice,
  facets: Facets,
  planes: Planes,
  cap_mm: number,
  control: Control,
): Clearance {
  const distance = new Float32Array(lattice.cells).fill(cap_mm);
  const facet = new Int32Array(lattice.cells).fill(-1);
  const queue = newBucketQueue(lattice.pitch / 8);
  const { corners } = facets;
  const offer = (cell: number, f: number): void => {
    if (facet[cell] === f) return;
    const x = middleX(lattice, cell);
    const d = Math.sqrt(nearestOnFacet(corners, f, x, middleY(lattice, cell), middleZ(lattice, cell)));
    if (d >= distance[cell] - 1e-5) return;
    distance[cell] = d;
    facet[cell] = f;
  };
  let seeds = 0;
  const seed = (f: number): void => {
    if (seeds++ % 4096 === 0) step(control, 'reach', 0.05 + (0.1 * f) / facets.count);
    passed(lattice, f, offer);
  };
  for (let f = 0; f < facets.count; f++) eachPiece(facets, f, seed);
  for (let c = 0; c < lattice.cells; c++) {
    if (c % 262144 === 0) step(control, 'reach', 0.15);
    if (facet[c] >= 0) push(queue, distance[c], c, -1);
  }
  const sides = new Int32Array(6);
  let count = 0;
  for (let entry = pop(queue); entry >= 0; entry = pop(queue)) {
    if (++count % 65536 === 0) step(control, 'reach', 0.2);
    const cell = queue.cell[entry];
    // An entry that was overtaken by a nearer facet.
    if (queue.key[entry] > distance[cell]) continue;
    besides(lattice, cell, sides);
    // A neighbour is no nearer to this facet than by a cell.
    const least = distance[cell] - lattice.pitch;
    for (let side = 0; side < 6; side++) {
      const n = sides[side];
      if (n < 0 || distance[n] <= least || facet[n] === facet[cell]) continue;
      const before = distance[n];
      offer(n, facet[cell]);
      if (distance[n] < before) push(queue, distance[n], n, -1);
    }
  }
  if (planes.length > 0) {
    for (let c = 0; c < lattice.cells; c++) {
      if (c % 65536 === 0) step(control, 'reach', 0.23);
      distance[c] = Math.min(
        distance[c],
        planesAt(planes, middleX(lattice, c), middleY(lattice, c), middleZ(lattice, c)),
      );
    }
  }
  return { distance, facet };
}

/** Visits the cells that the box of a facet's piece meets: the cell of every one of its points is among them. */
function passed({ pitch, nx, ny }: Lattice, f: number, visit: (cell: number, f: number) => void): void {
  const x0 = lowest(0, pitch);
  const x1 = highest(0, pitch);
  const y0 = lowest(1, pitch);
  const y1 = highest(1, pitch);
  const z1 = highest(2, pitch);
  for (let k = lowest(2, pitch); k <= z1; k++) {
    for (let j = y0; j <= y1; j++) for (let i = x0; i <= x1; i++) visit((k * ny + j) * nx + i, f);
  }
}

function lowest(k: number, pitch: number): number {
  return (Math.min(piece[k], piece[3 + k], piece[6 + k]) / pitch) | 0;
}

function highest(k: number, pitch: number): number {
  return (Math.max(piece[k], piece[3 + k], piece[6 + k]) / pitch) | 0;
}
