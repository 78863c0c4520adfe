import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { newBucketQueue, pop, push } from './bucket-queue.ts';
import { type Facets, nearestOnFacet } from './facets.ts';
import { beside, type Lattice, middleX, middleY, middleZ } from './lattice.ts';
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
    const x = middleX(lattice, cell);
    const d = Math.sqrt(nearestOnFacet(corners, f, x, middleY(lattice, cell), middleZ(lattice, cell)));
    if (d >= distance[cell] - 1e-5) return;
    distance[cell] = d;
    facet[cell] = f;
  };
  for (let f = 0; f < facets.count; f++) {
    if (f % 65536 === 0) step(control, 'reach', 0.05 + (0.1 * f) / facets.count);
    passed(lattice, corners, f, offer);
  }
  for (let c = 0; c < lattice.cells; c++) if (facet[c] >= 0) push(queue, distance[c], c, -1);
  let count = 0;
  for (let entry = pop(queue); entry >= 0; entry = pop(queue)) {
    if (++count % 65536 === 0) step(control, 'reach', 0.2);
    const cell = queue.cell[entry];
    // An entry that was overtaken by a nearer facet.
    if (queue.key[entry] > distance[cell]) continue;
    for (let side = 0; side < 6; side++) {
      const n = beside(lattice, cell, side);
      if (n < 0 || facet[n] === facet[cell]) continue;
      const before = distance[n];
      offer(n, facet[cell]);
      if (distance[n] < before) push(queue, distance[n], n, -1);
    }
  }
  if (planes.length > 0) {
    for (let c = 0; c < lattice.cells; c++) {
      distance[c] = Math.min(
        distance[c],
        planesAt(planes, middleX(lattice, c), middleY(lattice, c), middleZ(lattice, c)),
      );
    }
  }
  return { distance, facet };
}

/** Visits the cells that the box of a facet meets: the cell of every one of its points is among them. */
function passed(
  { pitch, nx, ny }: Lattice,
  corners: Float32Array,
  f: number,
  visit: (cell: number, f: number) => void,
): void {
  const c = f * 9;
  const low = (k: number) => (Math.min(corners[c + k], corners[c + 3 + k], corners[c + 6 + k]) / pitch) | 0;
  const high = (k: number) => (Math.max(corners[c + k], corners[c + 3 + k], corners[c + 6 + k]) / pitch) | 0;
  const x0 = low(0);
  const x1 = high(0);
  const y0 = low(1);
  const y1 = high(1);
  const z1 = high(2);
  for (let k = low(2); k <= z1; k++) {
    for (let j = y0; j <= y1; j++) for (let i = x0; i <= x1; i++) visit((k * ny + j) * nx + i, f);
  }
}
