/** Surface texture, materials, resources and conversions of hygienic design against check values and closed forms. */
import { findCalculation } from '@coveline/engineering';
import { convert } from '@coveline/quantity';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gaussianMeanLine } from '../../packages/engineering/src/texture/gaussian.ts';
import { textureParameters } from '../../packages/engineering/src/texture/parameters.ts';
import { type CheckRow, checkRows } from './check.ts';

describe('texture', () => {
  checkRows(
    (
      [
        [0.015, 0.08, 0.4, 2.5],
        [0.05, 0.25, 1.25, 2.5],
        [0.8, 0.8, 4, 2.5],
        [5, 2.5, 12.5, 8],
        [20, 8, 40, 25],
      ] as const
    ).map(([ra_um, cutoff_mm, evaluation_mm, short_um], i) => ({
      id: `R-01-${i + 1}`,
      calculation: 'roughness-cutoff',
      inputs: { ra_um },
      expected: { cutoff_mm, evaluation_mm, short_um },
      tolerance: 0,
      why: 'table',
    })),
  );

  // R-02: each branch of the 16 % rule; limit 0.8 um. Expected by applying the words of the rule.
  const readings: [string, number[], number, number][] = [
    ['first at 70 %', [0.56], 1, 0],
    ['first above 70 %, too few', [0.6], 0.5, 2],
    ['none of three', [0.7, 0.79, 0.8], 1, 0],
    ['one of three: go on to six', [0.7, 0.85, 0.75], 0.5, 3],
    ['one of six', [0.6, 0.9, 0.7, 0.7, 0.7, 0.7], 1, 0],
    ['two of six: go on to twelve', [0.6, 0.9, 0.9, 0.7, 0.7, 0.7], 0.5, 6],
    ['two of twelve', [0.6, 1.2, 1.2, 0.7, 0.7, 0.7, 0.7, 0.7, 0.7, 0.7, 0.7, 0.7], 1, 0],
    ['three of twelve', [0.6, 1.5, 1.5, 0.7, 0.7, 0.7, 0.7, 0.7, 0.7, 0.7, 0.7, 1.5], 0, 0],
  ];
  checkRows(
    readings.map(([name, readings_um, verdict, more]) => ({
      id: `R-02 ${name}`,
      calculation: 'roughness-rule',
      inputs: { readings_um, limit_um: 0.8 },
      expected: { verdict, more },
      tolerance: 0,
      why: 'words of the rule',
    })),
  );
  checkRows([
    {
      id: 'R-04 max',
      calculation: 'roughness-rule',
      inputs: { readings_um: [0.3, 0.81], limit_um: 0.8, rule: 'max' },
      expected: { verdict: 0 },
      tolerance: 0,
      why: 'words of the rule',
    },
  ]);

  it('R-05 and R-06: sine and triangle of amplitude 1', () => {
    // 100 000 points over 50 waves: sums against integrals, 1e-5 as stated there.
    const n = 100000;
    const wave = (shape: (phase: number) => number) =>
      textureParameters(
        Float64Array.from({ length: n }, (_, i) => shape(((i + 0.5) * 50) / n)),
        1e-3,
        5,
      );
    const sine = wave((p) => Math.sin(2 * Math.PI * p));
    expect(Math.abs(sine.ra - 2 / Math.PI)).toBeLessThan(1e-5);
    expect(Math.abs(sine.rq - Math.SQRT1_2)).toBeLessThan(1e-5);
    expect(Math.abs(sine.rz - 2)).toBeLessThan(1e-5);
    expect(Math.abs(sine.rsm - 2)).toBeLessThan(1e-9);
    const triangle = wave((p) => 1 - 4 * Math.abs((p % 1) - 0.5));
    expect(Math.abs(triangle.ra - 0.5)).toBeLessThan(1e-5);
    expect(Math.abs(triangle.rq - 1 / Math.sqrt(3))).toBeLessThan(1e-5);
    // The peak falls between two points: 4 x half a step of 1/2000.
    expect(Math.abs(triangle.rz - 2)).toBeLessThan(2.1e-3);
  });

  it('ISO 16610-21: the mean line passes half of a wave as long as the cut-off, and exp(-pi (a L/w)^2) of any other', () => {
    const alpha = Math.sqrt(Math.LN2 / Math.PI);
    for (const ratio of [0.5, 1, 2, 5]) {
      const heights = Float64Array.from({ length: 8001 }, (_, i) =>
        Math.cos((2 * Math.PI * (i - 4000)) / (400 * ratio)),
      );
      const middle = gaussianMeanLine(heights, 1, 400)[4000];
      // 1e-6: the kernel is cut at one cut-off and summed instead of integrated.
      expect(Math.abs(middle - Math.exp(-Math.PI * (alpha / ratio) ** 2)), `${ratio}`).toBeLessThan(1e-6);
    }
    expect(Math.exp(-Math.PI * alpha ** 2)).toBeCloseTo(0.5, 12);
  });

  it('chooses the cut-off by the rule, and reads the same profile in several notations', () => {
    const point = (i: number) => 3 * Math.sin((2 * Math.PI * i) / 50);
    const run = (file: string, more: Record<string, number> = {}) => {
      const outcome = findCalculation('roughness-of-profile')!.evaluate({ file, ...more });
      if (outcome.kind === 'refused') throw new Error(outcome.reason);
      return outcome.values;
    };
    const indices = Array.from({ length: 4001 }, (_, i) => i);
    const two = run(indices.map((i) => `${(i * 0.004).toFixed(4)}\t${point(i).toFixed(6)}`).join('\n'));
    // Ra 6/pi = 1.91 um: cut-off 0.8 mm.
    expect(two.cutoffUsed_mm).toBe(0.8);
    expect(Math.abs(two.ra_um - 6 / Math.PI)).toBeLessThan(5e-3);
    const one = run(indices.map((i) => point(i).toFixed(6).replace('.', ',')).join('\n'), { spacing_um: 4 });
    expect(one.ra_um).toBeCloseTo(two.ra_um, 9);
    const table = run(
      `x mm;z um\n${indices.map((i) => `${(i * 0.004).toFixed(4)};${point(i).toFixed(6)}`).join('\n')}`,
    );
    expect(table.ra_um).toBeCloseTo(two.ra_um, 9);
    const rough = run(indices.map((i) => (2 * point(i)).toFixed(6)).join('\n'), { spacing_um: 4 });
    expect(rough.cutoffUsed_mm).toBe(2.5);
  });

  it.each([
    ['1\n2\n3', 'there are 3 points'],
    [Array.from({ length: 60 }, () => '1.5').join('\n'), 'give the spacing'],
    [
      Array.from({ length: 60 }, (_, i) => `${i} 1`)
        .join('\n')
        .replace('30 1', '30 x'),
      'line 31',
    ],
    [Array.from({ length: 60 }, (_, i) => `${i * i} 1`).join('\n'), 'not equally spaced'],
  ])('refuses a bad profile', (file, message) => {
    const outcome = findCalculation('roughness-of-profile')!.evaluate({ file });
    expect(outcome.kind === 'refused' ? outcome.reason : 'done').toContain(message);
  });
});

