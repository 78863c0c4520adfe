import { triangleCount } from '@coveline/model';
import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { eachPiece, pieceNormal } from './facets.ts';
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
  const n = triangleCount(model);
  const field = new Float32Array(n).fill(Number.NaN);
  const reached = new Float64Array(n);
  const unreached = new Float64Array(n);
  const sum = new Float64Array(n);
  const normal = new Float64Array(3);
  let pieces = 0;
  const add = (f: number): void => {
    const w = way[patches.ofPiece[pieces++]];
    if (Number.isNaN(w)) return;
    const area = pieceNormal(normal);
    const t = facets.triangle[f];
    if (w > length_mm) unreached[t] += area;
    else {
      reached[t] += area;
      sum[t] += area * w;
    }
  };
  for (let f = 0; f < facets.count; f++) {
    if (f % 8192 === 0) step(control, 'reach', 0.98);
    eachPiece(facets, f, add);
  }
  for (let t = 0; t < n; t++) {
    if (unreached[t] > reached[t]) field[t] = -1;
    else if (reached[t] > 0) field[t] = sum[t] / reached[t];
  }
  return field;
}
