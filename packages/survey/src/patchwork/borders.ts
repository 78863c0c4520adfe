/**
 * What touches one edge from one side: triples from, to, number, with from and to between 0 and 1 along the edge, in
 * growing order. Kinds that are not gathered leave nothing.
 */
export type Border = readonly number[];

/** Borders of the edges of a triangle: from its first to its second, second to third and third to first corner. */
export type Borders = readonly [Border, Border, Border];

export const nothing: Border = [];
export const noBorders: Borders = [nothing, nothing, nothing];

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

/** What touches a stretch of the edge, as the border of that stretch. */
export function stretch(border: Border, from: number, to: number): Border {
  if (from === 0 && to === 1) return border;
  const out: number[] = [];
  for (let i = 0; i < border.length; i += 3) {
    const low = (Math.max(border[i], from) - from) / (to - from);
    const high = (Math.min(border[i + 1], to) - from) / (to - from);
    if (high > low) out.push(low, high, border[i + 2]);
  }
  return out;
}

/** Shorter contacts are a matter of the last digit. */
const least = 1e-9;

/**
 * Calls `contact` for every two that touch across an edge, with the places of both in their borders and the stretch
 * along the first; the two sides run along the edge in opposite directions.
 */
export function meet(
  a: Border,
  b: Border,
  contact: (i: number, j: number, low: number, high: number) => void,
): void {
  let j = b.length - 3;
  for (let i = 0; i < a.length && j >= 0; ) {
    const low = Math.max(a[i], 1 - b[j + 1]);
    const high = Math.min(a[i + 1], 1 - b[j]);
    if (high - low > least) contact(i, j, low, high);
    if (a[i + 1] < 1 - b[j]) i += 3;
    else j -= 3;
  }
}
