import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const recoveryTime = calculation({
  name: 'recovery-time',
  title: 'Recovery of a mixed room after contamination',
  inputs: {
    airChanges_1h: number('n', 'air changes', '1/h', { min: 0.1, max: 1000 }),
    ratio: number('C0/C', 'ratio of the counts', '1', {
      default: 100,
      min: 1.0001,
      max: 1e9,
      from: '100:1 recovery of ISO 14644-3',
    }),
    effectiveness: number('eta', 'effectiveness of the mixing', '1', {
      default: 1,
      min: 0.1,
      max: 2,
      from: 'ideal mixing',
    }),
    elapsed_min: number('t_e', 'time of interest', 'min', {
      default: 10,
      min: 0,
      max: 1440,
      from: 'an example: give your own',
    }),
  },
  outputs: {
    time_min: { symbol: 't', label: 'time until the counts have fallen by the ratio', unit: 'min' },
    half_min: { symbol: 't_1/2', label: 'half-life', unit: 'min' },
    left_pct: { symbol: 'r', label: 'left after the time of interest', unit: '%' },
  },
  equation: ['C/C0 = exp(-eta n t)', 't = ln(C0/C)/(eta n), t_1/2 = ln 2/(eta n)'],
  validity:
    'Mixed room, supply free of particles, no source. Not for unidirectional flow. A guidance value is 15 to 20 min to the resting state.',
  source: 'ISO 14644-3 (recovery test, 100:1); first-order decay',
  example: {
    inputs: { airChanges_1h: 20 },
    expected: { time_min: 13.8155, half_min: 2.0794, left_pct: 3.5674 },
    tolerance: 2e-5,
    source: 'check value A-19-20 and worked problem WP8',
  },
  compute({ airChanges_1h, ratio, effectiveness, elapsed_min }) {
    const rate = (airChanges_1h * effectiveness) / 60;
    return {
      values: {
        time_min: Math.log(ratio) / rate,
        half_min: Math.LN2 / rate,
        left_pct: 100 * Math.exp(-rate * elapsed_min),
      },
    };
  },
});
