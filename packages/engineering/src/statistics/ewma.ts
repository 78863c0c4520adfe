import { calculation } from '../calculation/calculation.ts';
import { choice, list, number } from '../calculation/inputs.ts';

export const ewmaChart = calculation({
  name: 'chart-ewma',
  title: 'EWMA chart: small lasting shifts of a trend (Roberts 1959)',
  inputs: {
    values: list('x', 'results in time order', '1', { minCount: 1 }),
    target: number('m', 'mean of the undisturbed process', '1', { min: -1e12, max: 1e12 }),
    deviation: number('s', 'its standard deviation', '1', { min: 1e-12, max: 1e12 }),
    weight: number('lambda', 'weight of the newest result', '1', {
      default: 0.2,
      min: 0.01,
      max: 1,
      from: 'usual choice of textbooks on control charts, common practice',
    }),
    width: number('L', 'width of the limits in standard deviations', '1', {
      default: 2.7,
      min: 0.5,
      max: 6,
      from: 'usual choice of textbooks on control charts, common practice',
    }),
    limits: choice(
      'limits',
      { exact: 'exact, narrow at the start', steady: 'steady state from the start' },
      { default: 'exact' },
    ),
  },
  outputs: {
    last: { symbol: 'z', label: 'last average', unit: '1' },
    upper: { symbol: 'UCL', label: 'upper limit in the steady state', unit: '1' },
    lower: { symbol: 'LCL', label: 'lower limit in the steady state', unit: '1' },
    firstAlarm: { symbol: 'i', label: 'number of the first result outside; 0 for none', unit: '1' },
    alarms: { symbol: 'a', label: 'results outside', unit: '1' },
  },
  equation: [
    'z_i = lambda x_i + (1 - lambda) z_(i-1), z_0 = m',
    'limits m -+ L s sqrt(lambda/(2 - lambda) (1 - (1 - lambda)^(2i)))',
  ],
  validity:
    'Independent results of constant spread; counts are better taken as logarithms. Mean and spread from an earlier, undisturbed time.',
  source: 'S. W. Roberts, Technometrics 1 (1959) 239; NIST/SEMATECH e-Handbook 6.3.2.4',
  example: {
    inputs: { values: [1.1, 1.3, 0.9, 1.4, 1.2, 1, 1.5, 1.7, 1.8, 1.9], target: 1.2, deviation: 0.25 },
    expected: { last: 1.5129, firstAlarm: 10, alarms: 1 },
    tolerance: 3e-5,
    source: 'worked problem WP9',
  },
  compute({ values, target, deviation, weight, width, limits }) {
    let z = target;
    const steady = width * deviation * Math.sqrt(weight / (2 - weight));
    const rows = values.map((x, i) => {
      z = weight * x + (1 - weight) * z;
      const half = limits === 'exact' ? steady * Math.sqrt(1 - (1 - weight) ** (2 * (i + 1))) : steady;
      return [i + 1, x, z, target - half, target + half] as const;
    });
    const out = rows.filter(([, , average, low, high]) => average < low || average > high);
    return {
      values: {
        last: z,
        upper: target + steady,
        lower: target - steady,
        firstAlarm: out[0]?.[0] ?? 0,
        alarms: out.length,
      },
      tables: [
        {
          title: 'Chart',
          columns: ['number', 'result', 'average', 'lower limit', 'upper limit'].map((name) => ({
            name,
            unit: '1',
          })),
          rows,
        },
      ],
    };
  },
});
