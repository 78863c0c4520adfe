import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, list, number } from '../calculation/inputs.ts';
import { fitLine } from '../numeric/regression.ts';

export const trendForecast = calculation({
  name: 'trend-forecast',
  title: 'A rising trend: how long until it crosses the limit',
  inputs: {
    values: list('x', 'results at equal intervals, in time order', '1', { minCount: 3 }),
    limit: number('L', 'limit', '1', { min: -1e12, max: 1e12 }),
    scale: choice(
      'scale',
      { log: 'decimal logarithm, for counts and light units', plain: 'as they are' },
      { default: 'log' },
    ),
    run: number('r', 'rising points in a row that count as an alarm', '1', {
      default: 7,
      min: 3,
      max: 20,
      whole: true,
      from: 'run rule, from memory',
    }),
  },
  outputs: {
    intervals: {
      symbol: 'k',
      label: 'intervals from the last result until the fit crosses the limit; 1000 when it does not',
      unit: '1',
    },
    crossing: { symbol: 'i_L', label: 'number of the result at which it crosses', unit: '1' },
    slope: { symbol: 'b', label: 'rise an interval, on the scale', unit: '1' },
    rising: { symbol: 'r_x', label: 'rising points in a row up to the last one', unit: '1' },
    alarm: { symbol: 'a', label: 'run rule', unit: '1', words: { 1: 'broken', 0: 'kept' } },
  },
  equation: ['least squares y = a + b i, y = x or log10 x, i = 1, 2, ...', 'i_L = (y(L) - a)/b, k = i_L - n'],
  validity:
    'A straight trend on the scale; the forecast is a reason to act, not a promise. Neighbouring results are often alike, which makes runs more common.',
  source: 'Least squares; run rule of ISO 7870-2, from memory',
  example: {
    inputs: { values: [42, 48, 45, 55, 61, 66, 78, 90, 104], limit: 150 },
    expected: { slope: 0.049, crossing: 12.7, rising: 7, alarm: 1 },
    tolerance: 0.01,
    source: 'scenario of weekly light units, printed with 2 to 3 digits',
  },
  compute({ values, limit, scale, run }) {
    const log = scale === 'log';
    if (log && (limit <= 0 || values.some((v) => v <= 0)))
      return refuse('On the logarithmic scale every result and the limit must be above zero');
    const on = (v: number) => (log ? Math.log10(v) : v);
    const line = fitLine(
      values.map((_, i) => i + 1),
      values.map(on),
    );
    let rising = 1;
    while (rising < values.length && values[values.length - rising] > values[values.length - rising - 1])
      rising++;
    const never = 1000;
    const crossing = line.slope > 0 ? (on(limit) - line.intercept) / line.slope : values.length + never;
    const alarm = rising >= run;
    return {
      values: {
        intervals: Math.min(never, Math.max(0, crossing - values.length)),
        crossing,
        slope: line.slope,
        rising,
        alarm: alarm ? 1 : 0,
      },
      warnings: [
        ...(alarm
          ? [`${rising} rising points in a row: look for the cause before the limit is reached.`]
          : []),
        ...(line.slope <= 0 ? ['The trend does not rise.'] : []),
      ],
    };
  },
});
