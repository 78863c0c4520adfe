import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { betaQuantile, binomialCdf } from '../numeric/special.ts';

/** ISO 2859-1, general level II: lot up to, code letter, sample. All rows seen in secondary copies. */
const levelTwo: readonly (readonly [number, string, number])[] = [
  [8, 'A', 2],
  [15, 'B', 3],
  [25, 'C', 5],
  [50, 'D', 8],
  [90, 'E', 13],
  [150, 'F', 20],
  [280, 'G', 32],
  [500, 'H', 50],
  [1200, 'J', 80],
  [3200, 'K', 125],
  [10000, 'L', 200],
  [35000, 'M', 315],
  [150000, 'N', 500],
  [500000, 'P', 800],
  [Number.POSITIVE_INFINITY, 'Q', 1250],
];

export const acceptancePlan = calculation({
  name: 'acceptance-plan',
  title: 'What an acceptance sampling plan lets through',
  inputs: {
    sample: number('n', 'sample', '1', { min: 1, max: 1e6, whole: true }),
    accept: number('c', 'accepted defectives', '1', { default: 0, min: 0, max: 1e5, whole: true }),
    good_pct: number('p_1', 'quality that should pass', '%', { default: 1, min: 0, max: 100 }),
    bad_pct: number('p_2', 'quality that should not pass', '%', { default: 5, min: 0, max: 100 }),
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

export const lotSample = calculation({
  name: 'lot-sample-size',
  title: 'Code letter and sample for a lot (ISO 2859-1, level II)',
  inputs: { lot: number('N', 'units of the lot', '1', { min: 2, max: 1e12, whole: true }) },
  outputs: {
    sample: { symbol: 'n', label: 'sample, normal inspection', unit: '1' },
    letter: { symbol: 'k', label: 'place of the code letter in the table', unit: '1' },
  },
  equation: ['table 1 (code letter by lot size) and table 2-A (sample by letter)'],
  validity:
    'Single sampling, normal inspection, general inspection level II. Acceptance numbers depend on the AQL: see the standard.',
  source: 'ISO 2859-1, tables 1 and 2-A (secondary copies)',
  example: { inputs: { lot: 3000 }, expected: { sample: 125 }, tolerance: 0, source: 'check value S-05' },
  compute({ lot }) {
    const place = levelTwo.findIndex(([upTo]) => lot <= upTo);
    const [, letter, sample] = levelTwo[place];
    return {
      values: { sample: Math.min(sample, lot), letter: place + 1 },
      warnings: [`Code letter ${letter}.`],
    };
  },
});
