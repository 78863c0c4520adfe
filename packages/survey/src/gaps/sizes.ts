import { type BoxTree, boxTreeOf, visitBoxes } from './box-tree.ts';

/**
 * How long the edges of a wall mesh may be: short along given lines, and the longer the farther from them.
 */
export interface Sizes {
  /** Seven numbers per line: two ends, mm, and the edge length there. */
  readonly lines: Float64Array;
  readonly tree: BoxTree;
  readonly least_mm: number;
}

/** Edges grow by this much per mm of distance: near a border at half its distance, the mesh has two edges up to it. */
const growth = 0.7;
const perLine = 7;

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
const sought: { x: number; y: number; z: number; length: number; lines: Float64Array } = {
  x: 0,
  y: 0,
  z: 0,
  length: 0,
  lines: new Float64Array(0),
};

/** Whether an edge of this length with its middle at xyz is longer than it may be. */
export function isTooLong(
  { lines, tree, least_mm }: Sizes,
  x: number,
  y: number,
  z: number,
  length: number,
): boolean {
  if (length <= least_mm) return false;
  const reach = (length - least_mm) / growth;
  around[0] = x - reach;
  around[1] = y - reach;
  around[2] = z - reach;
  around[3] = x + reach;
  around[4] = y + reach;
  around[5] = z + reach;
  sought.x = x;
  sought.y = y;
  sought.z = z;
  sought.length = length;
  sought.lines = lines;
  return visitBoxes(tree, around, 0, isShorterAt);
}

/** Whether a line wants shorter edges than the one that is asked for. */
function isShorterAt(line: number): boolean {
  const { x, y, z, length, lines: l } = sought;
  const i = line * perLine;
  const left = (length - l[i + 6]) / growth;
  if (left <= 0) return false;
  const ux = l[i + 3] - l[i];
  const uy = l[i + 4] - l[i + 1];
  const uz = l[i + 5] - l[i + 2];
  const px = x - l[i];
  const py = y - l[i + 1];
  const pz = z - l[i + 2];
  const square = ux * ux + uy * uy + uz * uz;
  const s = square > 0 ? Math.min(1, Math.max(0, (px * ux + py * uy + pz * uz) / square)) : 0;
  const dx = px - s * ux;
  const dy = py - s * uy;
  const dz = pz - s * uz;
  return dx * dx + dy * dy + dz * dz < left * left;
}
