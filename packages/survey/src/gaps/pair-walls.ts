import { nearestOnTriangle } from '../tree/closest.ts';
import { membersOf, newGroups, unite } from '../weld/groups.ts';
import { boxTreeOf, visitBoxes } from './box-tree.ts';
import type { Wall } from './walls.ts';

/** Walls that belong to one gap. */
export interface WallPair {
  readonly walls: readonly Wall[];
  /** Every wall has its opposite among the walls, or faces itself. */
  readonly complete: boolean;
}

/** The wall across is the nearest one no farther than this from where it was seen, mm, for true surfaces stand off. */
const near_mm = 1;

/** Puts walls together that face each other. `step` is called between walls. */
export function pairWalls(walls: readonly Wall[], step: () => void): WallPair[] {
  const total = walls.reduce((sum, { outline }) => sum + outline.length, 0);
  const corners = new Float64Array(total);
  const owner = new Uint32Array(total / 9);
  let at = 0;
  for (const [w, { outline }] of walls.entries()) {
    corners.set(outline, at);
    owner.fill(w, at / 9, (at + outline.length) / 9);
    at += outline.length;
  }
  const tree = boxTreeOf(boxesOf(corners));
  const groups = newGroups(walls.length);
  const answered = new Uint8Array(walls.length);
  const around = new Float64Array(6);
  const nearest = new Float64Array(3);
  for (const [w, { looks, lookPart }] of walls.entries()) {
    step();
    for (let i = 0; i < lookPart.length; i++) {
      const [x, y, z, nx, ny, nz] = looks.subarray(6 * i, 6 * i + 6);
      around.set([x - near_mm, y - near_mm, z - near_mm, x + near_mm, y + near_mm, z + near_mm]);
      let best = -1;
      let least = near_mm * near_mm;
      if (owner.length > 0)
        visitBoxes(tree, around, 0, (t) => {
          // Not the back of a thin sheet.
          if (walls[owner[t]].part !== lookPart[i] || slope(corners, 9 * t, nx, ny, nz) > -0.3) return false;
          const d = nearestOnTriangle(corners, 9 * t, x, y, z, nearest);
          if (d > least || (d === least && best >= 0 && owner[t] >= best)) return false;
          least = d;
          best = owner[t];
          return false;
        });
      if (best < 0) continue;
      answered[w] = 1;
      answered[best] = 1;
      unite(groups, w, best);
    }
  }
  return membersOf(groups).map((members) => ({
    walls: members.map((w) => walls[w]),
    complete: members.every((w) => answered[w] === 1),
  }));
}

function boxesOf(corners: Float64Array): Float64Array {
  const boxes = new Float64Array((corners.length / 9) * 6);
  for (let t = 0; t < corners.length / 9; t++) {
    for (let k = 0; k < 3; k++) {
      const i = 9 * t + k;
      boxes[6 * t + k] = Math.min(corners[i], corners[i + 3], corners[i + 6]);
      boxes[6 * t + 3 + k] = Math.max(corners[i], corners[i + 3], corners[i + 6]);
    }
  }
  return boxes;
}

/** Cosine between a direction and the normal of the triangle whose corners start at `i`. */
export function slope(c: Float64Array, i: number, x: number, y: number, z: number): number {
  const ux = c[i + 3] - c[i];
  const uy = c[i + 4] - c[i + 1];
  const uz = c[i + 5] - c[i + 2];
  const vx = c[i + 6] - c[i];
  const vy = c[i + 7] - c[i + 1];
  const vz = c[i + 8] - c[i + 2];
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  return (nx * x + ny * y + nz * z) / (Math.sqrt(nx * nx + ny * ny + nz * nz) || 1);
}
