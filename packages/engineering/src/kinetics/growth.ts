/** Growth by the square-root model over a temperature that runs in straight lines. */

/** Integral over a step of ((T - T_min)/(T_ref - T_min))^2, nil below T_min, in the unit of `duration`. */
export function growthStep(
  duration: number,
  a: number,
  b: number,
  minimum: number,
  reference: number,
): number {
  const scale = reference - minimum;
  const u = (a - minimum) / scale;
  const v = (b - minimum) / scale;
  if (u <= 0 && v <= 0) return 0;
  if (u >= 0 && v >= 0) return (duration * (u * u + u * v + v * v)) / 3;
  const top = Math.max(u, v);
  return (duration * (top / Math.abs(v - u)) * top * top) / 3;
}

/** Decimal logarithm of the density after so many generations, with a ceiling (logistic growth). */
export function grownTo(start: number, ceiling: number, generations: number): number {
  return ceiling - Math.log10(1 + (10 ** (ceiling - start) - 1) * 2 ** -generations);
}
