import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { normalCdf, normalQuantile } from '../numeric/special.ts';

export const capability = calculation({
  name: 'process-capability',
  title: 'Process capability Cp and Cpk',
  inputs: {
    lower: number('LSL', 'lower limit', '1', { min: -1e12, max: 1e12 }),
    upper: number('USL', 'upper limit', '1', { min: -1e12, max: 1e12 }),
    mean: number('m', 'mean', '1', { min: -1e12, max: 1e12 }),
    deviation: number('s', 'standard deviation', '1', { min: 1e-12, max: 1e12 }),
    count: number('n', 'number of results', '1', {
      default: 50,
      min: 2,
      max: 1e6,
      whole: true,
      from: 'an example: give your own',
    }),
  },
  outputs: {
    cpk: { symbol: 'Cpk', label: 'capability with the position of the mean', unit: '1' },
    cp: { symbol: 'Cp', label: 'capability', unit: '1' },
    cpkLower: { symbol: 'Cpk_l', label: '95 % lower limit of Cpk', unit: '1' },
    outside_pct: { symbol: 'P', label: 'share outside, normal', unit: '%' },
  },
  equation: [
    'Cp = (USL - LSL)/(6 s), Cpk = min(USL - m, m - LSL)/(3 s)',
    'Cpk_l = Cpk - 1.645 sqrt(1/(9 n) + Cpk^2/(2(n-1)))',
  ],
  validity: 'A stable, normal process. Without stability the number says nothing about tomorrow.',
  source: 'V. E. Kane, J. Qual. Technol. 18 (1986) 41; A. F. Bissell, Appl. Stat. 39 (1990) 331',
  example: {
    inputs: { lower: 8, upper: 20, mean: 16, deviation: 2 },
    expected: { cp: 1, cpk: 0.66667 },
    tolerance: 6e-6,
    source: 'check value S-18',
  },
  compute({ lower, upper, mean, deviation, count }) {
    if (upper <= lower) return refuse('The upper limit must be above the lower one');
    const cpk = Math.min(upper - mean, mean - lower) / (3 * deviation);
    return {
      values: {
        cpk,
        cp: (upper - lower) / (6 * deviation),
        cpkLower: cpk - normalQuantile(0.95) * Math.sqrt(1 / (9 * count) + cpk ** 2 / (2 * (count - 1))),
        outside_pct: 100 * (normalCdf((lower - mean) / deviation) + normalCdf((mean - upper) / deviation)),
      },
    };
  },
});
