import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { outsideBy } from './access.ts';
import { newBucketQueue, pop, push } from './bucket-queue.ts';
import { around, besides, middleX, middleY, middleZ } from './lattice.ts';
import { narrowestAlong } from './narrowest.ts';
import { exactlyIn, type ReachSpace } from './space.ts';
import { placeOf, radiusStep_mm, type Widest } from './widest.ts';

/** Shortest ways of a ball's centre from the access sides. */
export interface Ways {
  /** Radius of the ball. */
  readonly radius_mm: number;
  /** Per cell: length inside the machine's box, mm; infinite where the ball does not get to. */
  readonly length: Float32Array;
  /** Per cell: the cell from which the way comes straight; itself on an access side; -1 where there is no way. */
  readonly bend: Int32Array;
}

/** A straight way may dip this far below the radius between two cells that the ball gets to: interpolation, mm. */
const slack_mm = 0.3;

/** Whether the ball's centre gets to a cell. */
export function gets({ radius }: Widest, cell: number, radius_mm: number): boolean {
  return radius[cell] >= radius_mm - radiusStep_mm;
}

/**
 * Taut ways through the cells that the ball gets to (Lazy Theta*: Nash, Koenig and Tovey 2010): every cell tries to be
 * reached straight from where the way of its neighbour bends; where that view is cut off the way bends at the
 * neighbour. So a way is as long as a string, and not as the steps of the lattice.
 */
export function waysOf(space: ReachSpace, widest: Widest, radius_mm: number, control: Control): Ways {
  const { lattice, access, clearance } = space;
  const exactly = exactlyIn(space);
  const { spot, spots } = widest;
  const n = lattice.cells;
  const length = new Float32Array(n).fill(Infinity);
  const bend = new Int32Array(n).fill(-1);
  const settled = new Uint8Array(n);
  const queue = newBucketQueue(lattice.pitch / 8);
  const p = new Float64Array(3);
  const q = new Float64Array(3);
  const apart = (a: number, b: number): number => {
    placeOf(lattice, spot, spots, a, p);
    placeOf(lattice, spot, spots, b, q);
    return Math.sqrt((p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2 + (p[2] - q[2]) ** 2);
  };
  const sees = (a: number, b: number): boolean => {
    const far = apart(a, b);
    for (let s = 0; s < far; ) {
      const t = s / far;
      const room = interpolated(
        space,
        p[0] + t * (q[0] - p[0]),
        p[1] + t * (q[1] - p[1]),
        p[2] + t * (q[2] - p[2]),
      );
      if (s > 0 && room < radius_mm - slack_mm) return false;
      s += Math.max(room - radius_mm, lattice.pitch / 2);
    }
    return true;
  };
  const least_mm = radius_mm - radiusStep_mm;
  const sides = new Int32Array(6 + 27);
  let listed = 0;
  let middle = 0;
  const listCorner = (next: number): void => {
    if (next === middle || (spot[next] < 0 && spot[middle] < 0)) return;
    if (widest.radius[next] >= least_mm) sides[listed++] = next;
  };
  /** Neighbours across faces, then, where the ball only just fits, all those around that were looked at closely. */
  const listAround = (cell: number): void => {
    besides(lattice, cell, sides);
    listed = 6;
    middle = cell;
    if (clearance.distance[cell] < radius_mm + 2 * lattice.pitch) around(lattice, cell, listCorner);
  };
  /** Whether the ball passes straight from one cell to another; across a face that is known. */
  const slips = (a: number, b: number, side: number): boolean => {
    if (side < 6) return true;
    const far = apart(a, b);
    if (far < radius_mm / 2) return true;
    return narrowestAlong(exactly, p, radius_mm, q, radius_mm) >= radius_mm - slack_mm;
  };
  const settle = (cell: number): void => {
    settled[cell] = 1;
    const corner = bend[cell];
    listAround(cell);
    for (let side = 0; side < listed; side++) {
      const next = sides[side];
      if (next < 0 || settled[next] || widest.radius[next] < least_mm) continue;
      // Of the same bend already, and so of the same length.
      if (bend[next] === corner) continue;
      const total = length[corner] + apart(corner, next);
      if (total >= length[next] - 1e-3 || !slips(cell, next, side)) continue;
      length[next] = total;
      bend[next] = corner;
      push(queue, total, next, cell);
    }
  };

  for (let c = 0; c < n; c++) {
    if (c % 65536 === 0) step(control, 'reach', 0.6);
    if (!gets(widest, c, radius_mm)) continue;
    const out = outsideBy(access, middleX(lattice, c), middleY(lattice, c), middleZ(lattice, c));
    if (out < 0) continue;
    // Below 0 by its distance to the box, so that a way straight in from here counts from the box on.
    length[c] = -out;
    bend[c] = c;
    settled[c] = 1;
  }
  for (let c = 0; c < n; c++) if (bend[c] === c && length[c] > -2 * lattice.pitch) settle(c);
  let count = 0;
  for (let entry = pop(queue); entry >= 0; entry = pop(queue)) {
    if (++count % 8192 === 0) step(control, 'reach', 0.65);
    const cell = queue.cell[entry];
    if (settled[cell]) continue;
    if (!sees(bend[cell], cell)) {
      length[cell] = Infinity;
      let best = -1;
      listAround(cell);
      for (let side = 0; side < listed; side++) {
        const by = sides[side];
        if (by < 0 || !settled[by]) continue;
        const total = length[by] + apart(by, cell);
        if (total >= length[cell] || !slips(by, cell, side)) continue;
        length[cell] = total;
        best = by;
      }
      bend[cell] = best;
    }
    settle(cell);
  }
  return { radius_mm, length, bend };
}

/** Clearance between the middles of eight cells; that of the nearest one at the border. */
function interpolated({ lattice, clearance }: ReachSpace, x: number, y: number, z: number): number {
  const { pitch, nx, ny, nz } = lattice;
  const u = x / pitch - 0.5;
  const v = y / pitch - 0.5;
  const w = z / pitch - 0.5;
  const i = Math.min(nx - 2, Math.max(0, Math.floor(u)));
  const j = Math.min(ny - 2, Math.max(0, Math.floor(v)));
  const k = Math.min(nz - 2, Math.max(0, Math.floor(w)));
  const a = Math.min(1, Math.max(0, u - i));
  const b = Math.min(1, Math.max(0, v - j));
  const c = Math.min(1, Math.max(0, w - k));
  const d = clearance.distance;
  const at = (k * ny + j) * nx + i;
  const up = nx * ny;
  const low = (1 - b) * ((1 - a) * d[at] + a * d[at + 1]) + b * ((1 - a) * d[at + nx] + a * d[at + nx + 1]);
  const high =
    (1 - b) * ((1 - a) * d[at + up] + a * d[at + up + 1]) +
    b * ((1 - a) * d[at + up + nx] + a * d[at + up + nx + 1]);
  return (1 - c) * low + c * high;
}
