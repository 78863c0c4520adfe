import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const logLinear = calculation({
  name: 'log-linear-shoulder-tail',
  title: 'Inactivation with shoulder, log-linear part and tail',
  inputs: {
    time_min: number('t', 'contact time', 'min', { min: 0, max: 1e5 }),
    reduction_min: number('D', 'decimal reduction time', 'min', { min: 1e-6, max: 1e5 }),
    shoulder_min: number('S', 'shoulder (lag)', 'min', {
      default: 0,
      min: 0,
      max: 1e5,
      from: 'none when left empty',
    }),
    start: number('log N0', 'start, decimal logarithm', '1', {
      default: 6,
      min: -2,
      max: 14,
      from: 'common practice',
    }),
    tail: number('log N_res', 'tail, decimal logarithm of the resistant rest', '1', {
      default: -12,
      min: -12,
      max: 14,
      from: 'no tail',
    }),
    target_log10: number('R_t', 'log reduction asked for', 'log10', {
      default: 6,
      min: 0,
      max: 20,
      from: 'common practice',
    }),
  },
  outputs: {
    reduction_log10: { symbol: 'R', label: 'log reduction', unit: 'log10' },
    survivors: { symbol: 'N', label: 'survivors, or expected number', unit: '1' },
    anySurvivor: { symbol: 'P', label: 'probability of at least one survivor', unit: '1' },
    needed_min: { symbol: 't_n', label: 'time for the log reduction asked for, without tail', unit: 'min' },
  },
  equation: [
    'log N = max(log N_res, log N0 - max(0, (t - S)/D))',
    'R = log N0 - log N, P = 1 - exp(-N)',
    't_n = S + D R_t',
  ],
  validity:
    'Constant temperature and concentration; D, shoulder and tail of the same medium, phase, surface and organism.',
  source: 'H. Chick (1908); shoulder and tail as straight lines (three-phase log-linear model)',
  example: {
    inputs: { time_min: 12, reduction_min: 1.1, shoulder_min: 4.1, start: 3 },
    expected: { reduction_log10: 7.1818, survivors: 6.579e-5, anySurvivor: 6.579e-5, needed_min: 10.7 },
    tolerance: 1e-4,
    source: 'worked problem WP5',
  },
  compute(x) {
    const kill = Math.max(0, (x.time_min - x.shoulder_min) / x.reduction_min);
    const left = Math.max(Math.min(x.tail, x.start), x.start - kill);
    const survivors = 10 ** left;
    return {
      values: {
        reduction_log10: x.start - left,
        survivors,
        anySurvivor: -Math.expm1(-survivors),
        needed_min: x.shoulder_min + x.reduction_min * x.target_log10,
      },
      warnings: [
        ...(x.start - kill < x.tail
          ? ['The tail is reached: more time does not help, change the conditions.']
          : []),
        ...(x.target_log10 > x.start - x.tail
          ? ['The log reduction asked for lies below the tail and is not reached at any time.']
          : []),
      ],
    };
  },
});
