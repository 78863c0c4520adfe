import type { Columns } from './columns.ts';
import type { Passages } from './passages.ts';

/** Intervals to which air passes below a height. */
export function eachNeighbour(
  { grid: { nu, nv }, columnOf, alongU, alongV }: Columns,
  n: number,
  below: number,
  visit: (m: number) => void,
): void {
  const c = columnOf[n];
  const i = c % nu;
  const j = (c - i) / nu;
  const look = ({ first, a, b, height }: Passages, strip: number): void => {
    for (let e = first[strip]; e < first[strip + 1]; e++) {
      if (height[e] >= below) continue;
      if (a[e] === n) visit(b[e]);
      else if (b[e] === n) visit(a[e]);
    }
  };
  look(alongU, c);
  if (i > 0) look(alongU, c - 1);
  look(alongV, i * nv + j);
  if (j > 0) look(alongV, i * nv + j - 1);
}
