/**
 * Scenarios that an engineer, a quality manager or an auditor asks about, with the numbers that must come out; and the
 * access tables. Where a value is from memory its row says so.
 */
import { describe } from 'vitest';
import { checkRows } from './check.ts';

describe('access: E-01 and E-05 (ISO 13857, table 4, secondary copy)', () => {
  const rows: [number, number, number, number][] = [
    [4, 2, 2, 2],
    [6, 10, 5, 5],
    [8, 20, 15, 5],
    [10, 80, 25, 20],
    [12, 100, 80, 80],
    [20, 120, 120, 120],
    [30, 850, 120, 120],
    [40, 850, 200, 120],
    [120, 850, 850, 850],
  ];
  const shapes = ['slot', 'square', 'round'] as const;
  checkRows(
    rows.flatMap(([opening_mm, ...distances]) =>
      shapes.map((shape, i) => ({
        id: `E-01 ${opening_mm} mm ${shape}`,
        calculation: 'reach-through-opening',
        inputs: { opening_mm, shape },
        expected: { distance_mm: distances[i] },
        tolerance: 0,
        why: 'table',
      })),
    ),
  );
  checkRows([
    {
      id: 'E-01-20_30 short slot',
      calculation: 'reach-through-opening',
      inputs: { opening_mm: 25, slotLength_mm: 65 },
      expected: { distance_mm: 200 },
      tolerance: 0,
      why: 'note of the table',
    },
    ...(
      [
        [0.1, 14, 200],
        [0.2, 30, 500],
        [0.3, 14, 500],
        [0.5, 14, 800],
      ] as const
    ).map(([stopping, resolution_mm, distance_mm]) => ({
      id: `E-06 T=${stopping} d=${resolution_mm}, from memory`,
      calculation: 'light-curtain-distance',
      inputs: { stopping, resolution_mm },
      expected: { distance_mm },
      tolerance: 1e-12,
      why: 'formula of the 2010 edition',
    })),
  ]);
});

describe('scenarios', () => {
  checkRows([
    // Six log points of a steam-in-place run; z 10 K, reference 121.1 degC.
    {
      id: 'coarse heat log',
      calculation: 'lethality-of-cycle',
      inputs: { times_min: [0, 3, 6, 9, 12, 15], temperatures_degC: [100, 112, 121.5, 121.5, 108, 95] },
      expected: { trapezoid_min: 7.11, lethality_min: 5.81, excess_pct: 22 },
      tolerance: 0.02,
      why: 'printed with 2 to 3 digits',
    },
    {
      id: 'empty swabs against a limit of 0.2',
      calculation: 'swab-result',
      inputs: { colonies: 0, limit_1cm2: 0.2 },
      expected: { detection_1cm2: 0.4, verdict: -1 },
      tolerance: 1e-12,
      why: 'arithmetic',
    },
    {
      id: 'the same with all 10 mL plated',
      calculation: 'swab-result',
      inputs: { colonies: 0, plated_mL: 10, limit_1cm2: 0.2 },
      expected: { detection_1cm2: 0.04, verdict: 1 },
      tolerance: 1e-12,
      why: 'arithmetic',
    },
    {
      id: 'claim of 1 in 10 000',
      calculation: 'sample-size-for-rate',
      inputs: { rate: 1e-4 },
      expected: { units: 29956 },
      tolerance: 0,
      why: 'whole number',
    },
    {
      id: 'weekly light units',
      calculation: 'trend-forecast',
      inputs: { values: [42, 48, 45, 55, 61, 66, 78, 90, 104], limit: 150 },
      expected: { slope: 0.049, crossing: 12.7, rising: 7, alarm: 1 },
      tolerance: 0.005,
      why: 'printed with 2 to 3 digits',
    },
    {
      id: 'jar beside an empty plate',
      calculation: 'settle-plate-to-container',
      inputs: { colonies: 0, mouth_mm: 68, open: 9 },
      expected: { estimate: 3.57e-4, estimateOneIn: 2803, oneIn: 936 },
      tolerance: 8e-4,
      why: 'printed with 3 digits; the upper count there is rounded to 3.00',
    },
    {
      id: 'wider branch in series, speed',
      calculation: 'pipe-flow',
      inputs: { bore_mm: 81, flow_m3h: 10.6, temperature_degC: 60 },
      expected: { speed: 0.57, reynolds: 98000 },
      tolerance: 0.005,
      why: 'printed with 2 digits',
    },
    {
      id: 'wider branch in series, shear',
      calculation: 'pipe-flow',
      inputs: { bore_mm: 81, flow_m3h: 10.6, temperature_degC: 60, roughness_um: 0 },
      expected: { wallShear: 0.72 },
      tolerance: 0.03,
      why: 'there by Blasius',
    },
    {
      id: 'flow for 1.5 m/s in the wider branch',
      calculation: 'pipe-flow-at-speed',
      inputs: { bore_mm: 81, speed: 1.5 },
      expected: { flow_m3h: 27.8 },
      tolerance: 0.002,
      why: 'printed with 3 digits',
    },
    {
      id: 'seal in hot lye, from memory',
      calculation: 'seal-compatibility',
      inputs: {
        material: 'fkm',
        medium: 'naoh',
        concentration_pct: 2,
        temperature_degC: 80,
        contact_min: 40,
      },
      expected: { verdict: 0, exposure_hyr: 243 },
      tolerance: 0.002,
      why: 'printed with 3 digits',
    },
    {
      id: 'peroxide-cured EPDM in the same lye, from memory',
      calculation: 'seal-compatibility',
      inputs: { material: 'epdm', medium: 'naoh', concentration_pct: 2, temperature_degC: 80 },
      expected: { verdict: 2 },
      tolerance: 0,
      why: 'table',
    },
    {
      id: 'EPDM in lye hotter than the table knows',
      calculation: 'seal-compatibility',
      inputs: { material: 'epdm', medium: 'naoh', concentration_pct: 2, temperature_degC: 110 },
      expected: { verdict: -1 },
      tolerance: 0,
      why: 'unknown is never fine',
    },
    {
      id: 'EPDM in fat, from memory',
      calculation: 'seal-compatibility',
      inputs: { material: 'epdm', medium: 'fat' },
      expected: { verdict: 0 },
      tolerance: 0,
      why: 'table',
    },
  ]);
});
