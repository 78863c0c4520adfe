import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const cleanUpRate = calculation({
  name: 'clean-up-rate',
  title: 'Clean-up rate of a room from two counts',
  inputs: {
    first_1m3: number('C0', 'count at the start', '1/m3', { min: 1, max: 1e12 }),
    second_1m3: number('C1', 'count later', '1/m3', { min: 0.01, max: 1e12 }),
    time_min: number('t', 'time between them', 'min', { min: 0.01, max: 1440 }),
    background_1m3: number('C_b', 'count at rest, subtracted from both', '1/m3', {
      default: 0,
      min: 0,
      max: 1e12,
      from: 'none when left empty',
    }),
  },
  outputs: {
    rate_1h: { symbol: 'n', label: 'clean-up rate', unit: '1/h' },
    hundredfold_min: { symbol: 't_100', label: 'time for a hundredfold fall', unit: 'min' },
  },
  equation: ['n = ln((C0 - C_b)/(C1 - C_b))/t', 't_100 = ln 100 / n'],
  validity:
    'Counts in the straight part of the decay, well above the background and below the saturation of the counter.',
  source: 'ISO 14644-3 (recovery test by rate)',
  example: {
    inputs: { first_1m3: 1e6, second_1m3: 1e4, time_min: 13.8155 },
    expected: { rate_1h: 20, hundredfold_min: 13.8155 },
    tolerance: 1e-5,
    source: 'check value A-19-20 read backwards',
  },
  compute({ first_1m3, second_1m3, time_min, background_1m3 }) {
    if (background_1m3 >= second_1m3)
      return refuse('The background is as high as the later count: nothing can be said');
    if (second_1m3 >= first_1m3)
      return refuse('The later count is not lower than the first one: the room does not recover');
    const rate = Math.log((first_1m3 - background_1m3) / (second_1m3 - background_1m3)) / (time_min / 60);
    return { values: { rate_1h: rate, hundredfold_min: (60 * Math.log(100)) / rate } };
  },
});
