import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const lightCurtain = calculation({
  name: 'light-curtain-distance',
  title: 'Distance of a light curtain from the danger (ISO 13855:2010)',
  inputs: {
    stopping: number('T', 'overall stopping time', 's', { min: 0.001, max: 10 }),
    resolution_mm: number('d', 'resolution of the curtain', 'mm', {
      default: 14,
      min: 14,
      max: 40,
      from: 'finger detection, common practice',
    }),
  },
  outputs: {
    distance_mm: { symbol: 'S', label: 'smallest distance', unit: 'mm' },
    speed_mms: { symbol: 'K', label: 'approach speed that counts', unit: 'mm/s' },
  },
  equation: [
    'S = K T + 8 (d - 14 mm)',
    'K = 2000 mm/s, S at least 100 mm; if S > 500 mm: K = 1600 mm/s, S at least 500 mm',
  ],
  validity:
    'Vertical curtain, approach at right angles, resolution up to 40 mm. The edition of 2024 changed the method.',
  source: 'ISO 13855:2010, 6.2.3, from memory',
  example: {
    inputs: { stopping: 0.5, resolution_mm: 14 },
    expected: { distance_mm: 800, speed_mms: 1600 },
    tolerance: 1e-12,
    source: 'check value E-06-0p5_14, from memory',
  },
  caution:
    'Moving parts maim: a competent person must measure the stopping time and judge with the standard in force.',
  compute({ stopping, resolution_mm }) {
    const extra = 8 * (resolution_mm - 14);
    const fast = 2000 * stopping + extra;
    return {
      values:
        fast > 500
          ? { distance_mm: Math.max(500, 1600 * stopping + extra), speed_mms: 1600 }
          : { distance_mm: Math.max(100, fast), speed_mms: 2000 },
      warnings: ['The formula is from memory: check it against the edition in force.'],
    };
  },
});
