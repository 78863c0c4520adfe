import { calculation } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';

export const chickWatson = calculation({
  name: 'disinfectant-chick-watson',
  title: 'Disinfectant in one phase: concentration, time and temperature (Chick-Watson)',
  inputs: {
    phase: choice('phase of the disinfectant', {
      liquid: 'liquid',
      fog: 'fog of droplets',
      vapour: 'vapour',
    }),
    concentration: number('C', 'concentration', '1', {
      min: 1e-9,
      max: 1e6,
      from: 'same unit as the reference concentration',
    }),
    time_min: number('t', 'contact time', 'min', { min: 0, max: 1e5 }),
    temperature_degC: number('T', 'temperature', 'degC', {
      default: 20,
      min: 0,
      max: 150,
      from: 'a room, common practice',
    }),
    reduction_min: number('D_ref', 'decimal reduction time at the reference, in the same phase', 'min', {
      min: 1e-6,
      max: 1e5,
    }),
    referenceConcentration: number('C_ref', 'reference concentration', '1', { min: 1e-9, max: 1e6 }),
    reference_degC: number('T_ref', 'reference temperature', 'degC', {
      default: 20,
      min: 0,
      max: 150,
      from: 'common practice',
    }),
    dilution: number('n', 'dilution exponent', '1', {
      default: 1,
      min: 0,
      max: 6,
      from: '1: kill in proportion to concentration, Chick and Watson',
    }),
    z: number('z', 'temperature difference for a factor of ten; 1000 for none', 'K', {
      default: 1000,
      min: 5,
      max: 1000,
      from: 'so great that temperature does not count',
    }),
    shoulder_min: number('S', 'shoulder', 'min', {
      default: 0,
      min: 0,
      max: 1e5,
      from: 'none when left empty',
    }),
  },
  outputs: {
    reduction_log10: { symbol: 'R', label: 'log reduction', unit: 'log10' },
    decimal_min: { symbol: 'D', label: 'decimal reduction time at C and T', unit: 'min' },
    concentrationTime_min: { symbol: 'Ct', label: 'concentration times time', unit: 'min' },
  },
  equation: ['D = D_ref (C_ref/C)^n 10^((T_ref - T)/z)', 'R = max(0, (t - S)/D)'],
  validity:
    'Within a factor of about two of the reference concentration and 20 K of the reference temperature, same phase, pH, soil and organism. C x t is not a constant: published pairs differ.',
  source: 'H. Chick (1908), H. E. Watson (1908); data of the disinfectant as given by the user',
  example: {
    inputs: {
      phase: 'fog',
      concentration: 0.06,
      time_min: 9.6,
      reduction_min: 1.1,
      referenceConcentration: 0.06,
      shoulder_min: 4.1,
    },
    expected: { reduction_log10: 5, decimal_min: 1.1 },
    tolerance: 1e-9,
    source: 'check values K-19 and K-20: 0.06 % peracetic acid, fog, 4.1 + 5 x 1.1 = 9.6 min',
  },
  caution:
    'Disinfectants harm skin, eyes and lungs: exposure limits and the safety data sheet govern; never mix products.',
  compute(x) {
    const ratio = x.referenceConcentration / x.concentration;
    const decimal =
      x.reduction_min * ratio ** x.dilution * 10 ** ((x.reference_degC - x.temperature_degC) / x.z);
    return {
      values: {
        reduction_log10: Math.max(0, (x.time_min - x.shoulder_min) / decimal),
        decimal_min: decimal,
        concentrationTime_min: x.concentration * x.time_min,
      },
      warnings: [
        ...(ratio > 2 || ratio < 0.5
          ? ['More than a factor of two away from the reference concentration: extrapolated.']
          : []),
        ...(Math.abs(x.temperature_degC - x.reference_degC) > 20
          ? ['More than 20 K away from the reference temperature: extrapolated.']
          : []),
        ...(x.phase === 'liquid'
          ? []
          : ['Fog and vapour reach shadowed faces unevenly: prove it on the part.']),
      ],
    };
  },
});
