import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { binomialCdf } from '../numeric/special.ts';

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
