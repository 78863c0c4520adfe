import { calculation, refuse } from '../calculation/calculation.ts';
import { list, number } from '../calculation/inputs.ts';
import { binomialCdf, studentQuantile } from '../numeric/special.ts';

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

export const kappa = calculation({
  name: 'agreement-yes-no',
  title: "Do two yes/no methods agree? (Cohen's kappa 1960)",
  inputs: {
    bothYes: number('a', 'both positive', '1', { min: 0, max: 1e6, whole: true }),
    onlyFirst: number('b', 'only the first positive', '1', { min: 0, max: 1e6, whole: true }),
    onlySecond: number('c', 'only the second positive', '1', { min: 0, max: 1e6, whole: true }),
    bothNo: number('d', 'both negative', '1', { min: 0, max: 1e6, whole: true }),
  },
  outputs: {
    kappa: { symbol: 'kappa', label: 'agreement beyond chance', unit: '1' },
    agreement: { symbol: 'p_o', label: 'observed agreement', unit: '1' },
    chance: { symbol: 'p_e', label: 'agreement by chance', unit: '1' },
    mcnemar: { symbol: 'p', label: 'exact McNemar probability that the two find equally often', unit: '1' },
  },
  equation: [
    'p_o = (a + d)/n, p_e = ((a+b)(a+c) + (c+d)(b+d))/n^2, kappa = (p_o - p_e)/(1 - p_e)',
    'p = min(1, 2 P(X <= min(b, c); b + c, 1/2))',
  ],
  validity: 'Paired samples. With few positives kappa is low even when agreement is high.',
  source: 'J. Cohen, Educ. Psychol. Meas. 20 (1960) 37; Q. McNemar (1947)',
  example: {
    // p_o 0.7, p_e 0.5, kappa 0.4; b = 5, c = 10 of 15: 2 P(X <= 5; 15) = 2 x 4944/32768.
    inputs: { bothYes: 20, onlyFirst: 5, onlySecond: 10, bothNo: 15 },
    expected: { kappa: 0.4, agreement: 0.7, mcnemar: (2 * 4944) / 32768 },
    tolerance: 1e-12,
    source: 'the usual textbook table, by hand',
  },
  compute({ bothYes: a, onlyFirst: b, onlySecond: c, bothNo: d }) {
    const n = a + b + c + d;
    if (n === 0) return refuse('There is no sample');
    const agreement = (a + d) / n;
    const chance = ((a + b) * (a + c) + (c + d) * (b + d)) / n ** 2;
    if (chance === 1)
      return refuse('Both methods always say the same single thing: agreement beyond chance has no meaning');
    const mcnemar = b + c === 0 ? 1 : Math.min(1, 2 * binomialCdf(Math.min(b, c), b + c, 0.5));
    return {
      values: {
        kappa: (agreement - chance) / (1 - chance),
        agreement,
        chance,
        mcnemar,
      },
    };
  },
});
