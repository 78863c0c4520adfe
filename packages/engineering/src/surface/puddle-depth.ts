import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { puddleDepthAt, radians } from './puddle.ts';

export const puddleDepth = calculation({
  name: 'puddle-depth',
  title: 'Depth of the puddle that a level plate keeps',
  inputs: {
    contactAngle_deg: number('theta', 'contact angle at the rim', 'deg', {
      default: 60,
      min: 0,
      max: 180,
      from: 'common practice for rinsed stainless steel, 30 to 90 degrees',
    }),
    temperature_degC: number('T', 'water temperature', 'degC', {
      default: 20,
      min: 0.01,
      max: 100,
      from: 'a room, common practice',
    }),
  },
  outputs: {
    depth_mm: { symbol: 'h', label: 'puddle depth', unit: 'mm' },
    capillaryLength_mm: { symbol: 'lc', label: 'capillary length', unit: 'mm' },
    perArea_Lm2: { symbol: 'V/A', label: 'volume per area', unit: 'L/m2' },
  },
  equation: ['lc = sqrt(sigma / (rho g))', 'h = 2 lc sin(theta/2)', 'V/A = h'],
  validity:
    'A puddle much wider than the capillary length (about 20 mm and more) on a level, smooth plate; clean water.',
  source: 'P.-G. de Gennes, F. Brochard-Wyart, D. Quere, Capillarity and Wetting Phenomena (2004), 2.2',
  example: {
    inputs: { contactAngle_deg: 60, temperature_degC: 20 },
    expected: { depth_mm: 2.7257 },
    tolerance: 1e-4,
    source: 'check value P-33',
  },
  compute({ contactAngle_deg, temperature_degC }) {
    const depth = 1000 * puddleDepthAt(contactAngle_deg * radians, temperature_degC);
    return {
      values: {
        depth_mm: depth,
        capillaryLength_mm: 500 * puddleDepthAt(Math.PI, temperature_degC),
        perArea_Lm2: depth,
      },
    };
  },
});
