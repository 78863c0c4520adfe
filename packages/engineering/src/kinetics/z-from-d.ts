import { calculation, refuse } from '../calculation/calculation.ts';
import { list, number } from '../calculation/inputs.ts';
import { fitLine } from '../numeric/regression.ts';

export const zFromD = calculation({
  name: 'z-from-d-values',
  title: 'z from decimal reduction times at several temperatures (Bigelow)',
  inputs: {
    temperatures_degC: list('T', 'temperatures', 'degC', { minCount: 2, min: 0, max: 250 }),
    reductions_min: list('D', 'decimal reduction times', 'min', { minCount: 2, min: 1e-9 }),
    reference_degC: number('T_ref', 'reference temperature', 'degC', {
      default: 121.1,
      min: 0,
      max: 250,
      from: 'reference of F0, 250 degF',
    }),
  },
  outputs: {
    z: { symbol: 'z', label: 'temperature difference for a factor of ten', unit: 'K' },
    reduction_min: { symbol: 'D_ref', label: 'decimal reduction time at the reference', unit: 'min' },
    r2: { symbol: 'r2', label: 'coefficient of determination', unit: '1' },
  },
  equation: ['log10 D = log10 D_ref - (T - T_ref)/z, least squares'],
  validity:
    'Straight line of log D over T. Never from two end points of a range; not beyond the temperatures measured.',
  source: 'W. D. Bigelow (1921); least squares',
  example: {
    inputs: { temperatures_degC: [115.6, 110, 104.4], reductions_min: [1.3, 4.4, 17.6] },
    expected: { z: 9.898 },
    tolerance: 5e-5,
    source: 'check value K-06, published z 9.9 K (Odlaug and Pflug 1977)',
  },
  compute({ temperatures_degC, reductions_min, reference_degC }) {
    if (temperatures_degC.length !== reductions_min.length)
      return refuse('Give one decimal reduction time a temperature');
    if (new Set(temperatures_degC).size < 2) return refuse('At least two different temperatures are needed');
    const line = fitLine(temperatures_degC, reductions_min.map(Math.log10));
    if (line.slope >= 0)
      return refuse('The decimal reduction time does not fall with temperature: z has no meaning');
    const low = Math.min(...temperatures_degC);
    const high = Math.max(...temperatures_degC);
    return {
      values: {
        z: -1 / line.slope,
        reduction_min: 10 ** (line.intercept + line.slope * reference_degC),
        r2: line.r2,
      },
      warnings: [
        ...(temperatures_degC.length === 2
          ? ['Two points always lie on a line: z has no stated uncertainty.']
          : []),
        ...(reference_degC < low || reference_degC > high
          ? ['The reference temperature lies outside the measured ones: D there is extrapolated.']
          : []),
      ],
    };
  },
});
