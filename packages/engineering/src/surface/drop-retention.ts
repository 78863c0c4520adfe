import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { gravity, liquidWater } from '../water/properties.ts';
import { radians } from './puddle.ts';

export const dropRetention = calculation({
  name: 'drop-retention-furmidge',
  title: 'Slope at which a drop of water starts to slide (Furmidge 1962)',
  inputs: {
    volume_uL: number('V', 'volume of the drop', 'uL', {
      default: 50,
      min: 1e-3,
      max: 1000,
      from: 'an example: give your own',
    }),
    width_mm: number('w', 'width of the drop across the slope', 'mm', {
      default: 6,
      min: 0.1,
      max: 50,
      from: 'an example: give your own',
    }),
    recedingAngle_deg: number('theta_r', 'receding contact angle', 'deg', {
      default: 20,
      min: 0,
      max: 180,
      from: 'water on used stainless steel, common practice',
    }),
    advancingAngle_deg: number('theta_a', 'advancing contact angle', 'deg', {
      default: 80,
      min: 0,
      max: 180,
      from: 'water on used stainless steel, common practice',
    }),
    temperature_degC: number('T', 'water temperature', 'degC', {
      default: 20,
      min: 0.01,
      max: 100,
      from: 'a room, common practice',
    }),
  },
  outputs: {
    slope_deg: { symbol: 'alpha', label: 'slope at which the drop slides', unit: 'deg' },
    sine: {
      symbol: 'sin alpha',
      label: 'sine of that slope; above 1 the drop stays on a vertical wall',
      unit: '1',
    },
  },
  equation: ['rho g V sin(alpha) = w sigma (cos(theta_r) - cos(theta_a))'],
  validity:
    'A single drop on a smooth plane with known width; where the sine exceeds 1 the drop hangs on a vertical wall and the slope is given as 90 degrees.',
  source: 'C. G. L. Furmidge, J. Colloid Sci. 17 (1962) 309',
  example: {
    inputs: { volume_uL: 50, width_mm: 6, recedingAngle_deg: 20, advancingAngle_deg: 80 },
    expected: { slope_deg: 43.08 },
    tolerance: 2e-4,
    source: 'worked problem WP11, step 3',
  },
  compute({ volume_uL, width_mm, recedingAngle_deg, advancingAngle_deg, temperature_degC }) {
    const { density, surfaceTension } = liquidWater(temperature_degC);
    const hold =
      width_mm *
      1e-3 *
      surfaceTension *
      Math.max(0, Math.cos(recedingAngle_deg * radians) - Math.cos(advancingAngle_deg * radians));
    const sine = hold / (density * gravity * volume_uL * 1e-9);
    return {
      values: { slope_deg: Math.asin(Math.min(1, sine)) / radians, sine },
      warnings: [
        ...(sine >= 1 ? ['This drop stays even on a vertical wall.'] : []),
        ...(advancingAngle_deg < recedingAngle_deg
          ? ['The advancing angle is smaller than the receding one: nothing holds the drop.']
          : []),
      ],
    };
  },
});
