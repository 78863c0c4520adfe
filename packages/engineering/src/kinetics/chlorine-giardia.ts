import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const chlorineGiardia = calculation({
  name: 'chlorine-ct-giardia',
  title: 'Free chlorine against Giardia in water: CT by the EPA regression',
  inputs: {
    concentration_mgL: number('C', 'free chlorine', 'mg/L', { min: 0.05, max: 10, usual: [0.4, 4] }),
    ph: number('pH', 'pH of the water', '1', {
      default: 7.5,
      min: 4,
      max: 11,
      usual: [6, 9],
      from: 'a case of the EPA guidance table, from memory',
    }),
    temperature_degC: number('T', 'water temperature', 'degC', {
      default: 10,
      min: 0,
      max: 40,
      usual: [0.5, 25],
      from: 'a case of the EPA guidance table, from memory',
    }),
    reduction_log10: number('L', 'log reduction asked for', 'log10', {
      default: 3,
      min: 0.1,
      max: 6,
      usual: [0.5, 3],
      from: 'a case of the EPA guidance table, from memory',
    }),
  },
  outputs: {
    ct_mgminL: { symbol: 'CT', label: 'concentration times time in mg min/L', unit: 'mg min/L' },
    time_min: { symbol: 't', label: 'contact time at that concentration', unit: 'min' },
  },
  equation: ['CT = 0.2828 pH^2.69 C^0.15 0.933^(T - 5) L', 't = CT / C'],
  validity:
    'Clear drinking water, pH 6 to 9, 0.5 to 25 degC, 0.4 to 4 mg/L. The regression is between -9 and +7 % of the table of the manual; the table governs.',
  source: 'US EPA guidance manual on disinfection, regression by Smith, Clark et al. (secondary copy)',
  example: {
    inputs: { concentration_mgL: 1, ph: 7, temperature_degC: 10 },
    expected: { ct_mgminL: 112.54 },
    tolerance: 1e-4,
    source: 'check value K-25',
  },
  compute({ concentration_mgL, ph, temperature_degC, reduction_log10 }) {
    const ct =
      0.2828 * ph ** 2.69 * concentration_mgL ** 0.15 * 0.933 ** (temperature_degC - 5) * reduction_log10;
    return { values: { ct_mgminL: ct, time_min: ct / concentration_mgL } };
  },
});