describe('materials', () => {
  // M-01: composition limits from memory, arithmetic exact. Cr, Mo, N from and to; PREN from and to.
  const steels: [string, [number, number, number], [number, number, number], number, number][] = [
    ['1.4301', [17.5, 0, 0], [19.5, 0, 0.1], 17.5, 21.1],
    ['1.4404', [16.5, 2, 0], [18.5, 2.5, 0.1], 23.1, 28.35],
    ['1.4435', [17, 2.5, 0], [19, 3, 0.1], 25.25, 30.5],
    ['1.4462', [21, 2.5, 0.1], [23, 3.5, 0.22], 30.85, 38.07],
    ['1.4539', [19, 4, 0], [21, 5, 0.15], 32.2, 39.9],
    ['1.4547', [19.5, 6, 0.18], [20.5, 7, 0.25], 42.18, 47.6],
  ];
  const rows: CheckRow[] = steels.flatMap(([name, low, high, from, to]) =>
    (
      [
        [low, from],
        [high, to],
      ] as const
    ).map(([[chromium_pct, molybdenum_pct, nitrogen_pct], pren]) => ({
      id: `M-01-${name} ${pren}, limits from memory`,
      calculation: 'pitting-resistance',
      inputs: { chromium_pct, molybdenum_pct, nitrogen_pct },
      expected: { pren },
      tolerance: 1e-9,
      why: 'arithmetic',
    })),
  );
  rows.push(
    {
      id: 'M-02 304',
      calculation: 'pitting-resistance',
      inputs: { chromium_pct: 19 },
      expected: { pren: 19 },
      tolerance: 1e-12,
      why: 'arithmetic',
    },
    {
      id: 'M-02 316',
      calculation: 'pitting-resistance',
      inputs: { chromium_pct: 16.5, molybdenum_pct: 2.1, nitrogen_pct: 0.05 },
      expected: { pren: 24.2 },
      tolerance: 2e-3,
      why: 'printed with 3 digits',
    },
    {
      id: 'M-03 304 at 100 mg/L',
      calculation: 'chloride-limit',
      inputs: { steel: 's304', chloride_mgL: 100 },
      expected: { verdict: 2 },
      tolerance: 0,
      why: 'guidance',
    },
    {
      id: 'M-03 304 above 200 mg/L',
      calculation: 'chloride-limit',
      inputs: { steel: 's304', chloride_mgL: 201 },
      expected: { verdict: 0 },
      tolerance: 0,
      why: 'guidance',
    },
    {
      id: 'M-04 316 at 800 mg/L',
      calculation: 'chloride-limit',
      inputs: { steel: 's316', chloride_mgL: 800 },
      expected: { verdict: 1 },
      tolerance: 0,
      why: 'guidance',
    },
    {
      id: 'M-05 316 at 500 mg/L and 70 degC',
      calculation: 'chloride-limit',
      inputs: { steel: 's316', chloride_mgL: 500, temperature_degC: 70 },
      expected: { verdict: 0 },
      tolerance: 0,
      why: 'guidance',
    },
    {
      id: 'M-13 aluminium on stainless steel',
      calculation: 'galvanic-pair',
      inputs: { first: 'stainless', second: 'aluminium' },
      expected: { verdict: 0 },
      tolerance: 0,
      why: 'guidance, order from memory',
    },
  );
  checkRows(rows);
});

