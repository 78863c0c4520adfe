import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { gravity, liquidWater } from '../water/properties.ts';
import { radians } from './puddle.ts';

export const largestDrop = calculation({
  name: 'largest-drop-on-slope',
  title: 'Largest drop that stays on a slope',
  inputs: {
    slope_deg: number('alpha', 'slope of the surface', 'deg', {
      default: 3,
      min: 0.1,
      max: 90,
      from: 'common practice',
    }),
    recedingAngle_deg: number('theta_r', 'receding contact angle', 'deg', {
      default: 20,
      min: 0,
      max: 170,
      from: 'water on used stainless steel, common practice',
    }),
    advancingAngle_deg: number('theta_a', 'advancing contact angle', 'deg', {
      default: 80,
      min: 1,
      max: 170,
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
    volume_uL: { symbol: 'V', label: 'volume of the largest drop that stays', unit: 'uL' },
    width_mm: { symbol: 'w', label: 'its width', unit: 'mm' },
  },
  equation: [
    'rho g V sin(alpha) = w sigma (cos(theta_r) - cos(theta_a))',
    'spherical cap: V = pi w^3 (2 - 3 cos(theta_a) + cos(theta_a)^3) / (24 sin(theta_a)^3)',
  ],
  validity:
    'Drops smaller than about three capillary lengths (8 mm); a larger one is flattened by its weight and the cap is only an estimate.',
  source: 'C. G. L. Furmidge, J. Colloid Sci. 17 (1962) 309, with the volume of a spherical cap',
  example: {
    // Closed form at 90 degrees (half sphere): w^2 = 12 sigma dcos / (pi rho g sin alpha) = 12 * 7.42957 mm2 / pi.
    inputs: { slope_deg: 90, recedingAngle_deg: 0, advancingAngle_deg: 90 },
    expected: { width_mm: 5.32713 },
    tolerance: 1e-4,
    source: 'closed form for a half sphere, lc^2 = 7.42945 mm2 at 20 degC',
  },
  compute({ slope_deg, recedingAngle_deg, advancingAngle_deg, temperature_degC }) {
    const { density, surfaceTension } = liquidWater(temperature_degC);
    const c = Math.cos(advancingAngle_deg * radians);
    const shape = (Math.PI * (2 - 3 * c + c ** 3)) / (24 * Math.sin(advancingAngle_deg * radians) ** 3);
    const hold = Math.max(0, Math.cos(recedingAngle_deg * radians) - c);
    const square = (surfaceTension * hold) / (density * gravity * Math.sin(slope_deg * radians) * shape);
    const width = Math.sqrt(square);
    return {
      values: { volume_uL: shape * width ** 3 * 1e9, width_mm: width * 1000 },
      warnings:
        width > 8.2e-3
          ? ['Wider than three capillary lengths: weight flattens it, so take this as an order of magnitude.']
          : [],
    };
  },
});
