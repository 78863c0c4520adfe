/** Rinsing, dead legs, draining and suction against check values and closed forms. */
import { describe, expect, it } from 'vitest';
import { tipConcentration } from '../../packages/engineering/src/flow/dead-leg-exchange.ts';
import { normalCdf } from '../../packages/engineering/src/numeric/special.ts';
import { type CheckRow, checkRows } from './check.ts';

/** Cd a sqrt(2 g) of the default outlet of 50 mm. */
const outlet = 0.62 * (Math.PI / 4) * 0.05 ** 2 * Math.sqrt(2 * 9.80665);

describe('rinsing, dead legs, draining, suction', () => {
  const rows: CheckRow[] = [
    ...(
      [
        [1, 1e-2, 4.60517], // P-27-2
        [1, 1e-3, 6.907755], // P-27-3
        [2, 1e-1, 1.94486],
        [2, 1e-2, 3.319176],
        [2, 1e-3, 4.616707],
        [5, 1e-1, 1.598718],
        [5, 1e-2, 2.320925],
        [5, 1e-3, 2.95883],
        [10, 1e-1, 1.420599],
        [10, 1e-2, 1.878312],
        [10, 1e-3, 2.265737],
        [50, 1e-1, 1.18498],
        [50, 1e-2, 1.358067],
        [50, 1e-3, 1.494493],
      ] as const
    ).map(([tanks, fraction, volumes]) => ({
      id: `P-27/P-28 N=${tanks} to ${fraction}`,
      calculation: 'rinse-tanks-in-series',
      inputs: { tanks, fraction },
      expected: { volumes },
      tolerance: 1e-6,
      why: 'printed with 7 digits',
    })),
    {
      id: 'P-23',
      calculation: 'drain-tank',
      inputs: { shape: 'uprightCylinder', diameter: 1.5, start: 2, end: 0.05 },
      expected: { time: 780.5 },
      tolerance: 2e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'P-23 to empty',
      calculation: 'drain-tank',
      inputs: { shape: 'uprightCylinder', diameter: 1.5, start: 2 },
      expected: { time: 927.09 },
      tolerance: 2e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'P-24',
      calculation: 'drain-tank',
      inputs: { shape: 'horizontalCylinder', diameter: 1.2, length: 2, start: 1.2 },
      expected: { time: 650.2 },
      tolerance: 2e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'P-25',
      calculation: 'drain-tank',
      inputs: { shape: 'sphere', diameter: 1.2, start: 1.2 },
      expected: { time: 245.12 },
      tolerance: 3e-5,
      why: 'printed with 5 digits',
    },
    // Closed form of a cone: t = (2/5) pi tan^2(phi/2) h^2.5 / (Cd a sqrt(2g)).
    // 2:1 ellipsoidal bottom of depth b = D/4 under a cylinder: A = pi D^2/4 (2h/b - h^2/b^2), so the integral of
    // A/sqrt(h) is pi D^2/4 (14/15 sqrt(b) + 2 (sqrt(H) - sqrt(b))).
    {
      id: 'closed form, cylinder with ellipsoidal bottom',
      calculation: 'drain-tank',
      inputs: { shape: 'dishedBottom', diameter: 1.6, start: 2 },
      expected: {
        time:
          ((Math.PI / 4) * 1.6 ** 2 * ((14 / 15) * Math.sqrt(0.4) + 2 * (Math.sqrt(2) - Math.sqrt(0.4)))) /
          outlet,
      },
      tolerance: 1e-6,
      why: 'quadrature over a kink against closed form',
    },
    // Cone of 60 degrees under a cylinder of 1.2 m: height of the cone b = 0.6/tan(30 degrees).
    {
      id: 'closed form, cylinder with conical bottom',
      calculation: 'drain-tank',
      inputs: { shape: 'coneBottom', diameter: 1.2, coneAngle_deg: 60, start: 2 },
      expected: {
        time:
          ((2 / 5) * Math.PI * Math.tan(Math.PI / 6) ** 2 * (0.6 * Math.sqrt(3)) ** 2.5 +
            (Math.PI / 4) * 1.2 ** 2 * 2 * (Math.sqrt(2) - Math.sqrt(0.6 * Math.sqrt(3)))) /
          outlet,
      },
      tolerance: 1e-6,
      why: 'quadrature over a kink against closed form',
    },
    {
      id: 'closed form, cone',
      calculation: 'drain-tank',
      inputs: { shape: 'cone', coneAngle_deg: 60, start: 1 },
      expected: {
        time:
          ((2 / 5) * Math.PI * Math.tan(Math.PI / 6) ** 2) /
          (0.62 * (Math.PI / 4) * 0.05 ** 2 * Math.sqrt(2 * 9.80665)),
      },
      tolerance: 1e-7,
      why: 'quadrature against closed form',
    },
    {
      id: 'P-26',
      calculation: 'npsh-available',
      inputs: { temperature_degC: 80, head: 1.5, loss: 0.8 },
      expected: { available: 6.3568 },
      tolerance: 1e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'P-29',
      calculation: 'dead-leg-temperature',
      inputs: { ratio: 1, bore_mm: 100, diffusivity: 1.5e-9 },
      expected: { diffusion_h: 77.16 * 24 },
      tolerance: 1e-4,
      why: 'printed with 4 digits',
    },
    {
      id: 'H-34',
      calculation: 'dead-leg-ratio',
      inputs: { rule: 'sixFromAxis', length_mm: 5.5 * 38, branch_mm: 38, main_mm: 38 },
      expected: { ratio: 6, fromWall: 5.5 },
      tolerance: 1e-12,
      why: 'geometry',
    },
    ...(
      [
        [1, 72.745, 26, 13.8, 93.89],
        [1.5, 65.517, 39, 20.71, 211.25],
        [2, 57.784, 52, 27.61, 375.56],
        [3, 44.24, 78, 41.41, 845],
        [6, 25.332, 156, 82.82, 3380],
      ] as const
    ).map(([ratio, tip_degC, length_mm, volume_mL, diffusion_h]) => ({
      id: `WP10 L/D=${ratio}`,
      calculation: 'dead-leg-temperature',
      inputs: { ratio },
      expected: { tip_degC, length_mm, volume_mL, diffusion_h },
      tolerance: 4e-4,
      why: 'volume printed with 4 digits; conductivity of water there printed by its product only',
    })),
    {
      id: 'WP1',
      calculation: 'cleaning-line',
      inputs: {
        bore_mm: 50,
        speed: 1.5,
        length: 60,
        losses: 7,
        lift: 4,
        temperature_degC: 80,
        pressure_kPa: 300,
      },
      expected: {
        reynolds: 205844,
        friction: 0.015682,
        wallShear: 4.2866,
        frictionLoss: 20575.9,
        minorLoss: 7653.6,
        staticLoss: 38124,
        total_kPa: 66.3536,
        power: 355.3,
        head: 6.962,
      },
      tolerance: 1e-4,
      why: 'power printed with 4 digits',
    },
    {
      id: 'WP1 suction',
      calculation: 'npsh-available',
      inputs: { temperature_degC: 80, head: 1.5, loss: 0.8 },
      expected: { available: 6.3563 },
      tolerance: 2e-4,
      why: 'that problem uses the density at 0.3 MPa',
    },
    {
      id: 'WP3 outlet',
      calculation: 'outlet-head',
      inputs: { flow_m3h: 11.30973, outlet_mm: 50 },
      expected: { head_mm: 339.6 },
      tolerance: 2e-4,
      why: 'printed with 4 digits',
    },
    // A line with 1 % slope and 12 mm sag over 3 m.
    {
      id: 'closed form, sagging line',
      calculation: 'sagging-line',
      inputs: { slope_pct: 1, span: 3, sag_mm: 12 },
      expected: { end_pct: -0.6, depth_mm: 1.6875, poolLength_mm: 1125 },
      tolerance: 1e-9,
      why: 'closed form',
    },
    // Buckingham-Reiner for a Bingham plastic: v = (d tau_w / (8 mu)) (1 - 4/3 phi + phi^4/3); phi = 0.5, d 0.05,
    // tau_w 20 Pa, mu 0.1 Pa s: v = 1.25 (1 - 2/3 + 1/48) = 0.442708 m/s.
    {
      id: 'Buckingham-Reiner',
      calculation: 'herschel-bulkley-pipe',
      inputs: { bore_mm: 50, speed: 0.4427083333333333, yieldStress: 10, consistency: 0.1, index: 1 },
      expected: { wallShear: 20, plug: 0.5 },
      tolerance: 1e-9,
      why: 'closed form',
    },
    // Rabinowitsch-Mooney for a power law: tau_w = k (8v/d (3n+1)/(4n))^n = 5 (80 * 2.5/2)^0.5 = 50 Pa.
    {
      id: 'Rabinowitsch-Mooney',
      calculation: 'power-law-pipe',
      inputs: { bore_mm: 50, speed: 0.5, consistency: 5, index: 0.5 },
      expected: { wallShear: 5 * Math.sqrt(80 * 1.25), shearRate: 100 },
      tolerance: 1e-9,
      why: 'closed form',
    },
  ];
  checkRows(rows);
});

describe('diffusion into a dead leg', () => {
  it('the series agrees with the error-function form for short times (Crank, equation 2.70)', () => {
    for (const fourier of [0.01, 0.03, 0.06, 0.1, 0.2]) {
      let sum = 0;
      for (let n = 0; n < 6; n++)
        sum +=
          2 * (n % 2 === 0 ? 1 : -1) * 2 * normalCdf(-((2 * n + 1) / (2 * Math.sqrt(fourier))) * Math.SQRT2);
      // Two exact forms of one solution.
      expect(Math.abs(tipConcentration(fourier) - sum), `${fourier}`).toBeLessThan(1e-12);
    }
  });

  it('rises with time and stays between nothing and all', () => {
    let last = 0;
    for (let i = 0; i <= 400; i++) {
      const c = tipConcentration(i / 100);
      expect(c >= last && c <= 1).toBe(true);
      last = c;
    }
    expect(last).toBeGreaterThan(0.9999);
  });
});
