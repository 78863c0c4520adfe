import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { bisect } from '../numeric/root.ts';
import { normalCdf } from '../numeric/special.ts';
import { frictionFactor, turbulentLimit } from './friction.ts';
import { areaOf } from './pipe-state.ts';

export const washoutDispersion = calculation({
  name: 'rinse-axial-dispersion',
  title: 'Mixing zone when water follows product in a long tube (axial dispersion, Taylor 1954)',
  inputs: {
    bore_mm: number('d', 'bore', 'mm', { min: 1, max: 500 }),
    length: number('L', 'length of the tube', 'm', { min: 0.1, max: 1e4 }),
    speed: number('v', 'mean speed', 'm/s', {
      default: 1.5,
      min: 0.01,
      max: 10,
      from: 'usual least speed of cleaning in place, common practice',
    }),
    fraction: number('C/C0', 'concentration at which the cut is made', '1', {
      default: 0.01,
      min: 1e-6,
      max: 0.5,
      from: 'common practice',
    }),
    kinematic_mm2s: number('nu', 'kinematic viscosity', 'mm2/s', {
      default: 1,
      min: 0.1,
      max: 1e4,
      from: 'water at 20 degC, rounded',
    }),
  },
  outputs: {
    zone_L: { symbol: 'V_m', label: 'volume of the mixing zone between C/C0 and 1 - C/C0', unit: 'L' },
    extra_L: { symbol: 'V_x', label: 'water beyond one hold-up until C/C0', unit: 'L' },
    holdUp_L: { symbol: 'V', label: 'hold-up of the tube', unit: 'L' },
    bodenstein: { symbol: 'Bo', label: 'Bodenstein number v L / D_ax', unit: '1' },
    dispersion: { symbol: 'D_ax', label: 'axial dispersion coefficient', unit: 'm2/s' },
    zoneLength: { symbol: 'L_m', label: 'length of the mixing zone', unit: 'm' },
  },
  equation: [
    'D_ax = 10.1 (d/2) u*, u* = v sqrt(f/8)',
    'C/C0 = 1/2 erfc((theta - 1) / (2 sqrt(theta/Bo))), solved for theta at C/C0 and at 1 - C/C0',
    'V_m = (theta_2 - theta_1) V, V_x = (theta_2 - 1) V',
  ],
  validity:
    'Turbulent flow (Re above 4000), like viscosities, straight tube of many bores, Bo above 100. Viscous product leaves a wall film and fittings add to the zone: expect two to three times as much.',
  source:
    'G. I. Taylor, Proc. R. Soc. A 223 (1954) 446 (constant 10.1 from memory); O. Levenspiel, Chemical Reaction Engineering, chapter 13 (open vessel, small dispersion)',
  example: {
    // Re 75 000, f = 0.0190 (smooth): u* = 0.0731; D = 10.1*0.025*0.0731 = 0.01847; Bo = 1.5*60/0.01847 = 4873;
    // theta = 1 -+ 2.3263 sqrt(2/4873) = 0.0471 each way; V = 117.81 L; zone 2*0.0471*117.81 = 11.10 L.
    inputs: { bore_mm: 50, length: 60, speed: 1.5, fraction: 0.01 },
    expected: { zone_L: 11.1, holdUp_L: 117.81 },
    tolerance: 0.01,
    source: 'hand calculation with the normal approximation',
  },
  compute({ bore_mm, length, speed, fraction, kinematic_mm2s }) {
    const d = bore_mm / 1000;
    const reynolds = (speed * d) / (kinematic_mm2s * 1e-6);
    const dispersion = 10.1 * (d / 2) * speed * Math.sqrt(frictionFactor(reynolds, 0) / 8);
    const bodenstein = (speed * length) / dispersion;
    const left = (theta: number) => normalCdf((1 - theta) / Math.sqrt((2 * theta) / bodenstein));
    const end = bisect((t) => left(t) - fraction, 1, 100);
    const start = bisect((t) => left(t) - (1 - fraction), 1e-9, 1);
    const holdUp = areaOf(d) * length * 1000;
    return {
      values: {
        zone_L: (end - start) * holdUp,
        extra_L: (end - 1) * holdUp,
        holdUp_L: holdUp,
        bodenstein,
        dispersion,
        zoneLength: (end - start) * length,
      },
      warnings: [
        ...(reynolds < turbulentLimit
          ? ['Not turbulent (Re below 4000): the front is drawn out much more than this.']
          : []),
        ...(reynolds >= turbulentLimit && reynolds < 20000
          ? ['Below Re 20 000 measured dispersion is larger than this formula gives.']
          : []),
        ...(bodenstein < 100
          ? ['Bo below 100: the tube is short, the result is an order of magnitude.']
          : []),
      ],
    };
  },
});