describe('resources', () => {
  checkRows([
    {
      id: 'N-13',
      calculation: 'pump-energy',
      inputs: { flow_m3h: 10.6, pressure_bar: 2 },
      expected: { power_kW: 1.07071 },
      tolerance: 5e-6,
      why: 'printed with 6 digits',
    },
    ...(
      [
        ['naturalGas', 0.20196],
        ['diesel', 0.26676],
        ['lpg', 0.22716],
        ['heavyOil', 0.27864],
      ] as const
    ).map(([fuel, perFuel_kgkWh]) => ({
      id: `N-05 ${fuel}, factor from memory`,
      calculation: 'fuel-carbon',
      inputs: { fuel, heat_kWh: 1 },
      expected: { perFuel_kgkWh },
      tolerance: 1e-9,
      why: 'conversion',
    })),
  ]);
});

describe('conversions named in the check values', () => {
  it.each([
    ['H-04', 32, 'uin', 'um', 0.8128, 1e-9],
    ['H-05SF1', 20, 'uin', 'um', 0.508, 1e-9],
    ['H-05SF2', 25, 'uin', 'um', 0.635, 1e-9],
    ['H-05SF3', 30, 'uin', 'um', 0.762, 1e-9],
    ['H-05SF4', 15, 'uin', 'um', 0.381, 1e-9],
    ['H-38', 6, 'in', 'mm', 152.4, 1e-9],
    ['P-12 DN 2 in', 2, 'in', 'mm', 50.8, 1e-9],
    ['P-18', 2, 'gpm/ft', 'L/(min m)', 24.839, 2e-5],
    ['P-19 low', 2.5, 'gpm/ft', 'L/(min m)', 31.05, 1e-4],
    ['P-19 high', 3, 'gpm/ft', 'L/(min m)', 37.26, 1e-4],
    ['P-20 low', 0.2, 'gpm/ft2', 'L/(min m2)', 8.149, 1e-4],
    ['P-20 high', 0.3, 'gpm/ft2', 'L/(min m2)', 12.224, 1e-4],
  ] as const)('%s', (_, value, from, to, expected, tolerance) => {
    expect(Math.abs(convert(value, from, to) / expected - 1)).toBeLessThan(tolerance);
  });

  it('H-27, H-28, H-29: slopes in degrees and percent', () => {
    const percent = (degrees: number) => 100 * Math.tan(convert(degrees, 'deg', 'rad'));
    expect(percent(3)).toBeCloseTo(5.241, 3);
    expect(convert(Math.atan(0.01), 'rad', 'deg')).toBeCloseTo(0.573, 3);
    for (const [inches, expected] of [
      [1 / 16, 0.521],
      [1 / 8, 1.042],
      [1 / 4, 2.083],
    ])
      expect((100 * inches) / 12).toBeCloseTo(expected, 3);
  });
});

