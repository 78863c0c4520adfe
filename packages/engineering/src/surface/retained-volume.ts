import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { puddleDepthAt, radians } from './puddle.ts';

export const retainedVolume = calculation({
  name: 'retained-volume',
  title: 'Water that a flat face keeps by surface tension after draining',
  inputs: {
    area_cm2: number('A', 'area of the face', 'cm2', { min: 0 }),
    slope_deg: number('alpha', 'slope of the face', 'deg', {
      default: 0,
      min: 0,
      max: 90,
      from: 'a level face',
    }),
    length_mm: number('L', 'length of the face down the slope', 'mm', {
      default: 100,
      min: 0.1,
      from: 'only used on a slope',
    }),
    contactAngle_deg: number('theta', 'contact angle at the lower rim (advancing)', 'deg', {
      default: 60,
      min: 0,
      max: 180,
      from: 'common practice for rinsed stainless steel, 30 to 90 degrees',
    }),
    recedingAngle_deg: number('theta_r', 'contact angle at the upper rim (receding)', 'deg', {
      default: 20,
      min: 0,
      max: 180,
      from: 'common practice for rinsed stainless steel',
    }),
    temperature_degC: number('T', 'water temperature', 'degC', {
      default: 20,
      min: 0.01,
      max: 100,
      from: 'a room, common practice',
    }),
  },
  outputs: {
    volume_mL: { symbol: 'V', label: 'largest volume that stays', unit: 'mL' },
    meanDepth_mm: { symbol: 'h_m', label: 'mean depth over the face', unit: 'mm' },
    lowerDepth_mm: { symbol: 'h_a', label: 'depth that the lower rim holds', unit: 'mm' },
    upperDepth_mm: { symbol: 'h_r', label: 'depth that the upper rim keeps', unit: 'mm' },
    puddleLength_mm: { symbol: 'L_p', label: 'longest puddle down the slope', unit: 'mm' },
  },
  equation: [
    'h_a = 2 lc sin(theta/2), h_r = 2 lc sin(theta_r/2), lc = sqrt(sigma / (rho g))',
    'level face: V = A h_a',
    'slope: the water surface is level, so the depth falls by L tan(alpha) up the slope; L_p = (h_a - h_r) / tan(alpha)',
    'L <= L_p: V = A (h_a - L tan(alpha)/2); L > L_p: one puddle of length L_p at the lower rim, V = (A/L) L_p (h_a + h_r)/2',
  ],
  validity:
    'An upper estimate for a clean, smooth face wider than about 20 mm. Drops that stay elsewhere on a longer slope and water held in roughness or by a raised edge come on top. A slope that drains this puddle is not dry.',
  source:
    'Hydrostatics with the rim depths of de Gennes, Brochard-Wyart, Quere, Capillarity and Wetting Phenomena (2004), 2.2; the extension to a slope is our own',
  example: {
    inputs: { area_cm2: 10000, slope_deg: 0, contactAngle_deg: 30 },
    expected: { volume_mL: 1410.9, meanDepth_mm: 1.4109 },
    tolerance: 1e-4,
    source: 'worked problem WP11, step 2: 1.411 L/m2 at 30 degrees',
  },
  compute({ area_cm2, slope_deg, length_mm, contactAngle_deg, recedingAngle_deg, temperature_degC }) {
    const lower = 1000 * puddleDepthAt(contactAngle_deg * radians, temperature_degC);
    const upper =
      1000 * puddleDepthAt(Math.min(contactAngle_deg, recedingAngle_deg) * radians, temperature_degC);
    const fall = Math.tan(slope_deg * radians);
    const longest = fall * length_mm <= lower - upper ? length_mm : (lower - upper) / fall;
    const depthInPuddle = lower - (longest * fall) / 2;
    const mean = (depthInPuddle * longest) / length_mm;
    return {
      values: {
        volume_mL: (mean * area_cm2) / 10,
        meanDepth_mm: mean,
        lowerDepth_mm: lower,
        upperDepth_mm: upper,
        puddleLength_mm: longest,
      },
      warnings:
        recedingAngle_deg > contactAngle_deg
          ? ['The receding angle is larger than the advancing one; it was taken as equal.']
          : [],
    };
  },
});
