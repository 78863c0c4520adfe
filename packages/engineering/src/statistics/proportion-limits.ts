import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { betaQuantile } from '../numeric/special.ts';
import { confidence } from './inputs.ts';

export const proportionLimits = calculation({
  name: 'proportion-limits',
  title: 'Exact limits of a proportion (Clopper and Pearson 1934)',
  inputs: {
    positives: number('x', 'positives', '1', { min: 0, max: 1e9, whole: true }),
    tested: number('n', 'tested', '1', { min: 1, max: 1e9, whole: true }),
    confidence_pct: confidence,
  },
  outputs: {
    upper: { symbol: 'p_u', label: 'upper limit, one-sided', unit: '1' },
    low: { symbol: 'p_l2', label: 'lower limit, two-sided', unit: '1' },
    high: { symbol: 'p_u2', label: 'upper limit, two-sided', unit: '1' },
    estimate: { symbol: 'p', label: 'estimate', unit: '1' },
    ruleOfThree: { symbol: '3/n', label: 'rule of three, for no positives', unit: '1' },
  },
  equation: [
    'P(X <= x; n, p_u) = 1 - c; two-sided (1 - c)/2 on each side',
    'p_u = Beta quantile c of (x + 1, n - x); x = 0: 1 - (1 - c)^(1/n)',
  ],
  validity: 'Independent units from one process. Conservative: the true confidence is at least c.',
  source: 'C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404',
  example: {
    inputs: { positives: 0, tested: 3000 },
    expected: { upper: 0.000998079, high: 0.00122887 },
    tolerance: 3e-6,
    source: 'worked problem WP5, step 3',
  },
  compute({ positives: x, tested: n, confidence_pct }) {
    if (x > n) return refuse('There are more positives than tested units');
    const c = confidence_pct / 100;
    const upperAt = (p: number) =>
      x === n ? 1 : x === 0 ? -Math.expm1(Math.log1p(-p) / n) : betaQuantile(p, x + 1, n - x);
    const half = (1 - c) / 2;
    return {
      values: {
        upper: upperAt(c),
        low: x === 0 ? 0 : x === n ? half ** (1 / n) : betaQuantile(half, x, n - x + 1),
        high: upperAt(1 - half),
        estimate: x / n,
        ruleOfThree: Math.min(1, 3 / n),
      },
      warnings: x === 0 ? ['No positives shows a limit, never zero.'] : [],
    };
  },
});
