/** Films, puddles, drops, sprays and drying against check values and worked problems. */
import { describe } from 'vitest';
import { checkRows } from './check.ts';

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
    // Evaporation of pools, w = (0.089 + 0.0782 V)(p_w - p_a)/Y kg/(m2 s) with kPa and kJ/kg, halved for still water
    // (ASHRAE Handbook, from memory): 25 degC, 50 %, 0.1 m/s give 0.113 kg/(m2 h), 8.8 h for 1 mm.
    {
      id: 'ASHRAE pool formula, from memory',
      calculation: 'drying-time',
      inputs: { depth_mm: 1, room_degC: 25, relativeHumidity_pct: 50, airSpeed: 0.1, length_mm: 1000 },
      expected: { fastest_h: 8.8 },
      tolerance: 0.5,
      why: 'an order of magnitude: formulas for pools differ among themselves by a factor of two',
    },
  ]);
});
