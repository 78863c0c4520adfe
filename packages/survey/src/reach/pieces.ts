import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { eachPiece, piece } from './facets.ts';
import type { Patches } from './patches.ts';
import type { ReachSpace } from './space.ts';

/**
 * Per group of patches: nine coordinates for each of its triangles, in the frame of the model. A facet whose pieces all
 * belong to one group is drawn whole.
 */
export function trianglesOf(
  { facets, lattice }: ReachSpace,
  { count, firstPiece, ofPiece }: Patches,
  groups: readonly { readonly members: readonly number[] }[],
  control: Control,
): Float32Array[] {
  const groupOf = new Int32Array(count).fill(-1);
  groups.forEach(({ members }, g) => {
    for (const p of members) groupOf[p] = g;
  });
  /** The group of all pieces of a facet; -1 where that is none, -2 where they differ. */
  const groupOfAll = (f: number): number => {
    const first = groupOf[ofPiece[firstPiece[f]]];
    for (let i = firstPiece[f] + 1; i < firstPiece[f + 1]; i++) if (groupOf[ofPiece[i]] !== first) return -2;
    return first;
  };
  const sizes = new Uint32Array(groups.length);
  for (let f = 0; f < facets.count; f++) {
    if (f % 1024 === 0) step(control, 'reach', 0.97);
    const all = groupOfAll(f);
    if (all >= 0) sizes[all]++;
    if (all !== -2) continue;
    for (let i = firstPiece[f]; i < firstPiece[f + 1]; i++) {
      const g = groupOf[ofPiece[i]];
      if (g >= 0) sizes[g]++;
    }
  }
  const out = groups.map((_, g) => new Float32Array(9 * sizes[g]));
  const used = new Uint32Array(groups.length);
  let next = 0;
  const draw = (): void => {
    if (next % 16384 === 0) step(control, 'reach', 0.97);
    const g = groupOf[ofPiece[next++]];
    if (g < 0) return;
    for (let i = 0; i < 9; i++) out[g][used[g]++] = piece[i] + lattice.corner[i % 3];
  };
  for (let f = 0; f < facets.count; f++) {
    if (f % 1024 === 0) step(control, 'reach', 0.97);
    const all = groupOfAll(f);
    if (all === -2) {
      next = firstPiece[f];
      eachPiece(facets, f, draw);
    } else if (all >= 0) {
      for (let i = 0; i < 9; i++) out[all][used[all]++] = facets.corners[f * 9 + i] + lattice.corner[i % 3];
    }
  }
  return out;
}
