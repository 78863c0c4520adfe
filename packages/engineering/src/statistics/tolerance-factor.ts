import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { chiSquareQuantile, normalQuantile } from '../numeric/special.ts';
import { confidence } from './inputs.ts';
import { oneSidedFactor, twoSidedFactor } from './tolerance.ts';

export const toleranceFactor = calculation({
  name: 'tolerance-factor',
  title: 'Normal tolerance limits: which value covers nearly all results',
  inputs: {
    count: number('n', 'number of results', '1', { min: 2, max: 10000, whole: true }),
    coverage_pct: number('P', 'share of the results to cover', '%', {
      default: 95,
      min: 50,
      max: 99.999,
      from: 'common practice',
    }),
    confidence_pct: confidence,
    mean: number('m', 'mean of the results, in their unit', '1', {
      default: 0,
      min: -1e12,
      max: 1e12,
      from: 'zero when left empty',
    }),
    deviation: number('s', 'standard deviation of the results', '1', {
      default: 1,
      min: 0,
      max: 1e12,
      from: 'one of its unit',
    }),
  },
  outputs: {
    oneSided: { symbol: 'k_1', label: 'one-sided factor, exact', unit: '1' },
    twoSided: { symbol: 'k_2', label: 'two-sided factor, exact', unit: '1' },
    upper: { symbol: 'U', label: 'upper limit, one-sided', unit: '1' },
    low: { symbol: 'L_2', label: 'lower limit, two-sided', unit: '1' },
    high: { symbol: 'U_2', label: 'upper limit, two-sided', unit: '1' },
    natrella: { symbol: 'k_N', label: 'one-sided approximation of Natrella', unit: '1' },
    howe: { symbol: 'k_H', label: 'two-sided approximation of Howe', unit: '1' },
  },
  equation: [
    'k_1: P(T(n-1, z_P sqrt(n)) <= k_1 sqrt(n)) = c, T noncentral t; U = m + k_1 s',
    'k_2: mean over the sample mean of P(chi2(n-1) >= (n-1) r^2/k_2^2) = c, Phi(z+r) - Phi(z-r) = P',
    'k_N = (z_P + sqrt(z_P^2 - a b))/a, a = 1 - z_c^2/(2(n-1)), b = z_P^2 - z_c^2/n; k_H = z_((1+P)/2) sqrt((n-1)(1+1/n)/chi2(1-c; n-1))',
  ],
  validity: 'Independent, normally distributed results (often their logarithms). Look at the data first.',
  source: 'D. B. Owen (1968); R. E. Odeh, D. B. Owen (1980); M. G. Natrella (1963); W. G. Howe (1969)',
  example: {
    inputs: { count: 43, coverage_pct: 90, confidence_pct: 99 },
    expected: { oneSided: 1.873954, twoSided: 2.222825, natrella: 1.8751896, howe: 2.2173159 },
    tolerance: 5e-7,
    source: 'check value S-12, NIST handbook 7.2.6.3',
  },
  compute({ count: n, coverage_pct, confidence_pct, mean, deviation }) {
    const p = coverage_pct / 100;
    const c = confidence_pct / 100;
    const oneSided = oneSidedFactor(n, p, c);
    const twoSided = twoSidedFactor(n, p, c);
    const zp = normalQuantile(p);
    const zc = normalQuantile(c);
    const a = 1 - zc ** 2 / (2 * (n - 1));
    const root = zp ** 2 - a * (zp ** 2 - zc ** 2 / n);
    const natrellaHolds = a > 0 && root >= 0;
    return {
      values: {
        oneSided,
        twoSided,
        upper: mean + oneSided * deviation,
        low: mean - twoSided * deviation,
        high: mean + twoSided * deviation,
        natrella: natrellaHolds ? (zp + Math.sqrt(root)) / a : oneSided,
        howe:
          normalQuantile((1 + p) / 2) * Math.sqrt(((n - 1) * (1 + 1 / n)) / chiSquareQuantile(1 - c, n - 1)),
      },
      warnings: natrellaHolds
        ? []
        : [
            'The approximation of Natrella does not exist for so few results; the exact factor stands in its place.',
          ],
    };
  },
});
