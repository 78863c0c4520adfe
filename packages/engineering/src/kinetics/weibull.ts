import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const weibullInactivation = calculation({
  name: 'weibull-inactivation',
  title: 'Inactivation by the Weibull model (Mafart 2002)',
  inputs: {
    time_min: number('t', 'contact time', 'min', { min: 0, max: 1e6 }),
    scale_min: number('delta', 'time of the first decimal reduction', 'min', { min: 1e-6, max: 1e6 }),
    shape: number('p', 'shape; below 1 tailing, above 1 a shoulder', '1', {
      default: 1,
      min: 0.1,
      max: 10,
      from: '1 is log-linear',
    }),
    target_log10: number('R_t', 'log reduction asked for', 'log10', {
      default: 6,
      min: 0.01,
      max: 20,
      from: 'common practice',
    }),
  },
  outputs: {
    reduction_log10: { symbol: 'R', label: 'log reduction', unit: 'log10' },
    needed_min: { symbol: 't_n', label: 'time for the log reduction asked for', unit: 'min' },
  },
  equation: ['R = (t/delta)^p', 't_n = delta R_t^(1/p)'],
  validity:
    'Constant conditions, within the log reductions that were measured: extrapolation of a curved line is not safe.',
  source: 'P. Mafart et al., Int. J. Food Microbiol. 72 (2002) 107; M. Peleg, M. B. Cole (1998)',
  example: {
    inputs: { time_min: 10, scale_min: 2, shape: 0.7 },
    expected: { reduction_log10: 3.08517, needed_min: 25.86275 },
    tolerance: 2e-6,
    source: 'check value K-32',
  },
  compute({ time_min, scale_min, shape, target_log10 }) {
    return {
      values: {
        reduction_log10: (time_min / scale_min) ** shape,
        needed_min: scale_min * target_log10 ** (1 / shape),
      },
      warnings:
        shape < 0.8
          ? ['Strong tailing: a D-value does not describe this, and each further decade takes longer.']
          : [],
    };
  },
});
