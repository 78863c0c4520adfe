import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { poissonCdf } from '../numeric/special.ts';

export const countChart = calculation({
  name: 'chart-counts',
  title: 'Limits of a chart of counts (c-chart), normal and exact',
  inputs: {
    mean: number('m', 'mean count', '1', { min: 0, max: 1e6 }),
    tail_pct: number('P', 'probability of the exact limit', '%', {
      default: 99.865,
      min: 90,
      max: 99.9999,
      from: 'three standard deviations of a normal distribution',
    }),
  },
  outputs: {
    upper: { symbol: 'UCL', label: 'upper limit, m + 3 sqrt(m)', unit: '1' },
    lower: { symbol: 'LCL', label: 'lower limit, not below 0', unit: '1' },
    exact: { symbol: 'c_P', label: 'smallest count that covers the probability, Poisson', unit: '1' },
  },
  equation: ['UCL = m + 3 sqrt(m), LCL = max(0, m - 3 sqrt(m))', 'c_P: smallest c with P(X <= c; m) >= P'],
  validity:
    'Poisson counts on equal areas. Below a mean of about 9 the normal limits are poor: use the exact one.',
  source: 'W. A. Shewhart (1931); Poisson distribution',
  example: {
    inputs: { mean: 4 },
    expected: { upper: 10, lower: 0, exact: 11 },
    tolerance: 0,
    source: 'check value S-19',
  },
  compute({ mean, tail_pct }) {
    const root = 3 * Math.sqrt(mean);
    let exact = Math.floor(mean);
    while (exact > 0 && poissonCdf(exact - 1, mean) >= tail_pct / 100) exact--;
    while (poissonCdf(exact, mean) < tail_pct / 100) exact++;
    return { values: { upper: mean + root, lower: Math.max(0, mean - root), exact } };
  },
});
