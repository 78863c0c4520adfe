import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const timeToLevel = calculation({
  name: 'time-to-level',
  title: 'Time until a residue holds too many microbes (square-root model)',
  inputs: {
    temperature_degC: number('T', 'temperature', 'degC', { min: -5, max: 60 }),
    start_cfumL: number('N0', 'start', 'cfu/mL', {
      default: 2,
      min: 1e-9,
      max: 1e12,
      from: 'an example: give your own',
    }),
    limit_cfumL: number('N', 'level that must not be reached', 'cfu/mL', {
      default: 1000,
      min: 1e-9,
      max: 1e12,
      from: 'an example: give your own',
    }),
    referenceRate_1h: number('mu_ref', 'maximum growth rate at the reference temperature', '1/h', {
      default: 0.419,
      min: 1e-6,
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
    lag_h: number('lag', 'lag time', 'h', { default: 0, min: 0, max: 8760, from: 'no lag: the worst case' }),
  },
  outputs: {
    time_h: { symbol: 't', label: 'time until the level', unit: 'h' },
    rate_1h: { symbol: 'mu', label: 'maximum specific growth rate', unit: '1/h' },
    doublings: { symbol: 'g', label: 'doublings', unit: '1' },
  },
  equation: ['mu = mu_ref ((T - T_min)/(T_ref - T_min))^2', 't = lag + ln(N/N0)/mu, g = log2(N/N0)'],
  validity:
    'Exponential growth far below the ceiling, constant temperature, the organism and product of the parameters.',
  source: 'D. A. Ratkowsky et al., J. Bacteriol. 149 (1982) 1; default parameters from memory',
  example: {
    inputs: { temperature_degC: 8, start_cfumL: 2, limit_cfumL: 1000 },
    expected: { time_h: 97.94, rate_1h: 0.063452 },
    tolerance: 3e-5,
    source: 'worked problem WP6, step 3: 2 to 1000 cfu/mL',
  },
  compute(x) {
    if (x.limit_cfumL <= x.start_cfumL) return refuse('The level is reached at the start already');
    if (x.temperature_degC <= x.minimum_degC)
      return refuse(`No growth at ${x.temperature_degC} degC: the minimum is ${x.minimum_degC} degC`);
    const rate =
      x.referenceRate_1h * ((x.temperature_degC - x.minimum_degC) / (x.reference_degC - x.minimum_degC)) ** 2;
    const ratio = x.limit_cfumL / x.start_cfumL;
    return {
      values: { time_h: x.lag_h + Math.log(ratio) / rate, rate_1h: rate, doublings: Math.log2(ratio) },
    };
  },
});
