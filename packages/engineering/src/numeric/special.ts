/** Special functions and distributions, on `@stdlib` (double precision, ports of Boost and Cephes). */
import betainc from '@stdlib/math-base-special-betainc';
import betaincinv from '@stdlib/math-base-special-betaincinv';
import erfc from '@stdlib/math-base-special-erfc';
import erfcinv from '@stdlib/math-base-special-erfcinv';
import gammainc from '@stdlib/math-base-special-gammainc';
import gammaincinv from '@stdlib/math-base-special-gammaincinv';
import gammaln from '@stdlib/math-base-special-gammaln';

export const logGamma: (x: number) => number = gammaln;

export function normalCdf(z: number): number {
  return erfc(-z / Math.SQRT2) / 2;
}

export function normalQuantile(p: number): number {
  return -Math.SQRT2 * erfcinv(2 * p);
}

export function normalDensity(z: number): number {
  return Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** Lower regularised incomplete gamma function P(shape, x). */
export function gammaP(shape: number, x: number): number {
  return gammainc(x, shape, true, false);
}

/** x with P(shape, x) = p. */
export function gammaQuantile(p: number, shape: number): number {
  return gammaincinv(p, shape, false);
}

export function chiSquareQuantile(p: number, freedom: number): number {
  return 2 * gammaQuantile(p, freedom / 2);
}

/** Quantile of the beta distribution. */
export function betaQuantile(p: number, a: number, b: number): number {
  return betaincinv(p, a, b, false);
}

/** Regularised incomplete beta function. */
export function betaCdf(x: number, a: number, b: number): number {
  return betainc(x, a, b, true, false);
}

export function binomialCdf(k: number, n: number, p: number): number {
  if (k < 0) return 0;
  if (k >= n) return 1;
  return betainc(p, k + 1, n - k, true, true);
}

export function poissonCdf(k: number, mean: number): number {
  if (k < 0) return 0;
  return mean === 0 ? 1 : gammainc(mean, Math.floor(k) + 1, true, true);
}

/** Quantile of Student's t. */
export function studentQuantile(p: number, freedom: number): number {
  if (p === 0.5) return 0;
  const tail = 2 * Math.min(p, 1 - p);
  const x = betaQuantile(tail, freedom / 2, 0.5);
  const t = Math.sqrt((freedom * (1 - x)) / x);
  return p > 0.5 ? t : -t;
}
