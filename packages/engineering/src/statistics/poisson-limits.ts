import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { chiSquareQuantile } from '../numeric/special.ts';
import { confidence } from './inputs.ts';

export const poissonLimits = calculation({
  name: 'poisson-limits',
  title: 'Exact limits of a count (Garwood 1936), and of its density',
  inputs: {
    count: number('x', 'colonies or particles counted', '1', { min: 0, max: 1e9, whole: true }),
    exposure: number('v', 'volume, area or share that was counted, in your unit', '1', {
      default: 1,
      min: 1e-12,
      max: 1e12,
      from: 'one of its unit',
    }),
    confidence_pct: confidence,
  },
  outputs: {
    upper: { symbol: 'm_u', label: 'upper limit of the count, one-sided', unit: '1' },
    low: { symbol: 'm_l2', label: 'lower limit, two-sided', unit: '1' },
    high: { symbol: 'm_u2', label: 'upper limit, two-sided', unit: '1' },
    density: { symbol: 'x/v', label: 'count per unit', unit: '1' },
    densityUpper: { symbol: 'm_u/v', label: 'upper limit per unit, one-sided', unit: '1' },
  },
  equation: ['m_l2 = chi2((1-c)/2; 2x)/2, m_u2 = chi2(1-(1-c)/2; 2x+2)/2, m_u = chi2(c; 2x+2)/2'],
  validity: 'Randomly spread, independent. Colonies in clumps vary more.',
  source: 'F. Garwood, Biometrika 28 (1936) 437',
  example: {
    inputs: { count: 5 },
    expected: { low: 1.623486, high: 11.668332 },
    tolerance: 3e-7,
    source: 'check value S-04-5',
  },
  compute({ count: x, exposure, confidence_pct }) {
    const c = confidence_pct / 100;
    const half = (1 - c) / 2;
    const upper = chiSquareQuantile(c, 2 * x + 2) / 2;
    return {
      values: {
        upper,
        low: x === 0 ? 0 : chiSquareQuantile(half, 2 * x) / 2,
        high: chiSquareQuantile(1 - half, 2 * x + 2) / 2,
        density: x / exposure,
        densityUpper: upper / exposure,
      },
      warnings: x === 0 ? ['No colony shows a limit, never zero.'] : [],
    };
  },
});
