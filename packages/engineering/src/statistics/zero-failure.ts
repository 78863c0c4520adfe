import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { binomialCdf } from '../numeric/special.ts';
import { confidence } from './inputs.ts';

/** Smallest n with P(X <= accept; n, p) <= 1 - c. */
function sampleSize(rate: number, c: number, accept: number): number {
  if (accept === 0) return Math.ceil(Math.log1p(-c) / Math.log1p(-rate) - 1e-9);
  let high = 1;
  while (binomialCdf(accept, high, rate) > 1 - c) high *= 2;
  let low = high / 2;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (binomialCdf(accept, middle, rate) > 1 - c) low = middle;
    else high = middle;
  }
  return high;
}

export const sampleSizeForRate = calculation({
  name: 'sample-size-for-rate',
  title: 'How many units show that a rate is below a limit',
  inputs: {
    rate: number('p', 'rate that must be excluded', '1', { min: 1e-9, max: 0.99 }),
    confidence_pct: confidence,
    accept: number('a', 'positives that are still accepted', '1', {
      default: 0,
      min: 0,
      max: 1000,
      whole: true,
      from: 'none when left empty',
    }),
  },
  outputs: {
    units: { symbol: 'n', label: 'units to test', unit: '1' },
    passAtTenth: { symbol: 'P_10', label: 'probability to pass when the true rate is a tenth', unit: '1' },
  },
  equation: ['smallest n with P(X <= a; n, p) <= 1 - c; a = 0: n = ln(1 - c)/ln(1 - p), rounded up'],
  validity: 'Independent units that stand for the process; a perfect test method.',
  source: 'Binomial distribution',
  example: {
    inputs: { rate: 1e-4 },
    expected: { units: 29956 },
    tolerance: 0,
    source: 'worked problem WP5, step 4',
  },
  compute({ rate, confidence_pct, accept }) {
    const units = sampleSize(rate, confidence_pct / 100, accept);
    return { values: { units, passAtTenth: binomialCdf(accept, units, rate / 10) } };
  },
});
