import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const firstAir = calculation({
  name: 'first-air',
  title: 'First air: transit from the filter and drift by a cross draught',
  inputs: {
    speed: number('u', 'speed of the downflow', 'm/s', {
      default: 0.45,
      min: 0.05,
      max: 5,
      usual: [0.36, 0.54],
      from: 'guidance 0.36 to 0.54 m/s',
    }),
    height: number('H', 'distance from the filter to the working height', 'm', {
      default: 0.8,
      min: 0,
      max: 10,
      from: 'an example: give your own',
    }),
    draught: number('c', 'cross draught', 'm/s', { default: 0.05, min: 0, max: 5, from: 'common practice' }),
    margin_mm: number('m', 'distance from the opening to the edge of the clean flow', 'mm', {
      default: 200,
      min: 0,
      max: 1e4,
      from: 'an example: give your own',
    }),
  },
  outputs: {
    drift_mm: { symbol: 'x', label: 'sideways drift at the working height', unit: 'mm' },
    transit: { symbol: 't', label: 'transit time', unit: 's' },
    left_mm: { symbol: 'm - x', label: 'margin left', unit: 'mm' },
    allowed: { symbol: 'c_max', label: 'cross draught that uses up the margin', unit: 'm/s' },
  },
  equation: ['t = H/u, x = c t, c_max = m u/H'],
  validity: 'Undisturbed parallel flow; obstacles, hands and hot surfaces break it up. Prove it with smoke.',
  source: 'Kinematics; guidance on air speed from EU GMP Annex 1 (secondary copy)',
  example: {
    inputs: { speed: 0.45, height: 0.8, draught: 0.05 },
    expected: { transit: 1.7778, drift_mm: 88.9 },
    tolerance: 2e-4,
    source: 'worked problem WP7, step 5',
  },
  compute({ speed, height, draught, margin_mm }) {
    const transit = height / speed;
    const drift = draught * transit * 1000;
    return {
      values: {
        drift_mm: drift,
        transit,
        left_mm: margin_mm - drift,
        allowed: height === 0 ? 1000 : Math.min(1000, (margin_mm / 1000) * (speed / height)),
      },
      warnings: drift > margin_mm ? ['Room air reaches the opening before the first air does.'] : [],
    };
  },
});
