import { triangleCount } from '@coveline/model';
import { facetArea } from './facets.ts';
import type { Judged } from './judge.ts';
import type { Reach } from './reach.ts';

/**
 * Per triangle of the model, in model order: the mean way to its reached pieces, mm; -1 where most of what counts of
 * it is not reached; NaN where nothing of it counts.
 */
export function fieldOf({ model, space, patches }: Reach, { way }: Judged, length_mm: number): Float32Array {
  const { facets } = space;
  const n = triangleCount(model);
  const field = new Float32Array(n).fill(Number.NaN);
  const reached = new Float64Array(n);
  const unreached = new Float64Array(n);
  const sum = new Float64Array(n);
  for (let f = 0; f < facets.count; f++) {
    const w = way[patches.ofFacet[f]];
    if (Number.isNaN(w)) continue;
    const area = facetArea(facets.corners, f);
    const t = facets.triangle[f];
    if (w > length_mm) unreached[t] += area;
    else {
      reached[t] += area;
      sum[t] += area * w;
    }
  }
  for (let t = 0; t < n; t++) {
    if (unreached[t] > reached[t]) field[t] = -1;
    else if (reached[t] > 0) field[t] = sum[t] / reached[t];
  }
  return field;
}
