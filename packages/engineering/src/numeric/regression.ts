export interface Line {
  readonly slope: number;
  readonly intercept: number;
  /** Coefficient of determination. */
  readonly r2: number;
}

/** Least squares through points, y on x. At least two different x are needed. */
export function fitLine(x: readonly number[], y: readonly number[]): Line {
  const n = x.length;
  const mx = x.reduce((a, b) => a + b, 0) / n;
  const my = y.reduce((a, b) => a + b, 0) / n;
  let sxx = 0;
  let sxy = 0;
  let syy = 0;
  for (let i = 0; i < n; i++) {
    sxx += (x[i] - mx) ** 2;
    sxy += (x[i] - mx) * (y[i] - my);
    syy += (y[i] - my) ** 2;
  }
  const slope = sxy / sxx;
  return { slope, intercept: my - slope * mx, r2: syy === 0 ? 1 : sxy ** 2 / (sxx * syy) };
}
