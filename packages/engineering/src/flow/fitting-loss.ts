import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';

/** D. C. Rennels, H. M. Hudson, Pipe Flow (2012), chapter 10: on the downstream speed. */
function contraction(ratio: number): number {
  const lambda = 1 + 0.622 * (1 - 0.215 * ratio ** 2 - 0.785 * ratio ** 5);
  return 0.0696 * (1 - ratio ** 5) * lambda ** 2 + (lambda - 1) ** 2;
}

/** Same book, chapter 15: smooth bend with angle in radian, radius of the axis over bore. */
function bend(angle: number, radiusRatio: number, friction: number): number {
  const s = Math.sin(angle / 2);
  return (
    friction * angle * radiusRatio +
    (0.1 + 2.4 * friction) * s +
    (6.6 * friction * (Math.sqrt(s) + s)) / radiusRatio ** ((4 * angle) / Math.PI)
  );
}

export const fittingLoss = calculation({
  name: 'fitting-loss',
  title: 'Loss coefficient of an enlargement, contraction, entrance or bend',
  inputs: {
    kind: choice('fitting', {
      expansion: 'sudden enlargement from the bore to the other bore, on the upstream speed',
      contraction: 'sudden contraction from the other bore to the bore, on the downstream speed',
      entrance: 'sharp-edged entrance from a tank',
      exit: 'exit into a tank',
      bend: 'smooth bend',
    }),
    bore_mm: number('d', 'smaller bore', 'mm', {
      default: 50,
      min: 1,
      max: 1000,
      from: 'a usual size, common practice',
    }),
    otherBore_mm: number('D', 'larger bore', 'mm', {
      default: 100,
      min: 1,
      max: 2000,
      from: 'a usual size, common practice',
    }),
    angle_deg: number('alpha', 'angle of the bend', 'deg', {
      default: 90,
      min: 1,
      max: 180,
      from: 'a quarter bend',
    }),
    radiusRatio: number('r/d', 'radius of the axis over bore', '1', {
      default: 1.5,
      min: 1,
      max: 20,
      from: 'common practice',
    }),
    friction: number('f', 'Darcy friction factor of the bend', '1', {
      default: 0.02,
      min: 0.005,
      max: 0.1,
      from: 'common practice',
    }),
    speed: number('v', 'speed in the smaller bore', 'm/s', {
      default: 1.5,
      min: 0,
      max: 20,
      from: 'usual least speed of cleaning in place, common practice',
    }),
    density: number('rho', 'density', 'kg/m3', {
      default: 1000,
      min: 500,
      max: 2000,
      from: 'cold water, rounded',
    }),
  },
  outputs: {
    coefficient: { symbol: 'K', label: 'loss coefficient', unit: '1' },
    loss: { symbol: 'dp', label: 'pressure loss', unit: 'Pa' },
  },
  equation: [
    'enlargement: K = (1 - (d/D)^2)^2',
    'contraction: K = 0.0696 (1 - b^5) l^2 + (l - 1)^2, b = d/D, l = 1 + 0.622 (1 - 0.215 b^2 - 0.785 b^5)',
    'entrance: K = 0.57 (handbooks also give 0.5); exit: K = 1',
    'bend: K = f alpha r/d + (0.1 + 2.4 f) sin(alpha/2) + 6.6 f (sqrt(sin(alpha/2)) + sin(alpha/2)) / (r/d)^(4 alpha/pi)',
    'dp = K rho v^2 / 2',
  ],
  validity:
    'Turbulent flow, round pipes; a bend in good workmanship. Tabulated coefficients scatter by 20 % and more.',
  source:
    'J.-C. Borda, L. Carnot (enlargement); D. C. Rennels, H. M. Hudson, Pipe Flow (2012), chapters 9, 10, 15',
  example: {
    inputs: { kind: 'contraction', bore_mm: 50, otherBore_mm: 100 },
    expected: { coefficient: 0.4956 },
    tolerance: 2e-4,
    source: 'check value P-15',
  },
  compute(x) {
    const ratio = x.bore_mm / x.otherBore_mm;
    if (ratio > 1 && (x.kind === 'expansion' || x.kind === 'contraction'))
      return refuse('The other bore must be the larger one');
    const coefficient = {
      expansion: (1 - ratio ** 2) ** 2,
      contraction: contraction(ratio),
      entrance: 0.57,
      exit: 1,
      bend: bend((x.angle_deg * Math.PI) / 180, x.radiusRatio, x.friction),
    }[x.kind];
    return { values: { coefficient, loss: (coefficient * x.density * x.speed ** 2) / 2 } };
  },
});
