import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const growthInResidue = calculation({
  name: 'growth-square-root',
  title: 'Growth in a wet residue at constant temperature (square-root model, Ratkowsky 1982)',
  inputs: {
    temperature_degC: number('T', 'temperature of the residue', 'degC', { min: -5, max: 60 }),
    time_h: number('t', 'time', 'h', { min: 0, max: 8760 }),
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
    lag_h: number('lag', 'lag time', 'h', { default: 0, min: 0, max: 8760, from: 'no lag: the worst case' }),
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
    growth_log10: { symbol: 'dlog N', label: 'growth in decimal logarithms', unit: 'log10' },
    rate_1h: { symbol: 'mu', label: 'maximum specific growth rate', unit: '1/h' },
    doubling_h: { symbol: 't_d', label: 'doubling time', unit: 'h' },
    end: { symbol: 'log N', label: 'end, decimal logarithm of cfu/mL', unit: '1' },
  },
  equation: [
    'mu = mu_ref ((T - T_min) / (T_ref - T_min))^2 for T_min < T <= T_opt, else none',
    't_d = ln 2 / mu',
    'dN/dt = mu N (1 - N/N_max) after the lag: N = N_max / (1 + (N_max/N0 - 1) exp(-mu (t - lag)))',
  ],
  validity:
    'Constant temperature between T_min and T_opt, a residue that feeds the organism, the organism for which the parameters were fitted. Above T_opt it refuses.',
  source:
    'D. A. Ratkowsky et al., J. Bacteriol. 149 (1982) 1; default parameters after O. Mejlholm, P. Dalgaard, from memory: replace them by those of your organism and product',
  example: {
    inputs: { temperature_degC: 8, time_h: 60, start: Math.log10(2), ceiling: 8 },
    expected: { rate_1h: 0.063452, doubling_h: 10.924, growth_log10: 1.653 },
    tolerance: 3e-4,
    source: 'worked problem WP6, steps 1 and 2 (printed with 4 digits)',
  },
  compute(x) {
    if (x.temperature_degC > x.optimum_degC)
      return refuse(
        `The square-root model holds up to ${x.optimum_degC} degC: at ${x.temperature_degC} degC growth slows in a way that it does not describe`,
      );
    if (x.reference_degC <= x.minimum_degC)
      return refuse('The reference temperature must be above the minimum temperature of growth');
    if (x.start > x.ceiling) return refuse('The start density is above the greatest density');
    const relative = Math.max(0, (x.temperature_degC - x.minimum_degC) / (x.reference_degC - x.minimum_degC));
    const rate = x.referenceRate_1h * relative ** 2;
    if (rate < 1e-6)
      return refuse(
        `At ${x.temperature_degC} degC the model gives no growth: the minimum is ${x.minimum_degC} degC`,
      );
    const time = Math.max(0, x.time_h - x.lag_h);
    // log10 of the logistic solution, written so that exp cannot overflow.
    const end = x.ceiling - Math.log10(1 + (10 ** (x.ceiling - x.start) - 1) * Math.exp(-rate * time));
    return {
      values: { growth_log10: end - x.start, rate_1h: rate, doubling_h: Math.LN2 / rate, end },
      warnings: x.lag_h > 0 ? ['A lag was assumed: after cleaning without drying it may be shorter.'] : [],
    };
  },
});
