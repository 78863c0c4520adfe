import { calculation } from '../calculation/calculation.ts';
import { list, number } from '../calculation/inputs.ts';

export const cusumChart = calculation({
  name: 'chart-cusum',
  title: 'CUSUM chart: when did a shift begin (Page 1954)',
  inputs: {
    values: list('x', 'results in time order', '1', { minCount: 1 }),
    target: number('m', 'mean of the undisturbed process', '1', { min: -1e12, max: 1e12 }),
    deviation: number('s', 'its standard deviation', '1', { min: 1e-12, max: 1e12 }),
    allowance: number('k', 'allowance in standard deviations, half of the shift to find', '1', {
      default: 0.5,
      min: 0,
      max: 3,
      from: 'usual choice of textbooks on control charts, common practice',
    }),
    decision: number('h', 'decision limit in standard deviations', '1', {
      default: 5,
      min: 0.5,
      max: 20,
      from: 'usual choice of textbooks on control charts, common practice',
    }),
  },
  outputs: {
    upper: { symbol: 'C+', label: 'last upper sum in standard deviations', unit: '1' },
    lower: { symbol: 'C-', label: 'last lower sum in standard deviations', unit: '1' },
    firstAlarm: { symbol: 'i', label: 'number of the first result beyond the limit; 0 for none', unit: '1' },
    began: {
      symbol: 'i_0',
      label: 'number of the result at which that sum last left zero; 0 for none',
      unit: '1',
    },
  },
  equation: [
    'C+_i = max(0, C+_(i-1) + (x_i - m)/s - k), C-_i = max(0, C-_(i-1) - (x_i - m)/s - k)',
    'alarm when a sum exceeds h',
  ],
  validity: 'Independent results of constant spread, mean and spread from an undisturbed time.',
  source:
    'E. S. Page, Biometrika 41 (1954) 100; D. C. Montgomery, Introduction to Statistical Quality Control, chapter 9',
  example: {
    // u = 2 four times, k = 0.5: sums 1.5, 3, 4.5, 6; beyond 5 at the fourth.
    inputs: { values: [2, 2, 2, 2], target: 0, deviation: 1 },
    expected: { upper: 6, lower: 0, firstAlarm: 4, began: 1 },
    tolerance: 0,
    source: 'by hand',
  },
  compute({ values, target, deviation, allowance, decision }) {
    const sums = [0, 0];
    const starts = [0, 0];
    let firstAlarm = 0;
    let began = 0;
    const rows = values.map((x, i) => {
      const u = (x - target) / deviation;
      [u, -u].forEach((shift, side) => {
        const next = Math.max(0, sums[side] + shift - allowance);
        if (next > 0 && sums[side] === 0) starts[side] = i + 1;
        sums[side] = next;
        if (next > decision && firstAlarm === 0) {
          firstAlarm = i + 1;
          began = starts[side];
        }
      });
      return [i + 1, x, sums[0], sums[1]] as const;
    });
    return {
      values: { upper: sums[0], lower: sums[1], firstAlarm, began },
      tables: [
        {
          title: 'Chart',
          columns: ['number', 'result', 'upper sum', 'lower sum'].map((name) => ({ name, unit: '1' })),
          rows,
        },
      ],
    };
  },
});
