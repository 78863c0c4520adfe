import { calculation, refuse } from '../calculation/calculation.ts';
import { list, number } from '../calculation/inputs.ts';
import { grownTo, growthStep } from './growth.ts';

export const growthHistory = calculation({
  name: 'growth-over-history',
  title: 'Growth in a residue over a temperature history (square-root model)',
  inputs: {
    times_h: list('t', 'times', 'h', { minCount: 2, min: 0 }),
    temperatures_degC: list('T', 'temperatures', 'degC', { minCount: 2, min: -30, max: 100 }),
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
    lagWork: number('RLT', 'lag in multiples of the generation time', '1', {
      default: 0,
      min: 0,
      max: 20,
      from: 'no lag: the worst case',
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
    growth_log10: { symbol: 'dlog N', label: 'growth in decimal logarithms', unit: 'log10' },
    end: { symbol: 'log N', label: 'end, decimal logarithm of cfu/mL', unit: '1' },
    generations: { symbol: 'g', label: 'generations without ceiling', unit: '1' },
    equivalent_h: {
      symbol: 't_eq',
      label: 'time at the reference temperature with the same growth',
      unit: 'h',
    },
  },
  equation: [
    't_eq = integral of ((T - T_min)/(T_ref - T_min))^2 dt where T > T_min, exact for straight lines',
    'g = max(0, mu_ref t_eq / ln 2 - RLT)',
    'N = N_max / (1 + (N_max/N0 - 1) 2^-g)',
  ],
  validity:
    'Temperatures up to T_opt; no kill above it is counted. The organism and the product of the parameters.',
  source:
    'D. A. Ratkowsky et al., J. Bacteriol. 149 (1982) 1; relative lag time (T. Ross); default parameters from memory',
  example: {
    inputs: { times_h: [0, 60], temperatures_degC: [8, 8], start: Math.log10(2) },
    expected: { growth_log10: 1.653 },
    tolerance: 4e-4,
    source: 'worked problem WP6, step 2 (constant temperature, printed with 4 digits)',
  },
  compute(x) {
    if (x.times_h.length !== x.temperatures_degC.length) return refuse('Give one temperature a time');
    if (x.times_h.some((t, i) => i > 0 && t <= x.times_h[i - 1])) return refuse('The times must rise');
    if (x.reference_degC <= x.minimum_degC)
      return refuse('The reference temperature must be above the minimum temperature of growth');
    if (x.start > x.ceiling) return refuse('The start density is above the greatest density');
    const hottest = Math.max(...x.temperatures_degC);
    if (hottest > x.optimum_degC)
      return refuse(`The history reaches ${hottest} degC: the model holds up to ${x.optimum_degC} degC`);
    let equivalent = 0;
    for (let i = 1; i < x.times_h.length; i++)
      equivalent += growthStep(
        x.times_h[i] - x.times_h[i - 1],
        x.temperatures_degC[i - 1],
        x.temperatures_degC[i],
        x.minimum_degC,
        x.reference_degC,
      );
    const generations = Math.max(0, (x.referenceRate_1h * equivalent) / Math.LN2 - x.lagWork);
    const end = grownTo(x.start, x.ceiling, generations);
    return { values: { growth_log10: end - x.start, end, generations, equivalent_h: equivalent } };
  },
});
