import { calculation } from '../calculation/calculation.ts';
import { list, number } from '../calculation/inputs.ts';

/** Run rules after Western Electric (1956): each gives whether the point at `i` breaks it. `u` are standardised. */
const rules: readonly (readonly [string, (u: readonly number[], i: number) => boolean])[] = [
  ['one beyond 3 s', (u, i) => Math.abs(u[i]) > 3],
  [
    'two of three beyond 2 s on one side',
    (u, i) => i >= 1 && sameSide(u.slice(Math.max(0, i - 2), i + 1), 2) >= 2 && Math.abs(u[i]) > 2,
  ],
  [
    'four of five beyond 1 s on one side',
    (u, i) => i >= 3 && sameSide(u.slice(Math.max(0, i - 4), i + 1), 1) >= 4 && Math.abs(u[i]) > 1,
  ],
  ['eight in a row on one side', (u, i) => i >= 7 && sameSide(u.slice(i - 7, i + 1), 0) === 8],
];

/** How many lie beyond `level` on the side of the last one. */
function sameSide(u: readonly number[], level: number): number {
  const side = Math.sign(u[u.length - 1]);
  return u.filter((x) => side * x > level).length;
}

export const shewhartChart = calculation({
  name: 'chart-shewhart',
  title: 'Chart of single results with run rules (Shewhart, Western Electric)',
  inputs: {
    values: list('x', 'results in time order', '1', { minCount: 1 }),
    target: number('m', 'mean of the undisturbed process', '1', { min: -1e12, max: 1e12 }),
    deviation: number('s', 'its standard deviation', '1', { min: 1e-12, max: 1e12 }),
  },
  outputs: {
    upper: { symbol: 'UCL', label: 'upper limit', unit: '1' },
    lower: { symbol: 'LCL', label: 'lower limit', unit: '1' },
    beyond: { symbol: 'a_3', label: 'results beyond 3 s', unit: '1' },
    alarms: { symbol: 'a', label: 'results that break any rule', unit: '1' },
    firstAlarm: { symbol: 'i', label: 'number of the first of them; 0 for none', unit: '1' },
  },
  equation: [
    'limits m -+ 3 s',
    'rules: one beyond 3 s; two of three beyond 2 s; four of five beyond 1 s; eight in a row on one side',
  ],
  validity:
    'Independent results near a normal distribution. All four rules together give a false alarm about every 92 results.',
  source: 'W. A. Shewhart (1931); Western Electric, Statistical Quality Control Handbook (1956); ISO 7870-2',
  example: {
    inputs: { values: [1.1, 1.3, 0.9, 1.4, 1.2, 1, 1.5, 1.7, 1.8, 1.9], target: 1.2, deviation: 0.25 },
    expected: { upper: 1.95, beyond: 0, firstAlarm: 10 },
    tolerance: 1e-9,
    source:
      'worked problem WP9, step 5; by hand: 1.8 and 1.9 both lie beyond 2 s (1.7 is 2.0 s and does not count), so the tenth breaks the second rule',
  },
  compute({ values, target, deviation }) {
    const u = values.map((x) => (x - target) / deviation);
    const broken = values.map((_, i) => rules.filter(([, breaks]) => breaks(u, i)).map(([name]) => name));
    const first = broken.findIndex((names) => names.length > 0);
    return {
      values: {
        upper: target + 3 * deviation,
        lower: target - 3 * deviation,
        beyond: u.filter((x) => Math.abs(x) > 3).length,
        alarms: broken.filter((names) => names.length > 0).length,
        firstAlarm: first + 1,
      },
      tables: [
        {
          title: 'Chart',
          columns: [
            { name: 'number', unit: '1' },
            { name: 'result', unit: '1' },
            { name: 'rules broken', unit: '' },
          ],
          rows: values.map((x, i) => [i + 1, x, broken[i].join(', ')]),
        },
      ],
    };
  },
});
