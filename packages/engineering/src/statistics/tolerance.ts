/** Factors of normal tolerance intervals, exact by quadrature. */
import { simpson } from '../numeric/quadrature.ts';
import { bisect } from '../numeric/root.ts';
import {
  chiSquareQuantile,
  gammaP,
  logGamma,
  normalCdf,
  normalDensity,
  normalQuantile,
} from '../numeric/special.ts';

/**
 * P(T <= t) of the noncentral t distribution, as the mean of Phi(t s - delta) over s = chi/sqrt(freedom).
 * Simpson's rule over all but 1e-14 of the chi distribution.
 */
export function noncentralT(t: number, freedom: number, delta: number): number {
  const logScale = (1 - freedom / 2) * Math.LN2 - logGamma(freedom / 2);
  const density = (chi: number) =>
    chi === 0
      ? freedom === 1
        ? Math.exp(logScale)
        : 0
      : Math.exp(logScale + (freedom - 1) * Math.log(chi) - (chi * chi) / 2);
  const low = Math.sqrt(chiSquareQuantile(1e-14, freedom));
  const high = Math.sqrt(chiSquareQuantile(1 - 1e-14, freedom));
  return simpson((chi) => normalCdf((t * chi) / Math.sqrt(freedom) - delta) * density(chi), low, high, 1000);
}

/** One-sided factor: mean + k s covers the share p with confidence c (D. B. Owen 1968). */
export function oneSidedFactor(n: number, p: number, c: number): number {
  const delta = normalQuantile(p) * Math.sqrt(n);
  return bisect((k) => noncentralT(k * Math.sqrt(n), n - 1, delta) - c, -10, 500);
}

/** Half width r with Phi(z + r) - Phi(z - r) = p. */
function halfWidth(z: number, p: number): number {
  let r = normalQuantile((1 + p) / 2) + z;
  for (let i = 0; i < 50; i++) {
    const step = (normalCdf(z + r) - normalCdf(z - r) - p) / (normalDensity(z + r) + normalDensity(z - r));
    r -= step;
    if (Math.abs(step) < 1e-14 * r) break;
  }
  return r;
}

/** Two-sided factor: mean -+ k s covers the share p with confidence c (R. E. Odeh, D. B. Owen 1980). */
export function twoSidedFactor(n: number, p: number, c: number): number {
  const steps = 400;
  const reach = 8.5;
  const squares = Array.from(
    { length: steps + 1 },
    (_, i) => halfWidth((reach * i) / steps / Math.sqrt(n), p) ** 2,
  );
  const confidenceOf = (k: number) =>
    2 *
    simpson(
      (x) => {
        const square = squares[Math.round((x / reach) * steps)];
        return normalDensity(x) * (1 - gammaP((n - 1) / 2, ((n - 1) * square) / (k * k) / 2));
      },
      0,
      reach,
      steps,
    );
  return bisect((k) => confidenceOf(k) - c, 1e-3, 1000);
}
