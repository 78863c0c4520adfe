import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { lethalRate } from './lethality.ts';

export const lethalRateAt = calculation({
  name: 'lethal-rate',
  title: 'Lethal rate, and the time at a temperature that equals a time at the reference',
  inputs: {
    temperature_degC: number('T', 'temperature', 'degC', { min: -20, max: 250 }),
    reference_degC: number('T_ref', 'reference temperature', 'degC', {
      default: 121.1,
      min: 0,
      max: 200,
      from: 'reference of F0, 250 degF',
    }),
    z: number('z', 'temperature difference for a factor of ten', 'K', {
      default: 10,
      min: 1,
      max: 60,
      from: 'of F0, common practice',
    }),
    time_min: number('t_ref', 'time at the reference temperature', 'min', {
      default: 1,
      min: 0,
      max: 1e6,
      from: 'one of its unit',
    }),
  },
  outputs: {
    rate: { symbol: 'L', label: 'lethal rate', unit: '1' },
    equivalent_min: { symbol: 't', label: 'time at the temperature with the same effect', unit: 'min' },
  },
  equation: ['L = 10^((T - T_ref)/z)', 't = t_ref / L'],
  validity: 'Within the temperatures for which z was measured; moist heat and dry heat have different z.',
  source: 'W. D. Bigelow (1921); C. O. Ball (1923)',
  example: {
    inputs: { temperature_degC: 115, reference_degC: 121.11, z: 10 },
    expected: { rate: 0.244906 },
    tolerance: 3e-6,
    source: 'check value K-01-115',
  },
  compute({ temperature_degC, reference_degC, z, time_min }) {
    const rate = lethalRate(temperature_degC, reference_degC, z);
    return {
      values: { rate, equivalent_min: time_min / rate },
      warnings:
        Math.abs(temperature_degC - reference_degC) > 4 * z
          ? ['More than four z away from the reference: this is far outside any measured range.']
          : [],
    };
  },
});
