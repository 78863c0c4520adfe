import type { Vec3 } from '@coveline/model';
import type { Pieces } from './pieces.ts';

/** Pieces that hang together. */
export interface Patch {
  /** The piece that stands for it. */
  readonly root: number;
  readonly kind: number;
  readonly area_mm2: number;
  /** Middle of its largest piece, so that it lies on the patch. */
  readonly at_mm: Vec3;
  readonly bounds_mm: readonly [Vec3, Vec3];
  /** Free triangles, xyz per corner, mm. */
  readonly triangles: Float32Array;
}

/** All patches of at least `least_mm2`, and how many smaller ones there are with what area. */
export function patchesOf(
  pieces: Pieces,
  least_mm2: number,
): { readonly patches: readonly Patch[]; readonly small: number; readonly small_mm2: number } {
  const { count, corners } = pieces;
  const areas = new Float64Array(count);
  const counts = new Uint32Array(count);
  const largest = new Int32Array(count).fill(-1);
  const sizes = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    sizes[i] = pieceArea(corners, i * 9);
    const root = pieces.patchOf(i);
    areas[root] += sizes[i];
    counts[root]++;
    if (largest[root] < 0 || sizes[i] > sizes[largest[root]]) largest[root] = i;
  }
  const members = new Map<number, { at: number; list: Uint32Array }>();
  let small = 0;
  let small_mm2 = 0;
  for (let i = 0; i < count; i++) {
    if (counts[i] === 0) continue;
    if (areas[i] >= least_mm2) members.set(i, { at: 0, list: new Uint32Array(counts[i]) });
    else {
      small++;
      small_mm2 += areas[i];
    }
  }
  for (let i = 0; i < count; i++) {
    const patch = members.get(pieces.patchOf(i));
    if (patch) patch.list[patch.at++] = i;
  }
  const patches = [...members].map(([root, { list }]) =>
    patchFrom(pieces, root, areas[root], list, largest[root]),
  );
  return { patches, small, small_mm2 };
}

function patchFrom(
  { corners, kind }: Pieces,
  root: number,
  area_mm2: number,
  list: Uint32Array,
  largest: number,
): Patch {
  const triangles = new Float32Array(list.length * 9);
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < list.length; i++) {
    for (let k = 0; k < 9; k++) {
      const c = corners[list[i] * 9 + k];
      triangles[i * 9 + k] = c;
      if (c < low[k % 3]) low[k % 3] = c;
      if (c > high[k % 3]) high[k % 3] = c;
    }
  }
  const middle = (k: number) =>
    (corners[largest * 9 + k] + corners[largest * 9 + k + 3] + corners[largest * 9 + k + 6]) / 3;
  return {
    root,
    kind: kind[root],
    area_mm2,
    at_mm: [middle(0), middle(1), middle(2)],
    bounds_mm: [
      [low[0], low[1], low[2]],
      [high[0], high[1], high[2]],
    ],
    triangles,
  };
}

/** Of the triangle whose nine coordinates begin at `i`, mm2. */
export function pieceArea(c: ArrayLike<number>, i: number): number {
  const ux = c[i + 3] - c[i];
  const uy = c[i + 4] - c[i + 1];
  const uz = c[i + 5] - c[i + 2];
  const vx = c[i + 6] - c[i];
  const vy = c[i + 7] - c[i + 1];
  const vz = c[i + 8] - c[i + 2];
  return Math.sqrt((uy * vz - uz * vy) ** 2 + (uz * vx - ux * vz) ** 2 + (ux * vy - uy * vx) ** 2) / 2;
}
