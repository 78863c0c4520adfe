import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { gammaQuantile } from '../numeric/special.ts';

export const washoutTanks = calculation({
  name: 'rinse-tanks-in-series',
  title: 'Rinse volume to wash a liquid out (tanks in series)',
  inputs: {
    tanks: number('N', 'number of equal stirred tanks; 1 is one mixed volume, 50 nearly plug flow', '1', {
      default: 1,
      min: 1,
      max: 500,
      whole: true,
      from: 'one mixed volume',
    }),
    fraction: number('C/C0', 'concentration that may be left', '1', {
      default: 1e-3,
      min: 1e-9,
      max: 0.9,
      from: 'a thousandth is left, common practice',
    }),
    holdUp_L: number('V', 'volume of the circuit', 'L', {
      default: 100,
      min: 0,
      from: 'an example: give your own',
    }),
    flow_Lmin: number('Q', 'rinse flow', 'L/min', {
      default: 100,
      min: 1e-6,
      from: 'an example: give your own',
    }),
  },
  outputs: {
    volumes: { symbol: 'theta', label: 'rinse volumes over the hold-up', unit: '1' },
    rinse_L: { symbol: 'V_r', label: 'rinse volume', unit: 'L' },
    time_min: { symbol: 't', label: 'rinse time', unit: 'min' },
  },
  equation: [
    'C/C0 = Q_inc(N, N theta), the upper regularised incomplete gamma function; N = 1: C/C0 = exp(-theta)',
    'V_r = theta V, t = V_r / Q',
  ],
  validity:
    'What mixes with the rinse. Soil that sticks, dead legs and pockets rinse by diffusion, far more slowly.',
  source: 'O. Levenspiel, Chemical Reaction Engineering, 3rd edition, chapter 14',
  example: {
    inputs: { tanks: 5, fraction: 1e-3 },
    expected: { volumes: 2.95883 },
    tolerance: 1e-6,
    source: 'check value P-28-5',
  },
  compute({ tanks, fraction, holdUp_L, flow_Lmin }) {
    const volumes = gammaQuantile(1 - fraction, tanks) / tanks;
    return { values: { volumes, rinse_L: volumes * holdUp_L, time_min: (volumes * holdUp_L) / flow_Lmin } };
  },
});
