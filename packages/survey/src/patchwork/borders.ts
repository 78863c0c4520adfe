import type { Pieces } from './pieces.ts';

/**
 * What touches one edge from one side: triples from, to, piece, with from and to between 0 and 1 along the edge, in
 * growing order. Kinds that are not gathered leave nothing.
 */
export type Border = readonly number[];

/** Borders of the edges of a triangle: from its first to its second, second to third and third to first corner. */
export type Borders = readonly [Border, Border, Border];

export const nothing: Border = [];

/** The border of the first half of an edge and that of the second one, as the border of the whole. */
export function halves(first: Border, second: Border): Border {
  if (first.length === 0 && second.length === 0) return nothing;
  const out: number[] = [];
  for (let i = 0; i < first.length; i += 3) out.push(first[i] / 2, first[i + 1] / 2, first[i + 2]);
  for (let i = 0; i < second.length; i += 3) {
    out.push(0.5 + second[i] / 2, 0.5 + second[i + 1] / 2, second[i + 2]);
  }
  return out;
}

/** Shorter contacts are a matter of the last digit. */
const least = 1e-9;

/** Joins pieces of one kind that touch across an edge; the two sides run along it in opposite directions. */
export function sew(pieces: Pieces, a: Border, b: Border): void {
  let j = b.length - 3;
  for (let i = 0; i < a.length && j >= 0; ) {
    const low = Math.max(a[i], 1 - b[j + 1]);
    const high = Math.min(a[i + 1], 1 - b[j]);
    if (high - low > least && pieces.kind[a[i + 2]] === pieces.kind[b[j + 2]]) {
      pieces.join(a[i + 2], b[j + 2]);
    }
    if (a[i + 1] < 1 - b[j]) i += 3;
    else j -= 3;
  }
}
