/** Simpson's rule with an even number of steps. */
export function simpson(f: (x: number) => number, low: number, high: number, steps: number): number {
  const h = (high - low) / steps;
  let sum = f(low) + f(high);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * f(low + i * h);
  return (sum * h) / 3;
}
