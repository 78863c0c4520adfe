import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const productRecovery = calculation({
  name: 'product-recovery',
  title: 'Product that a water push recovers, and what goes to drain',
  inputs: {
    holdUp_L: number('V', 'product in the line before the push', 'L', { min: 0 }),
    film_pct: number('s', 'share that stays as a film on the walls', '%', {
      default: 2,
      min: 0,
      max: 100,
      from: 'common practice for thin products',
    }),
    zone_L: number('V_m', 'volume of the mixing zone', 'L', {
      default: 10,
      min: 0,
      from: 'an example: give your own',
    }),
    cut_pct: number('c', 'water accepted in the product at the cut', '%', {
      default: 10,
      min: 0,
      max: 100,
      from: 'an example: give your own',
    }),
    pushes_1yr: number('N', 'pushes a year', '1/yr', {
      default: 250,
      min: 0,
      max: 1e5,
      from: 'an example: give your own',
    }),
    value_moneyL: number('m', 'value of the product', 'money/L', {
      default: 1,
      min: 0,
      from: 'an example: give your own',
    }),
  },
  outputs: {
    recovered_L: { symbol: 'V_p', label: 'product recovered', unit: 'L' },
    lostPerPush_L: { symbol: 'V_l', label: 'product lost to drain per push', unit: 'L' },
    yield_pct: { symbol: 'Y', label: 'recovery', unit: '%' },
    lost_m3yr: { symbol: 'L_y', label: 'product lost a year', unit: 'm3/yr' },
    cost_moneyyr: { symbol: 'M_y', label: 'value lost a year', unit: 'money/yr' },
  },
  equation: [
    'linear mixing zone: product accepted from it = V_m (1/2 - (1 - c)^2/2), product in it = V_m/2',
    'V_p = (1 - s) (V - V_m/2) + V_m (1/2 - (1 - c)^2/2), not below 0',
    'V_l = V - V_p',
  ],
  validity:
    'One push without a pig, mixing zone shorter than the line, concentration falling linearly through the zone.',
  source: 'Mass balance of our own; the film share is common practice',
  example: {
    inputs: { holdUp_L: 100, film_pct: 0, zone_L: 10, cut_pct: 100 },
    expected: { recovered_L: 100, yield_pct: 100 },
    tolerance: 1e-12,
    source: 'closed form: without film and with the whole zone accepted nothing is lost',
  },
  compute({ holdUp_L, film_pct, zone_L, cut_pct, pushes_1yr, value_moneyL }) {
    const c = cut_pct / 100;
    const zone = Math.min(zone_L, 2 * holdUp_L);
    const fromZone = zone * (0.5 - (1 - c) ** 2 / 2);
    const recovered = (1 - film_pct / 100) * (holdUp_L - zone / 2) + fromZone;
    const lost = holdUp_L - recovered;
    return {
      values: {
        recovered_L: recovered,
        lostPerPush_L: lost,
        yield_pct: holdUp_L === 0 ? 0 : (100 * recovered) / holdUp_L,
        lost_m3yr: (lost * pushes_1yr) / 1000,
        cost_moneyyr: lost * pushes_1yr * value_moneyL,
      },
      warnings:
        zone_L > 2 * holdUp_L
          ? ['The mixing zone is longer than the line: little product comes out undiluted.']
          : [],
    };
  },
});
