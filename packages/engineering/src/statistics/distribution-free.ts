import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { confidence } from './inputs.ts';

export const distributionFree = calculation({
  name: 'distribution-free-tolerance',
  title: 'How many results until their largest covers nearly all, without assuming a distribution',
  inputs: {
    coverage_pct: number('P', 'share to cover', '%', {
      default: 95,
      min: 1,
      max: 99.9999,
      from: 'common practice',
    }),
    confidence_pct: confidence,
  },
  outputs: {
    oneSided: { symbol: 'n_1', label: 'results, so that the largest is an upper limit', unit: '1' },
    twoSided: { symbol: 'n_2', label: 'results, so that smallest and largest are both limits', unit: '1' },
  },
  equation: ['n_1: 1 - P^n >= c', 'n_2: 1 - n P^(n-1) + (n-1) P^n >= c'],
  validity: 'Independent results of one process of any continuous distribution.',
  source: 'S. S. Wilks, Ann. Math. Stat. 12 (1941) 91',
  example: {
    inputs: {},
    expected: { oneSided: 59, twoSided: 93 },
    tolerance: 0,
    source: 'check value S-16',
  },
  compute({ coverage_pct, confidence_pct }) {
    const p = coverage_pct / 100;
    const c = confidence_pct / 100;
    const oneSided = Math.ceil(Math.log1p(-c) / Math.log(p) - 1e-9);
    const reached = (n: number) => 1 - n * p ** (n - 1) + (n - 1) * p ** n >= c;
    let high = 2;
    while (!reached(high)) high *= 2;
    let low = 1;
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (reached(middle)) high = middle;
      else low = middle;
    }
    return { values: { oneSided, twoSided: high } };
  },
});
