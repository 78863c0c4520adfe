import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simpson } from './quadrature.ts';
import { normalSource, uniformSource } from './random.ts';
import { fitLine } from './regression.ts';
import { bisect } from './root.ts';
import {
  betaCdf,
  betaQuantile,
  binomialCdf,
  chiSquareQuantile,
  gammaP,
  gammaQuantile,
  logGamma,
  normalCdf,
  normalQuantile,
  poissonCdf,
  studentQuantile,
} from './special.ts';

describe('distributions', () => {
  it('agree with slow sums and integrals', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 1, max: 999 }),
        (n, k, permille) => {
          fc.pre(k <= n);
          const p = permille / 1000;
          let sum = 0;
          for (let i = 0; i <= k; i++)
            sum += Math.exp(
              logGamma(n + 1) -
                logGamma(i + 1) -
                logGamma(n - i + 1) +
                i * Math.log(p) +
                (n - i) * Math.log1p(-p),
            );
          expect(Math.abs(binomialCdf(k, n, p) - sum)).toBeLessThan(1e-11);
          const mean = n * p;
          let poisson = 0;
          for (let i = 0; i <= k; i++) poisson += Math.exp(i * Math.log(mean) - mean - logGamma(i + 1));
          expect(Math.abs(poissonCdf(k, mean) - poisson)).toBeLessThan(1e-11);
        },
      ),
      { seed: 21, numRuns: 200 },
    );
  });

  it('quantiles undo the distribution', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 999 }),
        fc.integer({ min: 1, max: 80 }),
        fc.integer({ min: 1, max: 80 }),
        (permille, a, b) => {
          const p = permille / 1000;
          expect(Math.abs(betaCdf(betaQuantile(p, a, b), a, b) - p)).toBeLessThan(1e-10);
          expect(Math.abs(gammaP(a, gammaQuantile(p, a)) - p)).toBeLessThan(1e-10);
          expect(Math.abs(normalCdf(normalQuantile(p)) - p)).toBeLessThan(1e-12);
        },
      ),
      { seed: 22, numRuns: 200 },
    );
  });

  it('meet printed tables (Abramowitz and Stegun, tables 26; printed digits)', () => {
    expect(normalQuantile(0.975)).toBeCloseTo(1.959964, 6);
    expect(studentQuantile(0.975, 10)).toBeCloseTo(2.228, 3);
    expect(studentQuantile(0.05, 4)).toBeCloseTo(-2.132, 3);
    expect(studentQuantile(0.5, 4)).toBe(0);
    expect(chiSquareQuantile(0.95, 10)).toBeCloseTo(18.307, 3);
    expect(logGamma(11)).toBeCloseTo(Math.log(3628800), 12);
  });
});

describe('small numerics', () => {
  it('Simpson is exact for cubics, bisection finds a root to the last bits', () => {
    expect(simpson((x) => x ** 3 - x, -1, 3, 2)).toBeCloseTo(16, 12);
    expect(bisect((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
    expect(bisect((x) => 2 - x * x, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
  });

  it('a line through points of a line is that line', () => {
    const line = fitLine([0, 1, 4], [3, 5, 11]);
    expect(line.slope).toBeCloseTo(2, 12);
    expect(line.intercept).toBeCloseTo(3, 12);
    expect(line.r2).toBeCloseTo(1, 12);
  });

  it('random numbers: the same for a seed, mean and spread as they should be (seed 5, 200 000 draws)', () => {
    const again = uniformSource(5);
    const uniform = uniformSource(5);
    const n = 200000;
    let sum = 0;
    let sound = true;
    for (let i = 0; i < n; i++) {
      const x = uniform();
      sound &&= x === again() && x >= 0 && x < 1;
      sum += x;
    }
    expect(sound).toBe(true);
    // Five standard errors.
    expect(Math.abs(sum / n - 0.5)).toBeLessThan((5 * Math.sqrt(1 / 12)) / Math.sqrt(n));
    const normal = normalSource(uniformSource(5));
    let square = 0;
    for (let i = 0; i < n; i++) square += normal() ** 2;
    expect(Math.abs(square / n - 1)).toBeLessThan((5 * Math.SQRT2) / Math.sqrt(n));
  });
});
