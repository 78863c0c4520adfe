import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

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
