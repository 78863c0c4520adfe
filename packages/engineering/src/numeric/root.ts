/** Root of a continuous function between two points of opposite sign: bisection, to the last bits. */
export function bisect(f: (x: number) => number, low: number, high: number): number {
  const sign = Math.sign(f(low));
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (Math.sign(f(middle)) === sign) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
