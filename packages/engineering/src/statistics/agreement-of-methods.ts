import { calculation, refuse } from '../calculation/calculation.ts';
import { list } from '../calculation/inputs.ts';
import { studentQuantile } from '../numeric/special.ts';

export const agreementOfMethods = calculation({
  name: 'agreement-of-methods',
  title: 'Do two methods measure the same? (Bland and Altman 1986)',
  inputs: {
    first: list('x', 'results of the first method', '1', { minCount: 3 }),
    second: list('y', 'results of the second method on the same samples', '1', { minCount: 3 }),
  },
  outputs: {
    bias: { symbol: 'b', label: 'mean difference', unit: '1' },
    low: { symbol: 'b - 1.96 s', label: 'lower limit of agreement', unit: '1' },
    high: { symbol: 'b + 1.96 s', label: 'upper limit of agreement', unit: '1' },
    deviation: { symbol: 's', label: 'standard deviation of the differences', unit: '1' },
    biasError: { symbol: 'e', label: 'half width of the 95 % limits of the bias', unit: '1' },
  },
  equation: [
    'd = x - y, b = mean d, s = standard deviation of d',
    'limits b -+ 1.96 s; e = t(0.975; n-1) s/sqrt(n)',
  ],
  validity:
    'Paired results, differences near normal and not growing with the size (else take logarithms). Correlation is no agreement.',
  source: 'J. M. Bland, D. G. Altman, Lancet 1 (1986) 307',
  example: {
    // d = 1, -1, 1, -1, 0: b 0, s 1, e = 2.776445/sqrt(5).
    inputs: { first: [2, 1, 4, 3, 5], second: [1, 2, 3, 4, 5] },
    expected: { bias: 0, deviation: 1, high: 1.959964, biasError: 1.241664 },
    tolerance: 1e-6,
    source: 'by hand',
  },
  compute({ first, second }) {
    if (first.length !== second.length) return refuse('Give one result of each method a sample');
    const d = first.map((x, i) => x - second[i]);
    const n = d.length;
    const bias = d.reduce((a, b) => a + b, 0) / n;
    const deviation = Math.sqrt(d.reduce((a, b) => a + (b - bias) ** 2, 0) / (n - 1));
    const reach = 1.959963984540054 * deviation;
    return {
      values: {
        bias,
        low: bias - reach,
        high: bias + reach,
        deviation,
        biasError: (studentQuantile(0.975, n - 1) * deviation) / Math.sqrt(n),
      },
    };
  },
});
