import { triangleCount } from '@coveline/model';
import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import type { Judged } from './judge.ts';
import type { Reach } from './reach.ts';

/**
 * Per triangle of the model, in model order: the mean way to its reached pieces, mm; -1 where most of what counts of
 * it is not reached; NaN where nothing of it counts.
 */
export function fieldOf(
  { model, space, patches }: Reach,
  { way }: Judged,
  length_mm: number,
  control: Control,
): Float32Array {
  const { facets } = space;
  const { firstPiece, ofPiece, halvings } = patches;
  const field = new Float32Array(triangleCount(model)).fill(Number.NaN);
  for (let f = 0; f < facets.count; f++) {
    if (f % 1024 === 0) step(control, 'reach', 0.98);
    let reached = 0;
    let unreached = 0;
    let sum = 0;
    for (let i = firstPiece[f]; i < firstPiece[f + 1]; i++) {
      const w = way[ofPiece[i]];
      const share = 0.5 ** halvings[i];
      if (w > length_mm) unreached += share;
      else if (w <= length_mm) {
        reached += share;
        sum += share * w;
      }
    }
    if (unreached > reached) field[facets.triangle[f]] = -1;
    else if (reached > 0) field[facets.triangle[f]] = sum / reached;
  }
  return field;
}
