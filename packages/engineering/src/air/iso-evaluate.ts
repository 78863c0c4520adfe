import { calculation } from '../calculation/calculation.ts';
import { choice, list, number } from '../calculation/inputs.ts';
import { studentQuantile } from '../numeric/special.ts';

export const isoEvaluate = calculation({
  name: 'iso-class-evaluation',
  title: 'Evaluate particle counts against a class limit (ISO 14644-1)',
  inputs: {
    averages_1m3: list('x', 'average of each location', '1/m3', { minCount: 1, min: 0 }),
    limit_1m3: number('C', 'limit of the class', '1/m3', { min: 1, max: 1e9 }),
    edition: choice(
      'edition',
      {
        2015: '2015: every location average within the limit',
        1999: '1999: and the 95 % upper confidence limit for 2 to 9 locations',
      },
      { default: '2015' },
    ),
  },
  outputs: {
    meets: { symbol: 'ok', label: 'demand of the class', unit: '1', words: { 1: 'met', 0: 'not met' } },
    worst_1m3: { symbol: 'x_max', label: 'highest location average', unit: '1/m3' },
    mean_1m3: { symbol: 'm', label: 'mean of the averages', unit: '1/m3' },
    upper_1m3: { symbol: 'UCL', label: '95 % upper confidence limit of the mean', unit: '1/m3' },
    share_pct: { symbol: 'u', label: 'worst location in percent of the limit', unit: '%' },
  },
  equation: ['2015: x_max <= C', '1999: x_max <= C and, for 2 to 9 locations, UCL = m + t_95 s/sqrt(n) <= C'],
  validity: 'Averages of locations sampled as the standard asks. One location: mean and UCL are its average.',
  source: 'ISO 14644-1:2015, annex A; ISO 14644-1:1999, annex C',
  example: {
    // n = 5, m = 2000, s = 158.114, t(0.95; 4) = 2.131847: UCL = 2150.744.
    inputs: { averages_1m3: [1800, 1900, 2000, 2100, 2200], limit_1m3: 3520 },
    expected: { meets: 1, mean_1m3: 2000, upper_1m3: 2150.744 },
    tolerance: 2e-6,
    source: 'hand calculation with the printed t quantile',
  },
  compute({ averages_1m3, limit_1m3, edition }) {
    const n = averages_1m3.length;
    const mean = averages_1m3.reduce((a, b) => a + b, 0) / n;
    const deviation = n > 1 ? Math.sqrt(averages_1m3.reduce((a, b) => a + (b - mean) ** 2, 0) / (n - 1)) : 0;
    const upper = n > 1 ? mean + (studentQuantile(0.95, n - 1) * deviation) / Math.sqrt(n) : mean;
    const worst = Math.max(...averages_1m3);
    const older = edition === '1999' && n >= 2 && n <= 9;
    return {
      values: {
        meets: worst <= limit_1m3 && (!older || upper <= limit_1m3) ? 1 : 0,
        worst_1m3: worst,
        mean_1m3: mean,
        upper_1m3: upper,
        share_pct: (100 * worst) / limit_1m3,
      },
    };
  },
});
