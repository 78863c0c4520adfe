import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { newBucketQueue, pop, push } from './bucket-queue.ts';
import { besides } from './lattice.ts';
import type { ReachSpace } from './space.ts';
import type { Ways } from './way.ts';
import { placeOf, type Widest } from './widest.ts';

/**
 * Per cell: the cell nearest to it that the ball's centre gets to, no farther than `reach_mm` and through air that is
 * wider than a cell; itself where the centre gets to; -1 for none.
 */
export function nearestCentres(
  space: ReachSpace,
  widest: Widest,
  { bend }: Ways,
  reach_mm: number,
  control: Control,
): Int32Array {
  const { lattice, clearance } = space;
  const centre = new Int32Array(lattice.cells).fill(-1);
  const settled = new Uint8Array(lattice.cells);
  const apart = new Float32Array(lattice.cells).fill(Infinity);
  const queue = newBucketQueue(lattice.pitch / 8);
  const farthest = reach_mm + 2 * lattice.pitch;
  const from = new Float64Array(3);
  const to = new Float64Array(3);
  const sides = new Int32Array(6);
  const spread = (cell: number): void => {
    placeOf(lattice, widest.spot, widest.spots, centre[cell], from);
    besides(lattice, cell, sides);
    for (let side = 0; side < 6; side++) {
      const next = sides[side];
      if (next < 0 || settled[next] || bend[next] >= 0) continue;
      if (clearance.distance[next] < lattice.pitch / 2) continue;
      placeOf(lattice, widest.spot, widest.spots, next, to);
      const far = Math.sqrt((from[0] - to[0]) ** 2 + (from[1] - to[1]) ** 2 + (from[2] - to[2]) ** 2);
      if (far >= apart[next] || far > farthest) continue;
      apart[next] = far;
      centre[next] = centre[cell];
      push(queue, far, next, cell);
    }
  };
  for (let c = 0; c < lattice.cells; c++) {
    if (c % 65536 === 0) step(control, 'reach', 0.7);
    if (bend[c] < 0) continue;
    centre[c] = c;
    settled[c] = 1;
    besides(lattice, c, sides);
    if (sides.some((next) => next >= 0 && bend[next] < 0)) spread(c);
  }
  let count = 0;
  for (let entry = pop(queue); entry >= 0; entry = pop(queue)) {
    if (++count % 8192 === 0) step(control, 'reach', 0.75);
    const cell = queue.cell[entry];
    if (settled[cell]) continue;
    settled[cell] = 1;
    spread(cell);
  }
  return centre;
}
