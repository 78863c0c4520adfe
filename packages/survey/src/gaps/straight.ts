import { type BoxTree, boxTreeOf, visitBoxes } from './box-tree.ts';
import { isLevelWith, toSegment } from './depth.ts';
import type { Segment } from './region.ts';

/** The border of a wall, to ask how far it is straight to the mouth. */
export interface Border {
  readonly mouths: readonly Segment[];
  readonly floors: readonly Segment[];
  readonly mouthTree: BoxTree;
  readonly floorTree: BoxTree;
}

export function borderOf(mouths: readonly Segment[], floors: readonly Segment[]): Border {
  return { mouths, floors, mouthTree: boxTreeOf(boxesOf(mouths)), floorTree: boxTreeOf(boxesOf(floors)) };
}

const around = new Float64Array(6);
const point = new Float64Array(3);
const foot = new Float64Array(3);
const direction = new Float64Array(3);

/**
 * Straight distance from the point whose coordinates start at `at` to the nearest mouth, where that is nearer than
 * `below`, on a wall that is level from there to here (normal from `n` on in `normals`) and with no closed border in
 * between; `below` otherwise. Writes the direction from the mouth to here.
 */
export function straightWay(
  border: Border,
  xyz: Float64Array,
  at: number,
  normals: Float64Array,
  n: number,
  below: number,
  out: Float64Array,
): number {
  for (let k = 0; k < 3; k++) {
    point[k] = xyz[at + k];
    around[k] = point[k] - below;
    around[3 + k] = point[k] + below;
  }
  let least = below;
  let nearest = -1;
  visitBoxes(border.mouthTree, around, 0, (m) => {
    if (!isLevelWith(normals, n, border.mouths[m])) return false;
    const d = toSegment(point, 0, border.mouths[m], direction);
    if (d >= least) return false;
    least = d;
    nearest = m;
    out.set(direction);
    // Nothing farther off matters any more.
    for (let k = 0; k < 3; k++) {
      around[k] = point[k] - d;
      around[3 + k] = point[k] + d;
    }
    return false;
  });
  if (nearest < 0) return below;
  for (let k = 0; k < 3; k++) foot[k] = point[k] - least * out[k];
  return isBarred(border, border.mouths[nearest].normal) ? below : least;
}

/** Whether a closed border crosses the straight line from `point` to `foot`, seen along the normal of the wall. */
function isBarred({ floors, floorTree }: Border, n: readonly [number, number, number]): boolean {
  for (let k = 0; k < 3; k++) {
    around[k] = Math.min(point[k], foot[k]) - 1e-6;
    around[3 + k] = Math.max(point[k], foot[k]) + 1e-6;
  }
  return visitBoxes(floorTree, around, 0, (f) => {
    const { a, b } = floors[f];
    const sideA = sideOf(n, point, foot, a);
    const sideB = sideOf(n, point, foot, b);
    const sideP = sideOf(n, a, b, point);
    const sideF = sideOf(n, a, b, foot);
    return sideA * sideB < 0 && sideP * sideF < 0;
  });
}

/** On which side of the line from p to q the point r lies, seen along n. */
function sideOf(
  n: readonly [number, number, number],
  p: ArrayLike<number>,
  q: ArrayLike<number>,
  r: ArrayLike<number>,
): number {
  const ux = q[0] - p[0];
  const uy = q[1] - p[1];
  const uz = q[2] - p[2];
  const vx = r[0] - p[0];
  const vy = r[1] - p[1];
  const vz = r[2] - p[2];
  return n[0] * (uy * vz - uz * vy) + n[1] * (uz * vx - ux * vz) + n[2] * (ux * vy - uy * vx);
}

function boxesOf(segments: readonly Segment[]): Float64Array {
  const boxes = new Float64Array(segments.length * 6);
  for (const [i, { a, b }] of segments.entries()) {
    for (let k = 0; k < 3; k++) {
      boxes[6 * i + k] = Math.min(a[k], b[k]);
      boxes[6 * i + 3 + k] = Math.max(a[k], b[k]);
    }
  }
  return boxes;
}
