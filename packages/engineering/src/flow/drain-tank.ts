import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';
import { gravity } from '../water/properties.ts';
import { areaOf } from './pipe-state.ts';

/** Area of the liquid surface in m2 at level h, for a tank of diameter D, length L and cone angle. */
const surfaces = {
  uprightCylinder: (_h: number, D: number) => (Math.PI / 4) * D * D,
  horizontalCylinder: (h: number, D: number, L: number) => 2 * L * Math.sqrt(Math.max(0, h * (D - h))),
  sphere: (h: number, D: number) => Math.PI * h * (D - h),
  cone: (h: number, _D: number, _L: number, halfAngle: number) => Math.PI * (h * Math.tan(halfAngle)) ** 2,
  coneBottom: (h: number, D: number, _L: number, halfAngle: number) =>
    Math.PI * Math.min(D / 2, h * Math.tan(halfAngle)) ** 2,
  dishedBottom: (h: number, D: number) => {
    const below = Math.max(0, 1 - (4 * h) / D);
    return (Math.PI / 4) * D * D * (1 - below * below);
  },
};

/**
 * Integral of A(h)/sqrt(h) from low to high. With h = low + (high - low) sin^2(t) the square roots at both ends
 * vanish, and Simpson's rule on t converges fast.
 */
function drainIntegral(area: (h: number) => number, low: number, high: number): number {
  const steps = 2000;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const t = ((Math.PI / 2) * i) / steps;
    const h = low + (high - low) * Math.sin(t) ** 2;
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    const stretch = 2 * (high - low) * Math.sin(t) * Math.cos(t);
    const root = Math.sqrt(h);
    sum += weight * (root === 0 ? 2 * Math.sqrt(high) * area(0) : (area(h) / root) * stretch);
  }
  return (sum * (Math.PI / 2)) / steps / 3;
}

export const drainTank = calculation({
  name: 'drain-tank',
  title: 'Time for a tank to drain through its outlet (Torricelli)',
  inputs: {
    shape: choice('shape', {
      uprightCylinder: 'upright cylinder',
      horizontalCylinder: 'horizontal cylinder with flat ends',
      sphere: 'sphere',
      cone: 'cone with the tip at the outlet',
      coneBottom: 'upright cylinder with a conical bottom',
      dishedBottom: 'upright cylinder with a 2:1 ellipsoidal bottom',
    }),
    diameter: number('D', 'diameter (of a cone: not used)', 'm', {
      default: 1,
      min: 0.01,
      max: 30,
      from: 'one of its unit',
    }),
    length: number('L', 'length of a horizontal cylinder', 'm', {
      default: 1,
      min: 0.01,
      max: 50,
      from: 'one of its unit',
    }),
    coneAngle_deg: number('phi', 'full angle of the cone', 'deg', {
      default: 60,
      min: 5,
      max: 170,
      from: 'a usual size, common practice',
    }),
    start: number('h_1', 'level above the outlet at the start', 'm', { min: 0, max: 30 }),
    end: number('h_2', 'level at the end', 'm', {
      default: 0,
      min: 0,
      max: 30,
      from: 'none when left empty',
    }),
    outlet_mm: number('d', 'bore of the outlet', 'mm', {
      default: 50,
      min: 1,
      max: 1000,
      from: 'a usual size, common practice',
    }),
    discharge: number('Cd', 'discharge coefficient', '1', {
      default: 0.62,
      min: 0.3,
      max: 1,
      from: 'sharp-edged outlet, handbook value',
    }),
  },
  outputs: {
    time: { symbol: 't', label: 'time to drain', unit: 's' },
    startFlow_m3h: { symbol: 'Q_1', label: 'flow at the start', unit: 'm3/h' },
  },
  equation: [
    't = integral from h_2 to h_1 of A(h) / (Cd a sqrt(2 g h)) dh, a = pi d^2 / 4',
    'Q_1 = Cd a sqrt(2 g h_1)',
  ],
  validity:
    'Vented tank, thin liquid, short outlet that stays full; vortex and outlet line slow it down. A film and what lies below the outlet remain.',
  source: 'E. Torricelli (1643); discharge coefficient from handbooks',
  example: {
    inputs: {
      shape: 'horizontalCylinder',
      diameter: 1.2,
      length: 2,
      start: 1.2,
      outlet_mm: 50,
      discharge: 0.62,
    },
    expected: { time: 650.2 },
    tolerance: 1e-5,
    source: 'check value P-24: (4/3) L D^1.5 / (Cd a sqrt(2g))',
  },
  compute(x) {
    const top =
      x.shape === 'horizontalCylinder' || x.shape === 'sphere' ? x.diameter : Number.POSITIVE_INFINITY;
    if (x.start > top * (1 + 1e-12))
      return refuse(`The level of ${x.start} m is above the tank of ${x.diameter} m`);
    if (x.end > x.start) return refuse('The end level is above the start level');
    const halfAngle = (x.coneAngle_deg * Math.PI) / 360;
    const outlet = x.discharge * areaOf(x.outlet_mm / 1000) * Math.sqrt(2 * gravity);
    const area = (h: number) => surfaces[x.shape](h, x.diameter, x.length, halfAngle);
    return {
      values: {
        time: drainIntegral(area, x.end, x.start) / outlet,
        startFlow_m3h: outlet * Math.sqrt(x.start) * 3600,
      },
    };
  },
});
