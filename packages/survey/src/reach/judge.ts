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
    const cell = roomiest(space, widest, points, normals, i, limb);
    // Air that some ball gets to is not sealed off, though it may be while the doors are shut.
    if (cell < 0 && sealed(points[i] + cx, points[i + 1] + cy, points[i + 2] + cz, nx, ny, nz)) continue;
    way[p] = Infinity;
    centre[p] = cell;
    if (cell >= 0) largest_mm[p] = 2 * widest.radius[cell];
  }
  return { way, centre, largest_mm };
}

/**
 * The cell before a patch with the largest ball, smaller than the limb's, whose touch gets back to it; -1 for none. Looks
 * along the normal; a cell counts where the free ball about its middle holds the place looked at, for then no wall is
 * between them.
 */
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
  let s = 0;
  let x = 0;
  let y = 0;
  let z = 0;
  const look = (cell: number): void => {
    const r = radius[cell];
    if (r <= most || r >= size_mm / 2 || s > r + touch_mm + lattice.pitch) return;
    const apart = Math.hypot(
      middleX(lattice, cell) - x,
      middleY(lattice, cell) - y,
      middleZ(lattice, cell) - z,
    );
    if (apart >= clearance.distance[cell]) return;
    most = r;
    best = cell;
  };
  const reach = size_mm / 2 + touch_mm;
  for (s = lattice.pitch / 2; s <= reach; s += lattice.pitch / 2) {
    x = points[i] + normals[i] * s;
    y = points[i + 1] + normals[i + 1] * s;
    z = points[i + 2] + normals[i + 2] * s;
    const cell = cellAt(lattice, x, y, z);
    // Beyond the middle of the air before the patch begins what lies before the surface on the other side.
    if (cell < 0 || (s > lattice.pitch && clearance.distance[cell] < 0.4 * s - lattice.pitch / 2)) break;
    if (s <= lattice.pitch) around(lattice, cell, look);
    else look(cell);
  }
  return best;
}
