import type { Control } from '../result.ts';
import type { Sealed } from '../sealed.ts';
import { step } from '../stopped.ts';
import { materialOf } from '../tree/material.ts';
import { newWhereabouts, partNear } from '../tree/whereabouts.ts';
import { around, cellAt, middleX, middleY, middleZ } from './lattice.ts';
import type { Limb } from './limb.ts';
import type { Patches } from './patches.ts';
import { planesAt } from './planes.ts';
import type { ReachSpace } from './space.ts';
import { newTouch, touch } from './touch.ts';
import type { Ways } from './way.ts';
import type { Widest } from './widest.ts';

/** What becomes of every patch. */
export interface Judged {
  /** Per patch: length of the way, mm, where the ball can touch it; infinite where not; NaN where it does not count. */
  readonly way: Float32Array;
  /** Per patch: the cell of the ball that touches it, or of the largest ball that would; -1 for none. */
  readonly centre: Int32Array;
  /** Per patch: diameter of that ball, mm, no more than the limb's. */
  readonly largest_mm: Float32Array;
}

/**
 * A patch is reached when a straight line through the air, no longer than radius and touch, leads to it from a place
 * where the ball's centre gets to. A patch that nothing touches does not count where it lies in material, on floor or
 * wall, or before sealed air.
 */
export function judge(
  space: ReachSpace,
  patches: Patches,
  widest: Widest,
  ways: Ways,
  centres: Int32Array,
  limb: Limb,
  contact_mm: number,
  sealed: Sealed,
  control: Control,
): Judged {
  const { lattice, planes } = space;
  const { points, normals, count } = patches;
  const way = new Float32Array(count).fill(Number.NaN);
  const centre = new Int32Array(count).fill(-1);
  const largest_mm = new Float32Array(count);
  const where = newWhereabouts(materialOf(space.obstacles));
  const lift = Math.max(0.05, 2 * contact_mm);
  const [cx, cy, cz] = lattice.corner;
  const found = newTouch(space, widest, ways, centres, limb);
  for (let p = 0; p < count; p++) {
    if (p % 2048 === 0) step(control, 'reach', 0.8 + (0.15 * p) / count);
    const i = p * 3;
    const nx = normals[i];
    const ny = normals[i + 1];
    const nz = normals[i + 2];
    if (nx === 0 && ny === 0 && nz === 0) continue;
    if (touch(found, points, normals, i)) {
      way[p] = found.way_mm;
      centre[p] = found.centre;
      largest_mm[p] = limb.size_mm;
      continue;
    }
    const x = points[i] + nx * lift;
    const y = points[i + 1] + ny * lift;
    const z = points[i + 2] + nz * lift;
    if (planesAt(planes, x, y, z) < 0 || partNear(where, x + cx, y + cy, z + cz) >= 0) continue;
    if (sealed(points[i] + cx, points[i + 1] + cy, points[i + 2] + cz, nx, ny, nz)) continue;
    way[p] = Infinity;
    centre[p] = roomiest(space, widest, points, normals, i, limb);
    if (centre[p] >= 0) largest_mm[p] = 2 * widest.radius[centre[p]];
  }
  return { way, centre, largest_mm };
}

/** The cell before a patch with the largest ball, smaller than the limb's, whose touch gets back to it; -1 for none. */
function roomiest(
  { lattice, clearance }: ReachSpace,
  { radius }: Widest,
  points: Float32Array,
  normals: Float32Array,
  i: number,
  { size_mm, touch_mm }: Limb,
): number {
  let best = -1;
  let most = 0;
  const look = (cell: number, s: number): void => {
    const r = radius[cell];
    if (r <= most || r >= size_mm / 2 || s > r + touch_mm + lattice.pitch) return;
    most = r;
    best = cell;
  };
  const isBefore = (cell: number): boolean =>
    (middleX(lattice, cell) - points[i]) * normals[i] +
      (middleY(lattice, cell) - points[i + 1]) * normals[i + 1] +
      (middleZ(lattice, cell) - points[i + 2]) * normals[i + 2] >
    0;
  const reach = size_mm / 2 + touch_mm;
  for (let s = lattice.pitch / 2; s <= reach; s += lattice.pitch / 2) {
    const cell = cellAt(
      lattice,
      points[i] + normals[i] * s,
      points[i + 1] + normals[i + 1] * s,
      points[i + 2] + normals[i + 2] * s,
    );
    // Beyond the middle of the air before the patch begins what lies before the surface on the other side.
    if (cell < 0 || (s > lattice.pitch && clearance.distance[cell] < 0.4 * s - lattice.pitch / 2)) break;
    look(cell, s);
    // The middle of air narrower than a cell may lie in a neighbour.
    if (s <= lattice.pitch) around(lattice, cell, (n) => isBefore(n) && look(n, s));
  }
  return best;
}
