/**
 * The part of a triangle that lies before another one, at heights between two bounds: a convex polygon, by cutting one
 * side after the other (Sutherland and Hodgman 1974). Reuse one object for many.
 */
export interface Overlap {
  count: number;
  /** Corners, xyz each, mm. */
  readonly xyz: Float64Array;
  /** Height of each corner over the plane of the triangle below. */
  readonly height: Float64Array;
  /** What the edge from each corner to the next lies on. */
  readonly edge: Uint8Array;
}

/** 0 to 2: an edge of the triangle above. */
export const onLowest = 3;
export const onHighest = 4;
/** And the two numbers after it: an edge of the triangle below. */
export const onOutline = 5;

const mostCorners = 12;

export function newOverlap(): Overlap {
  return {
    count: 0,
    xyz: new Float64Array(3 * mostCorners),
    height: new Float64Array(mostCorners),
    edge: new Uint8Array(mostCorners),
  };
}

const spare = newOverlap();

/**
 * Of the triangle whose nine coordinates start at `b`, what stands over the one at `a` (unit normal from `na` on),
 * from `lowest` to `highest` mm above its plane. False when nothing does.
 */
export function overlapOf(
  c: Float64Array,
  a: number,
  b: number,
  n: Float64Array,
  na: number,
  lowest: number,
  highest: number,
  out: Overlap,
): boolean {
  const nx = n[na];
  const ny = n[na + 1];
  const nz = n[na + 2];
  const foot = nx * c[a] + ny * c[a + 1] + nz * c[a + 2];
  out.count = 3;
  for (let k = 0; k < 3; k++) {
    for (let i = 0; i < 3; i++) out.xyz[3 * k + i] = c[b + 3 * k + i];
    out.height[k] = nx * c[b + 3 * k] + ny * c[b + 3 * k + 1] + nz * c[b + 3 * k + 2] - foot;
    out.edge[k] = k;
  }
  cut(out, spare, 0, 0, 0, 1, lowest, onLowest);
  cut(spare, out, 0, 0, 0, -1, -highest, onHighest);
  for (let k = 0; k < 3; k++) {
    const i = a + 3 * k;
    const j = a + 3 * ((k + 1) % 3);
    const ex = c[j] - c[i];
    const ey = c[j + 1] - c[i + 1];
    const ez = c[j + 2] - c[i + 2];
    // Seen from the air the triangle lies to the left of its edges.
    const ux = ny * ez - nz * ey;
    const uy = nz * ex - nx * ez;
    const uz = nx * ey - ny * ex;
    const [from, to] = k === 1 ? [spare, out] : [out, spare];
    cut(from, to, ux, uy, uz, 0, ux * c[i] + uy * c[i + 1] + uz * c[i + 2], onOutline + k);
  }
  copy(spare, out);
  return out.count > 2;
}

/** Keeps what has `ux x + uy y + uz z + rise * height >= least`. */
function cut(
  from: Overlap,
  to: Overlap,
  ux: number,
  uy: number,
  uz: number,
  rise: number,
  least: number,
  label: number,
): void {
  to.count = 0;
  const { xyz, height, edge, count } = from;
  for (let i = 0; i < count; i++) {
    const j = i + 1 === count ? 0 : i + 1;
    const p = ux * xyz[3 * i] + uy * xyz[3 * i + 1] + uz * xyz[3 * i + 2] + rise * height[i] - least;
    const q = ux * xyz[3 * j] + uy * xyz[3 * j + 1] + uz * xyz[3 * j + 2] + rise * height[j] - least;
    if (p >= 0) add(to, from, i, i, 0, edge[i]);
    if (p >= 0 === q >= 0) continue;
    // Leaving: the new edge runs along the cut. Entering: it is the rest of the old one.
    add(to, from, i, j, p / (p - q), p >= 0 ? label : edge[i]);
  }
}

function add(to: Overlap, from: Overlap, i: number, j: number, s: number, label: number): void {
  if (to.count === mostCorners) return;
  const at = to.count++;
  for (let k = 0; k < 3; k++) {
    to.xyz[3 * at + k] = from.xyz[3 * i + k] + s * (from.xyz[3 * j + k] - from.xyz[3 * i + k]);
  }
  to.height[at] = from.height[i] + s * (from.height[j] - from.height[i]);
  to.edge[at] = label;
}

function copy(from: Overlap, to: Overlap): void {
  to.count = from.count;
  to.xyz.set(from.xyz);
  to.height.set(from.height);
  to.edge.set(from.edge);
}
