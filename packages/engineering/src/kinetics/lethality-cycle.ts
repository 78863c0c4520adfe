import { calculation, refuse } from '../calculation/calculation.ts';
import { list, number } from '../calculation/inputs.ts';
import { lethality } from './lethality.ts';

export const lethalityCycle = calculation({
  name: 'lethality-of-cycle',
  title: 'Lethality of a temperature cycle: F0, pasteurisation units, A0',
  inputs: {
    times_min: list('t', 'times', 'min', { minCount: 2, min: 0 }),
    temperatures_degC: list('T', 'temperatures', 'degC', { minCount: 2, min: -50, max: 300 }),
    reference_degC: number('T_ref', 'reference temperature', 'degC', {
      default: 121.1,
      min: 0,
      max: 200,
      from: 'F0; 60 degC and z 7 K for pasteurisation units, 80 degC for A0',
    }),
    z: number('z', 'temperature difference for a factor of ten', 'K', {
      default: 10,
      min: 1,
      max: 60,
      from: 'of F0, common practice',
    }),
    decimalReduction_min: number('D', 'decimal reduction time at the reference', 'min', {
      default: 1.5,
      min: 1e-6,
      max: 1e4,
      from: 'assumed: spores with D121 of 1.5 min',
    }),
    start: number('log N0', 'start, decimal logarithm', '1', {
      default: 6,
      min: -2,
      max: 12,
      from: 'common practice',
    }),
    target: number('log N', 'target, decimal logarithm', '1', {
      default: -6,
      min: -12,
      max: 12,
      from: 'one survivor in a million, common practice',
    }),
  },
  outputs: {
    lethality_min: {
      symbol: 'F',
      label: 'lethality, exact for straight lines between the samples',
      unit: 'min',
    },
    trapezoid_min: { symbol: 'F_t', label: 'lethality by the trapezoid rule', unit: 'min' },
    excess_pct: { symbol: 'dF', label: 'excess of the trapezoid', unit: '%' },
    reduction_log10: { symbol: 'R', label: 'log reduction', unit: 'log10' },
    survivors: { symbol: 'N', label: 'survivors, or probability of one', unit: '1' },
    needed_min: { symbol: 'F_n', label: 'lethality needed for the target', unit: 'min' },
    missing_min: { symbol: 'dt', label: 'time still missing at the reference temperature', unit: 'min' },
  },
  equation: [
    'F = sum of dt (L_2 - L_1) / ln(L_2/L_1), L = 10^((T - T_ref)/z)',
    'F_t = sum of dt (L_1 + L_2)/2, always too high, since L is convex in T',
    'R = F/D, N = N0 10^-R, F_n = D (log N0 - log N)',
  ],
  validity:
    'Log-linear kill with constant z; the sensor at the coldest place; samples close enough that the temperature is straight between them.',
  source: 'W. D. Bigelow (1921); C. O. Ball (1923); exact segment integral by hand',
  example: {
    inputs: {
      times_min: [0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20],
      temperatures_degC: [60, 80, 95, 105, 112, 117, 120, 121.1, 121.1, 110, 80],
    },
    expected: {
      lethality_min: 6.23702,
      trapezoid_min: 6.78612,
      reduction_log10: 4.158,
      needed_min: 18,
      missing_min: 11.763,
    },
    tolerance: 1e-4,
    source: 'worked problem WP4 and check value K-07',
  },
  caution:
    'The number holds for the place of the sensor only. An unsafe product can kill: release is the decision of a competent person.',
  compute(x) {
    if (x.times_min.length !== x.temperatures_degC.length)
      return refuse(
        `There are ${x.times_min.length} times and ${x.temperatures_degC.length} temperatures: give one temperature a time`,
      );
    const back = x.times_min.findIndex((t, i) => i > 0 && t <= x.times_min[i - 1]);
    if (back > 0) return refuse(`Time ${back + 1} is not later than the one before it`);
    const { exact, trapezoid } = lethality(x.times_min, x.temperatures_degC, x.reference_degC, x.z);
    const needed = x.decimalReduction_min * Math.max(0, x.start - x.target);
    const reduction = exact / x.decimalReduction_min;
    const jump = Math.max(
      ...x.temperatures_degC.slice(1).map((t, i) => Math.abs(t - x.temperatures_degC[i])),
    );
    return {
      values: {
        lethality_min: exact,
        trapezoid_min: trapezoid,
        excess_pct: exact === 0 ? 0 : 100 * (trapezoid / exact - 1),
        reduction_log10: reduction,
        survivors: 10 ** (x.start - reduction),
        needed_min: needed,
        missing_min: Math.max(0, needed - exact),
      },
      warnings: [
        ...(exact < needed ? ['The target is not reached.'] : []),
        ...(jump > x.z
          ? ['The temperature jumps by more than z between two samples: sample more often.']
          : []),
      ],
    };
  },
});
