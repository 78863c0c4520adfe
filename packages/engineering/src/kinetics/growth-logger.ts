import { calculation, refuse } from '../calculation/calculation.ts';
import { number, text } from '../calculation/inputs.ts';
import { grownTo, growthStep } from './growth.ts';
import { readLogger } from './logger/read-csv.ts';

export const growthLogger = calculation({
  name: 'growth-of-logger-file',
  title: 'Growth in a residue over the temperatures of a logger file: the warmest sensor counts',
  inputs: {
    file: text('logger file', 'CSV text: header line with units, first column time, one column a sensor'),
    referenceRate_1h: number('mu_ref', 'maximum growth rate at the reference temperature', '1/h', {
      default: 0.419,
      min: 0,
      max: 10,
      from: 'L. monocytogenes in seafood, from memory',
    }),
    reference_degC: number('T_ref', 'reference temperature', 'degC', {
      default: 25,
      min: 0,
      max: 50,
      from: 'common practice',
    }),
    minimum_degC: number('T_min', 'notional minimum temperature of growth', 'degC', {
      default: -2.83,
      min: -20,
      max: 45,
      from: 'L. monocytogenes in seafood, from memory',
    }),
    optimum_degC: number('T_opt', 'temperature up to which the square root is straight', 'degC', {
      default: 37,
      min: 5,
      max: 70,
      from: 'from memory',
    }),
    start: number('log N0', 'start, decimal logarithm of cfu/mL', '1', {
      default: 0,
      min: -6,
      max: 12,
      from: 'zero when left empty',
    }),
    ceiling: number('log Nmax', 'greatest density, decimal logarithm of cfu/mL', '1', {
      default: 8,
      min: 0,
      max: 12,
      from: 'common practice',
    }),
  },
  outputs: {
    growth_log10: { symbol: 'dlog N', label: 'growth at the warmest sensor', unit: 'log10' },
    end: { symbol: 'log N', label: 'end, decimal logarithm of cfu/mL', unit: '1' },
    generations: { symbol: 'g', label: 'generations without ceiling', unit: '1' },
    duration_h: { symbol: 't', label: 'duration of the record', unit: 'h' },
  },
  equation: [
    't_eq = integral of ((T - T_min)/(T_ref - T_min))^2 dt where T > T_min, exact for straight lines, gaps bridged',
    'g = mu_ref t_eq / ln 2, N = N_max / (1 + (N_max/N0 - 1) 2^-g)',
  ],
  validity:
    'No lag, no kill: the worst case. Temperatures up to T_opt; above it the step counts as at T_opt and a warning is given. Gaps are bridged by a straight line.',
  source: 'D. A. Ratkowsky et al., J. Bacteriol. 149 (1982) 1; default parameters from memory',
  example: {
    inputs: { file: 'time h,shelf degC,door degC\n0,4,8\n30,4,8\n60,4,8\n', start: Math.log10(2) },
    expected: { growth_log10: 1.653, duration_h: 60 },
    tolerance: 4e-4,
    source: 'worked problem WP6, step 2 (constant temperature, printed with 4 digits)',
  },
  compute(x) {
    if (x.reference_degC <= x.minimum_degC)
      return refuse('The reference temperature must be above the minimum temperature of growth');
    if (x.start > x.ceiling) return refuse('The start density is above the greatest density');
    const data = readLogger(x.file);
    if (data.kind === 'error') return refuse(`The logger file cannot be read: ${data.message}`);
    const silent = data.sensors.find((sensor) => sensor.celsius.every(Number.isNaN));
    if (silent !== undefined)
      return refuse(`Sensor "${silent.name}" has no value at all: leave its column out`);
    const results = data.sensors.map(({ name, celsius }) => {
      let equivalent = 0;
      let hot = false;
      let last = -1;
      for (let i = 0; i < celsius.length; i++) {
        if (Number.isNaN(celsius[i])) continue;
        hot ||= celsius[i] > x.optimum_degC;
        if (last >= 0)
          equivalent += growthStep(
            (data.seconds[i] - data.seconds[last]) / 3600,
            Math.min(celsius[last], x.optimum_degC),
            Math.min(celsius[i], x.optimum_degC),
            x.minimum_degC,
            x.reference_degC,
          );
        last = i;
      }
      const generations = (x.referenceRate_1h * equivalent) / Math.LN2;
      return { name, hot, generations, end: grownTo(x.start, x.ceiling, generations) };
    });
    const worst = results.reduce((a, b) => (b.generations > a.generations ? b : a));
    return {
      values: {
        growth_log10: worst.end - x.start,
        end: worst.end,
        generations: worst.generations,
        duration_h: data.seconds[data.seconds.length - 1] / 3600,
      },
      tables: [
        {
          title: 'Sensors',
          columns: [
            { name: 'sensor', unit: '' },
            { name: 'generations', unit: '1' },
            { name: 'growth', unit: 'log10' },
          ],
          rows: results.map((r) => [r.name, r.generations, r.end - x.start]),
        },
      ],
      warnings: [
        `The warmest sensor is "${worst.name}".`,
        ...(results.some((r) => r.hot)
          ? [
              `Above ${x.optimum_degC} degC the model does not hold: the growth there is counted as at that temperature.`,
            ]
          : []),
        ...data.notes,
      ],
    };
  },
});
