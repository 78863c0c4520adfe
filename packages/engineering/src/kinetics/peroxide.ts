import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const peroxideLiquid = calculation({
  name: 'hydrogen-peroxide-liquid',
  title: 'Liquid hydrogen peroxide against spores: temperature and concentration',
  inputs: {
    temperature_degC: number('T', 'temperature', 'degC', { min: 0, max: 100, usual: [24, 80] }),
    concentration_pct: number('c', 'concentration by mass', '%', { min: 0.1, max: 50, usual: [10, 20] }),
    time: number('t', 'contact time', 's', { min: 0, max: 86400 }),
    rate_1s: number('k_ref', 'rate at the reference temperature and 10 %', '1/s', {
      default: 0.1,
      min: 1e-6,
      max: 100,
      from: 'B. subtilis spores, 10 %, 60 degC',
    }),
    reference_degC: number('T_ref', 'reference temperature', 'degC', {
      default: 60,
      min: 0,
      max: 100,
      from: 'common practice, from memory',
    }),
    q10: number('Q10', 'factor of the rate for 10 K', '1', {
      default: 1.6,
      min: 1,
      max: 5,
      from: 'common practice, from memory',
    }),
    perFive: number('F_5', 'factor of the rate for 5 % more', '1', {
      default: 1.5,
      min: 1,
      max: 5,
      from: 'common practice, from memory',
    }),
  },
  outputs: {
    reduction_log10: { symbol: 'R', label: 'log reduction, no lag', unit: 'log10' },
    rate: { symbol: 'k', label: 'rate', unit: '1/s' },
    decimal: { symbol: 'D', label: 'decimal reduction time', unit: 's' },
    sixLog: { symbol: 't_6', label: 'time for six log', unit: 's' },
  },
  equation: ['k = k_ref Q10^((T - T_ref)/10) F_5^((c - 10 %)/5 %)', 'D = ln 10 / k, R = t/D, t_6 = 6 D'],
  validity:
    'LIQUID peroxide only, never vapour or condensing vapour: the order of resistance changes with the phase. Published from 10 to 20 %. A lag makes the true time longer.',
  source: 'Swartling and Lindgren, J. Dairy Res. 35 (1968) 423 (secondary copy)',
  example: {
    inputs: { temperature_degC: 80, concentration_pct: 10, time: 60 },
    expected: { decimal: 8.994 },
    tolerance: 1e-4,
    source: 'check value K-17',
  },
  caution:
    'Hydrogen peroxide burns skin, eyes and lungs and feeds fire: exposure limits, ventilation and the safety data sheet govern.',
  compute(x) {
    const rate =
      x.rate_1s *
      x.q10 ** ((x.temperature_degC - x.reference_degC) / 10) *
      x.perFive ** ((x.concentration_pct - 10) / 5);
    const decimal = Math.LN10 / rate;
    return { values: { reduction_log10: x.time / decimal, rate, decimal, sixLog: 6 * decimal } };
  },
});
