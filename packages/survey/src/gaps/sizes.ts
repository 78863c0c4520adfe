import { type BoxTree, boxTreeOf, visitBoxes } from './box-tree.ts';

/** How long the edges of a wall mesh may be: short along given lines, and the longer the farther from them. */
export interface Sizes {
  /** `perLine` numbers per line. */
  readonly lines: Float64Array;
  readonly tree: BoxTree;
  readonly least_mm: number;
}

/**
 * Two ends, mm, the edge length there, the way across the line to the side on which it is wanted (zero for both), and
 * the triangle, in model order, on which it lies.
 */
export const perLine = 11;
/** Edges grow by this much per mm of distance. */
const growth = 1;

/** Lines of no matter what order; equal edge lengths on lines that lie together cost nothing more. */
export function sizesOf(lines: Float64Array): Sizes {
  const n = lines.length / perLine;
  const boxes = new Float64Array(n * 6);
  let least = Infinity;
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < 3; k++) {
      const p = lines[i * perLine + k];
      const q = lines[i * perLine + 3 + k];
      boxes[i * 6 + k] = Math.min(p, q);
      boxes[i * 6 + 3 + k] = Math.max(p, q);
    }
    least = Math.min(least, lines[i * perLine + 6]);
  }
  return { lines, tree: boxTreeOf(boxes), least_mm: least };
}

const around = new Float64Array(6);
const sought = { ax: 0, ay: 0, az: 0, bx: 0, by: 0, bz: 0, length: 0 };
let lines: Float64Array = new Float64Array(0);

/** Whether an edge between two points, three coordinates each from `a` and `b` on, is longer than it may be. */
export function isTooLong(sizes: Sizes, xyz: readonly number[], a: number, b: number): boolean {
  const x = xyz[b] - xyz[a];
  const y = xyz[b + 1] - xyz[a + 1];
  const z = xyz[b + 2] - xyz[a + 2];
  return isTooLongThere(sizes, xyz, a, b, Math.sqrt(x * x + y * y + z * z));
}

/** The same for an edge of a given length, half-way between two points. */
export function isTooLongThere(
  { lines: own, tree, least_mm }: Sizes,
  xyz: readonly number[],
  a: number,
  b: number,
  length: number,
): boolean {
  if (length <= least_mm) return false;
  const reach = (length - least_mm) / growth;
  for (let k = 0; k < 3; k++) {
    const middle = (xyz[a + k] + xyz[b + k]) / 2;
    around[k] = middle - reach;
    around[3 + k] = middle + reach;
  }
  sought.ax = xyz[a];
  sought.ay = xyz[a + 1];
  sought.az = xyz[a + 2];
  sought.bx = xyz[b];
  sought.by = xyz[b + 1];
  sought.bz = xyz[b + 2];
  sought.length = length;
  lines = own;
  return visitBoxes(tree, around, 0, isShorterAt);
}

/** Whether a line wants shorter edges than the one that is asked for. */
function isShorterAt(line: number): boolean {
  const { ax, ay, az, bx, by, bz, length } = sought;
  const l = lines;
  const i = line * perLine;
  const left = (length - l[i + 6]) / growth;
  if (left <= 0) return false;
  const wx = l[i + 7];
  const wy = l[i + 8];
  const wz = l[i + 9];
  const foot = wx * l[i] + wy * l[i + 1] + wz * l[i + 2];
  // Well beyond the line nothing is looked for; edges along it are cut, or the triangles there would become slivers.
  const beyond = foot - 0.5 * l[i + 6] * Math.sqrt(wx * wx + wy * wy + wz * wz);
  if (wx * ax + wy * ay + wz * az < beyond && wx * bx + wy * by + wz * bz < beyond) return false;
  const ux = l[i + 3] - l[i];
  const uy = l[i + 4] - l[i + 1];
  const uz = l[i + 5] - l[i + 2];
  const px = (ax + bx) / 2 - l[i];
  const py = (ay + by) / 2 - l[i + 1];
  const pz = (az + bz) / 2 - l[i + 2];
  const square = ux * ux + uy * uy + uz * uz;
  const s = square > 0 ? Math.min(1, Math.max(0, (px * ux + py * uy + pz * uz) / square)) : 0;
  const dx = px - s * ux;
  const dy = py - s * uy;
  const dz = pz - s * uz;
  return dx * dx + dy * dy + dz * dz < left * left;
}
