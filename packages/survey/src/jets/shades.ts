import { type Patch, pieceArea } from '../patchwork/patches.ts';
import type { Tree } from '../tree/tree.ts';
import { setNormal, shaded, turned } from './ask.ts';
import type { NozzleSet } from './nozzle-set.ts';
import { aimAt, blockerOf } from './sight.ts';

/** Pieces of a patch that are asked what shades them. */
const most = 24;

/**
 * Parts that stand between a patch of `part` and nozzles, most shading first: the one nearest to the patch on each line,
 * from pieces spread over it. `lift`: how far off the surface one looks, mm.
 */
export function shadesOf(
  tree: Tree,
  set: NozzleSet,
  part: number,
  { kind, triangles: c }: Patch,
  lift: number,
): readonly number[] {
  if (kind === turned) return [part];
  if (kind !== shaded) return [];
  const weights = new Map<number, number>();
  const normal = new Float64Array(3);
  const count = c.length / 9;
  const every = Math.ceil(count / most);
  for (let piece = 0; piece < count; piece += every) {
    const k = piece * 9;
    setNormal(c, k, normal);
    const [x, y, z] = [0, 1, 2].map((a) => (c[k + a] + c[k + 3 + a] + c[k + 6 + a]) / 3);
    const [nx, ny, nz] = normal;
    for (let i = 0; i < set.nozzles.length; i++) {
      const before = (set.at[i * 3] - x) * nx + (set.at[i * 3 + 1] - y) * ny + (set.at[i * 3 + 2] - z) * nz;
      if (before <= 0 || set.own[i].has(part) || aimAt(set, i, x, y, z) !== 'hit') continue;
      const blocker = blockerOf(tree, set, i, x + nx * lift, y + ny * lift, z + nz * lift);
      if (blocker) weights.set(blocker.part, (weights.get(blocker.part) ?? 0) + pieceArea(c, k));
    }
  }
  return [...weights].sort((a, b) => b[1] - a[1] || a[0] - b[0]).map(([shade]) => shade);
}
