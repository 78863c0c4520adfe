import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { betaQuantile, binomialCdf } from '../numeric/special.ts';

export const acceptancePlan = calculation({
  name: 'acceptance-plan',
  title: 'What an acceptance sampling plan lets through',
  inputs: {
    sample: number('n', 'sample', '1', { min: 1, max: 1e6, whole: true }),
    accept: number('c', 'accepted defectives', '1', {
      default: 0,
      min: 0,
      max: 1e5,
      whole: true,
      from: 'none when left empty',
    }),
    good_pct: number('p_1', 'quality that should pass', '%', {
      default: 1,
      min: 0,
      max: 100,
      from: 'an example: give your own',
    }),
    bad_pct: number('p_2', 'quality that should not pass', '%', {
      default: 5,
      min: 0,
      max: 100,
      from: 'an example: give your own',
    }),
  },
  outputs: {
    passGood: { symbol: 'Pa_1', label: 'probability to accept at the good quality', unit: '1' },
    passBad: { symbol: 'Pa_2', label: 'probability to accept at the bad quality', unit: '1' },
    tenth_pct: { symbol: 'p_10', label: 'quality that passes with 10 % probability', unit: '%' },
    ninetyFive_pct: { symbol: 'p_95', label: 'quality that passes with 95 % probability', unit: '%' },
  },
  equation: ['Pa(p) = P(X <= c; n, p), binomial', 'p_10, p_95: Pa(p) = 0.10, 0.95'],
  validity: 'Attributes, random sample, lot much larger than the sample.',
  source: 'Binomial distribution; ISO 2859-1 for plans',
  example: {
    inputs: { sample: 125, accept: 3 },
    expected: { passGood: 0.962551, passBad: 0.123785, tenth_pct: 5.2663 },
    tolerance: 1e-5,
    source: 'check value S-06',
  },
  compute({ sample, accept, good_pct, bad_pct }) {
    if (accept >= sample) return refuse('With so many accepted defectives every sample passes');
    const qualities = [0.1, 0.2, 0.5, 1, 1.5, 2, 3, 4, 5, 7, 10, 15, 20, 30];
    return {
      tables: [
        {
          title: 'Operating characteristic',
          columns: [
            { name: 'defectives', unit: '%' },
            { name: 'probability to accept', unit: '1' },
          ],
          rows: qualities.map((p) => [p, binomialCdf(accept, sample, p / 100)]),
        },
      ],
      values: {
        passGood: binomialCdf(accept, sample, good_pct / 100),
        passBad: binomialCdf(accept, sample, bad_pct / 100),
        tenth_pct: 100 * betaQuantile(0.9, accept + 1, sample - accept),
        ninetyFive_pct: 100 * betaQuantile(0.05, accept + 1, sample - accept),
      },
    };
  },
});