describe('the answers do not depend on the units of the question', () => {
  it('a pipe in inches and degrees Fahrenheit is the same pipe', async () => {
    const { runFromText } = await import('@coveline/engineering');
    const pipe = findCalculation('pipe-flow')!;
    const metric = runFromText(pipe, {
      bore: '50.8 mm',
      flow: '10 m3/h',
      temperature: '80 degC',
      length: '30.48 m',
    });
    const customary = runFromText(pipe, {
      bore: '2 in',
      flow: '44.02867539 gpm',
      temperature: '176 F',
      length: '100 ft',
    });
    if (metric.outcome.kind === 'refused' || customary.outcome.kind === 'refused') throw new Error('refused');
    expect(Math.abs(customary.outcome.values.wallShear / metric.outcome.values.wallShear - 1)).toBeLessThan(
      1e-8,
    );
    expect(customary.understood[0]).toBe('bore: 2 in = 50.8 mm');
  });

  it('friction rises with roughness and shear with speed, whatever the pipe (seed 3)', () => {
    const pipe = findCalculation('pipe-flow-at-speed')!;
    const at = (bore_mm: number, speed: number, roughness_um: number) => {
      const outcome = pipe.evaluate({ bore_mm, speed, roughness_um });
      if (outcome.kind === 'refused') throw new Error(outcome.reason);
      return outcome.values;
    };
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 200 }),
        fc.integer({ min: 4, max: 50 }),
        fc.integer({ min: 0, max: 50 }),
        (bore, tenths, rough) => {
          const base = at(bore, tenths / 10, rough);
          expect(at(bore, tenths / 10 + 0.1, rough).wallShear).toBeGreaterThan(base.wallShear);
          expect(at(bore, tenths / 10, rough + 5).friction).toBeGreaterThan(base.friction);
          // Wall shear and pressure loss hold each other in balance: dp/L = 4 tau / d.
          expect(Math.abs((base.gradient * bore) / 4000 / base.wallShear - 1)).toBeLessThan(1e-12);
        },
      ),
      { seed: 3, numRuns: 60 },
    );
  });
});
