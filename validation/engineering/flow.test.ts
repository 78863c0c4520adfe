/** Pipe flow, rinsing, dead legs and draining against check values and an independent library. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { colebrook1939, haaland1983, swameeJain1976 } from '../../packages/engineering/src/flow/friction.ts';
import { type CheckRow, checkRows } from './check.ts';

interface Reference {
  readonly friction: readonly Readonly<Record<string, number>>[];
  readonly contraction: readonly { readonly ratio: number; readonly K: number }[];
  readonly expansion: readonly { readonly ratio: number; readonly K: number }[];
  readonly bends: readonly Readonly<Record<string, number>>[];
}
const reference = JSON.parse(
  readFileSync(new URL('./reference/fittings.json', import.meta.url), 'utf8'),
) as Reference;

describe('friction factors', () => {
  const printed: [number, number, number, number, number][] = [
    [1e4, 0, 0.030883, 0.030886, 0.030972],
    [1e5, 0, 0.01799, 0.017825, 0.017863],
    [1e5, 1e-4, 0.018514, 0.018265, 0.018452],
    [1e5, 1e-3, 0.022175, 0.021966, 0.022342],
    [1e6, 1e-4, 0.013441, 0.013326, 0.013508],
    [5e4, 0.02, 0.049409, 0.049489, 0.04979],
  ];
  const methods = ['colebrook', 'haaland', 'swameeJain'] as const;
  checkRows(
    printed.flatMap(([reynolds, relativeRoughness, ...values]) =>
      methods.map((method, i) => ({
        id: `P-05-${reynolds}_e${relativeRoughness} ${method}`,
        calculation: 'friction-factor',
        inputs: { reynolds, relativeRoughness, method },
        expected: { factor: values[i] },
        tolerance: 4e-5,
        why: 'printed with 5 digits',
      })),
    ),
  );
  checkRows(
    reference.friction.flatMap(({ reynolds, relativeRoughness, ...values }) =>
      Object.entries(values).map(([method, factor]) => ({
        id: `python3-fluids Re ${reynolds} eps/D ${relativeRoughness} ${method}`,
        calculation: 'friction-factor',
        inputs: { reynolds, relativeRoughness, method },
        expected: { factor },
        tolerance: method === 'swameeJain' ? 2e-6 : 1e-9,
        why: 'same formula in double precision; that library writes 5.74 as 6.97^0.9',
      })),
    ),
  );

  it('P-06: Haaland stays within -1.42..+1.31 %, Swamee-Jain within -0.71..+3.36 % of Colebrook', () => {
    const range = (formula: (re: number, eps: number) => number) => {
      const found = [0, 0];
      for (let i = 0; i <= 220; i++)
        for (let j = -1; j <= 60; j++) {
          const reynolds = 4000 * 25000 ** (i / 220);
          const eps = j < 0 ? 0 : 1e-6 * 50000 ** (j / 60);
          const deviation = 100 * (formula(reynolds, eps) / colebrook1939(reynolds, eps) - 1);
          found[0] = Math.min(found[0], deviation);
          found[1] = Math.max(found[1], deviation);
        }
      return found;
    };
    // 0.05 % absolute: the extremes depend a little on the grid.
    const [hLow, hHigh] = range(haaland1983);
    expect(Math.abs(hLow + 1.42)).toBeLessThan(0.05);
    expect(Math.abs(hHigh - 1.31)).toBeLessThan(0.05);
    const [sLow, sHigh] = range(swameeJain1976);
    expect(Math.abs(sLow + 0.71)).toBeLessThan(0.05);
    expect(Math.abs(sHigh - 3.36)).toBeLessThan(0.05);
  });
});

describe('pipes and tubes', () => {
  const p07: [string, number, number, number, number, number, number, number][] = [
    ['DN25', 26, 60, 2.867, 82278, 0.018892, 5.2241, 803.7],
    ['DN40', 38, 60, 6.1242, 120253, 0.017443, 4.8233, 507.72],
    ['DN50', 50, 20, 10.6029, 74746, 0.019205, 5.3918, 431.34],
    ['DN50', 50, 60, 10.6029, 158227, 0.016493, 4.5608, 364.86],
    ['DN50', 50, 80, 10.6029, 205857, 0.015682, 4.2862, 342.9],
    ['DN65', 66, 60, 18.4744, 208860, 0.015607, 4.3158, 261.56],
    ['DN80', 81, 60, 27.8262, 256328, 0.014997, 4.1471, 204.8],
    ['DN100', 100, 20, 42.4115, 149492, 0.016622, 4.6667, 186.67],
    ['DN100', 100, 60, 42.4115, 316455, 0.014405, 3.9834, 159.34],
    ['DN100', 100, 80, 42.4115, 411713, 0.013736, 3.7544, 150.17],
  ];
  const rows: CheckRow[] = p07.map(
    ([dn, bore_mm, temperature_degC, flow_m3h, reynolds, friction, wallShear, gradient]) => ({
      id: `P-07-${dn}-${temperature_degC}`,
      calculation: 'pipe-flow-at-speed',
      inputs: { bore_mm, temperature_degC, speed: 1.5, roughness_um: 0.8 },
      expected: { flow_m3h, reynolds, friction, wallShear, gradient },
      tolerance: 5e-5,
      why: 'printed with 5 digits',
    }),
  );
  rows.push(
    {
      id: 'P-08 DN50',
      calculation: 'speed-for-wall-shear',
      inputs: { bore_mm: 50 },
      expected: { speed: 1.189 },
      tolerance: 5e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'P-08 DN100',
      calculation: 'speed-for-wall-shear',
      inputs: { bore_mm: 100 },
      expected: { speed: 1.2831 },
      tolerance: 5e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'P-14',
      calculation: 'fitting-loss',
      inputs: { kind: 'expansion', bore_mm: 50, otherBore_mm: 100 },
      expected: { coefficient: 0.5625 },
      tolerance: 1e-12,
      why: 'closed form',
    },
    {
      id: 'P-15',
      calculation: 'fitting-loss',
      inputs: { kind: 'contraction', bore_mm: 50, otherBore_mm: 100 },
      expected: { coefficient: 0.4956 },
      tolerance: 1e-4,
      why: 'printed with 4 digits',
    },
    {
      id: 'P-16',
      calculation: 'fitting-loss',
      inputs: { kind: 'entrance' },
      expected: { coefficient: 0.57 },
      tolerance: 1e-9,
      why: 'handbook value',
    },
    {
      id: 'P-17',
      calculation: 'fitting-loss',
      inputs: { kind: 'bend', friction: 0.02, radiusRatio: 1.5 },
      expected: { coefficient: 0.2426 },
      tolerance: 2e-4,
      why: 'printed with 4 digits',
    },
  );
  const p11: [string, number, number, number][] = [
    ['DN25', 26, 1.033, 7970],
    ['DN40', 38, 1.484, 7970],
    ['DN50', 50, 1.934, 7970],
    ['DN65', 66, 3.405, 7970],
    ['DN80', 81, 4.156, 7970],
    ['DN100', 100, 5.031, 7850],
    ['DN125', 125, 6.36, 7970],
    ['DN150', 150, 7.497, 7850],
  ];
  for (const [size, bore_mm, mass_kgm, density] of p11)
    rows.push({
      id: `P-11-${size}`,
      calculation: 'tube-size',
      inputs: { size, density },
      expected: { bore_mm, mass_kgm },
      tolerance: 4e-4,
      why: 'mass printed with 4 digits, steel density as there',
    });
  checkRows(rows);
  checkRows([
    ...reference.contraction.map(({ ratio, K }) => ({
      id: `python3-fluids contraction ${ratio}`,
      calculation: 'fitting-loss',
      inputs: { kind: 'contraction', bore_mm: 100 * ratio, otherBore_mm: 100 },
      expected: { coefficient: K },
      tolerance: 1e-9,
      why: 'same formula',
    })),
    ...reference.expansion.map(({ ratio, K }) => ({
      id: `python3-fluids enlargement ${ratio}`,
      calculation: 'fitting-loss',
      inputs: { kind: 'expansion', bore_mm: 100 * ratio, otherBore_mm: 100 },
      expected: { coefficient: K },
      tolerance: 1e-9,
      why: 'same formula',
    })),
    ...reference.bends.map(({ K, ...inputs }) => ({
      id: `python3-fluids bend ${inputs.angle_deg} deg r/d ${inputs.radiusRatio} f ${inputs.friction}`,
      calculation: 'fitting-loss',
      inputs: { kind: 'bend', ...inputs },
      expected: { coefficient: K },
      tolerance: 1e-9,
      why: 'same formula',
    })),
  ]);
});

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
    // Exam of the workbench: a line with 1 % slope and 12 mm sag over 3 m.
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

describe('open surfaces', () => {
  const films: [number, number, number, number, number, number][] = [
    [25, 20, 503.83, 0.827, 1661, 4.9321],
    [30, 20, 535.4, 0.9339, 1993, 5.2411],
    [30, 60, 416.98, 1.1991, 4219, 4.0205],
    [30, 80, 381.96, 1.309, 5490, 3.6402],
    [37, 60, 447.17, 1.379, 5204, 4.3117],
  ];
  checkRows([
    ...films.map(([q, t, thickness_um, speed, reynolds, wallShear]) => ({
      id: `P-21-${q}-${t}`,
      calculation: 'falling-film-nusselt',
      inputs: { perLength_Lminm: q, temperature_degC: t },
      expected: { thickness_um, speed, reynolds, wallShear },
      tolerance: 3e-4,
      why: 'Re printed with 4 digits',
    })),
    {
      id: 'P-33',
      calculation: 'puddle-depth',
      inputs: { contactAngle_deg: 60 },
      expected: { depth_mm: 2.7257, capillaryLength_mm: 2.7257 },
      tolerance: 1e-4,
      why: 'printed with 5 digits, from a rounded surface tension',
    },
    ...(
      [
        [30, 1.4109],
        [60, 2.7257],
        [75, 3.3187],
        [90, 3.8548],
      ] as const
    ).map(([contactAngle_deg, depth_mm]) => ({
      id: `WP11 ${contactAngle_deg} deg`,
      calculation: 'puddle-depth',
      inputs: { contactAngle_deg },
      expected: { depth_mm },
      tolerance: 1e-4,
      why: 'printed with 5 digits, from a rounded surface tension',
    })),
    {
      id: 'WP11 drop',
      calculation: 'drop-retention-furmidge',
      inputs: {},
      expected: { slope_deg: 43.08 },
      tolerance: 2e-4,
      why: 'printed with 4 digits',
    },
    {
      id: 'WP3 spray',
      calculation: 'spray-flow-vertical-tank',
      inputs: { diameter: 2 },
      expected: { circumference: 6.2832, flow_Lmin: 188.5, rinse_L: 848.2 },
      tolerance: 5e-5,
      why: 'printed with 4 digits',
    },
    {
      id: 'WP3 film',
      calculation: 'falling-film-nusselt',
      inputs: { perLength_Lminm: 30, height: 3, width: 2 * Math.PI },
      expected: { massFlow: 0.49165, thickness_um: 416.98, wallShear: 4.021, holdUp_L: 7.86 },
      tolerance: 2e-4,
      why: 'printed with 4 digits',
    },
    // R. Stull, J. Appl. Meteorol. Climatol. 50 (2011) 2267, worked value: 20 degC and 50 % give a wet bulb of
    // 13.7 degC. Radiation warms our surface, so strong air is used, where it hardly counts.
    {
      id: 'Stull 2011, wet bulb',
      calculation: 'drying-time',
      inputs: { depth_mm: 1, room_degC: 20, relativeHumidity_pct: 50, airSpeed: 20, length_mm: 20 },
      expected: { surface_degC: 13.7 },
      tolerance: 0.03,
      why: 'adiabatic saturation against transfer analogy, about 0.3 K',
    },
  ]);
});
