import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { cutoffForRa } from './cutoff-table.ts';

export const roughnessCutoff = calculation({
  name: 'roughness-cutoff',
  title: 'Cut-off and evaluation length for a roughness measurement',
  inputs: {
    ra_um: number('Ra', 'roughness to expect', 'um', {
      default: 0.8,
      min: 0,
      max: 400,
      usual: [0.006, 80],
      from: 'usual limit of food-contact steel, common practice',
    }),
  },
  outputs: {
    cutoff_mm: { symbol: 'lambda_c', label: 'cut-off', unit: 'mm' },
    evaluation_mm: { symbol: 'l_n', label: 'evaluation length, five sections', unit: 'mm' },
    traverse_mm: { symbol: 'l_t', label: 'travel, half a cut-off more at each end', unit: 'mm' },
    short_um: { symbol: 'lambda_s', label: 'short cut-off', unit: 'um' },
  },
  equation: ['table by Ra: to 0.02, 0.1, 2, 10 um and above', 'l_t = l_n + lambda_c'],
  validity:
    'Profiles without a fixed period. Check after measuring that Ra lies in the range of the cut-off that was used.',
  source: 'ISO 4288:1996; ISO 21920-3:2021 (secondary copy; short cut-off from memory)',
  example: {
    inputs: { ra_um: 0.8 },
    expected: { cutoff_mm: 0.8, evaluation_mm: 4, short_um: 2.5 },
    tolerance: 0,
    source: 'check value R-01-3',
  },
  compute({ ra_um }) {
    const row = cutoffForRa(ra_um);
    return {
      values: {
        cutoff_mm: row.cutoff_mm,
        evaluation_mm: row.evaluation_mm,
        traverse_mm: row.evaluation_mm + row.cutoff_mm,
        short_um: row.short_um,
      },
    };
  },
});
