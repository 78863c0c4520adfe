/** Kinetics against check values, worked problems and closed forms. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lethality } from '../../packages/engineering/src/kinetics/lethality.ts';
import { checkRows } from './check.ts';

describe('kinetics', () => {
  const rates: [number, number][] = [
    [100, 0.007745],
    [110, 0.077446],
    [115, 0.244906],
    [118, 0.488652],
    [120, 0.774462],
    [125, 2.449063],
    [130, 7.744618],
    [134, 19.453601],
  ];
  checkRows(
    rates.map(([temperature_degC, rate]) => ({
      id: `K-01-${temperature_degC}`,
      calculation: 'lethal-rate',
      inputs: { temperature_degC, reference_degC: 121.11 },
      expected: { rate },
      tolerance: 7e-5,
      why: 'printed with six decimals, 4 digits for the smallest',
    })),
  );
  const equivalents: [number, number][] = [
    [60, 43.089],
    [65, 9.283],
    [75, 25.85 / 60],
    [80, 5.57 / 60],
  ];
  checkRows(
    equivalents.map(([temperature_degC, equivalent_min]) => ({
      id: `K-12 ${temperature_degC} degC`,
      calculation: 'lethal-rate',
      inputs: { temperature_degC, reference_degC: 70, z: 7.5, time_min: 2 },
      expected: { equivalent_min },
      tolerance: 1e-3,
      why: 'stated there, 3 digits for the shortest',
    })),
  );
  const wp4 = {
    times_min: [0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20],
    temperatures_degC: [60, 80, 95, 105, 112, 117, 120, 121.1, 121.1, 110, 80],
  };
  checkRows([
    // 240 degF with T_ref 250 degF and z 18 degF in degC.
    {
      id: 'K-02',
      calculation: 'lethal-rate',
      inputs: { temperature_degC: (240 - 32) / 1.8, reference_degC: (250 - 32) / 1.8, z: 10 },
      expected: { rate: 0.278256 },
      tolerance: 2e-6,
      why: 'printed with 6 digits',
    },
    {
      id: 'K-03',
      calculation: 'log-linear-shoulder-tail',
      inputs: { time_min: 2.52, reduction_min: 0.21, start: 12 },
      expected: { reduction_log10: 12 },
      tolerance: 1e-12,
      why: '12 D',
    },
    {
      id: 'K-05',
      calculation: 'z-from-d-values',
      inputs: { temperatures_degC: [115.6, 110, 104.4], reductions_min: [0.4, 1.6, 6] },
      expected: { z: 9.523 },
      tolerance: 6e-5,
      why: 'printed with 4 digits; published z 9.4 K from more data',
    },
    {
      id: 'K-06',
      calculation: 'z-from-d-values',
      inputs: { temperatures_degC: [115.6, 110, 104.4], reductions_min: [1.3, 4.4, 17.6] },
      expected: { z: 9.898 },
      tolerance: 6e-5,
      why: 'printed with 4 digits',
    },
    {
      id: 'K-07 and WP4',
      calculation: 'lethality-of-cycle',
      inputs: wp4,
      expected: {
        lethality_min: 6.23702,
        trapezoid_min: 6.78612,
        excess_pct: 8.8,
        reduction_log10: 4.158,
        survivors: 69.5,
        missing_min: 11.763,
      },
      tolerance: 7e-4,
      why: 'survivors printed with 3 digits',
    },
    {
      id: 'K-08',
      calculation: 'lethality-of-cycle',
      inputs: { times_min: [0, 21.1], temperatures_degC: [100, 121.1] },
      expected: { lethality_min: 4.309233 },
      tolerance: 2e-7,
      why: 'printed with 7 digits',
    },
    // K-10: 15 s at 71.7 degC with D 0.9 s.
    {
      id: 'K-10',
      calculation: 'log-linear-shoulder-tail',
      inputs: { time_min: 15 / 60, reduction_min: 0.9 / 60, start: 6, tail: -12 },
      expected: { survivors: 10 ** (6 - 16.6667) },
      tolerance: 1e-3,
      why: 'exponent printed with 6 digits',
    },
    {
      id: 'K-11',
      calculation: 'log-linear-shoulder-tail',
      inputs: { time_min: 2, reduction_min: 1 / 3, start: 6 },
      expected: { reduction_log10: 6 },
      tolerance: 1e-12,
      why: '6 D in 2 min',
    },
    {
      id: 'K-16 SA22',
      calculation: 'log-linear-shoulder-tail',
      inputs: { time_min: 1, reduction_min: 7.3 },
      expected: { needed_min: 43.8 },
      tolerance: 1e-12,
      why: 'arithmetic',
    },
    {
      id: 'K-16 G. stearothermophilus',
      calculation: 'log-linear-shoulder-tail',
      inputs: { time_min: 1, reduction_min: 1.5 },
      expected: { needed_min: 9 },
      tolerance: 1e-12,
      why: 'arithmetic',
    },
    {
      id: 'K-17 60 degC',
      calculation: 'hydrogen-peroxide-liquid',
      inputs: { temperature_degC: 60, concentration_pct: 10, time: 60 },
      expected: { decimal: 23.026 },
      tolerance: 2e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'K-17 80 degC',
      calculation: 'hydrogen-peroxide-liquid',
      inputs: { temperature_degC: 80, concentration_pct: 10, time: 60 },
      expected: { decimal: 8.994 },
      tolerance: 6e-5,
      why: 'printed with 4 digits',
    },
    {
      id: 'K-17 20 %',
      calculation: 'hydrogen-peroxide-liquid',
      inputs: { temperature_degC: 60, concentration_pct: 20, time: 60 },
      expected: { rate: 0.225 },
      tolerance: 1e-9,
      why: 'arithmetic',
    },
    {
      id: 'K-20 fog',
      calculation: 'log-linear-shoulder-tail',
      inputs: { time_min: 1, reduction_min: 1.1, shoulder_min: 4.1, target_log10: 5 },
      expected: { needed_min: 9.6 },
      tolerance: 1e-12,
      why: 'arithmetic',
    },
    {
      id: 'K-20 peroxide fog',
      calculation: 'log-linear-shoulder-tail',
      inputs: { time_min: 60, reduction_min: 13.8333, shoulder_min: 18.5 },
      expected: { reduction_log10: 3 },
      tolerance: 1e-5,
      why: 'D printed with 6 digits',
    },
    {
      id: 'K-25 first',
      calculation: 'chlorine-ct-giardia',
      inputs: { concentration_mgL: 1, ph: 7, temperature_degC: 10 },
      expected: { ct_mgminL: 112.54 },
      tolerance: 5e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'K-25 second',
      calculation: 'chlorine-ct-giardia',
      inputs: { concentration_mgL: 1.2, ph: 7.5, temperature_degC: 15 },
      expected: { ct_mgminL: 98.45 },
      tolerance: 6e-5,
      why: 'printed with 4 digits',
    },
    // K-26: the table of the manual, which the regression meets within -9 and +7 %.
    {
      id: 'K-26 pH 6, 0.5 degC, 0.4 mg/L',
      calculation: 'chlorine-ct-giardia',
      inputs: { concentration_mgL: 0.4, ph: 6, temperature_degC: 0.5 },
      expected: { ct_mgminL: 137 },
      tolerance: 0.091,
      why: 'regression against table',
    },
    {
      id: 'K-26 pH 7.5, 15 degC, 1.2 mg/L',
      calculation: 'chlorine-ct-giardia',
      inputs: { concentration_mgL: 1.2, ph: 7.5, temperature_degC: 15 },
      expected: { ct_mgminL: 92 },
      tolerance: 0.071,
      why: 'regression against table',
    },
    ...(
      [
        [5, 0.033167],
        [8, 0.063452],
        [15, 0.171985],
      ] as const
    ).map(([temperature_degC, rate_1h]) => ({
      id: `K-28 ${temperature_degC} degC`,
      calculation: 'growth-square-root',
      inputs: { temperature_degC, time_h: 1 },
      expected: { rate_1h },
      tolerance: 2e-5,
      why: 'arithmetic on parameters from memory, printed with 5 digits',
    })),
    // K-31: 0.487 log/h at 37 degC is mu 1.1214 1/h and a doubling of 37.09 min; lag 2 h.
    {
      id: 'K-31',
      calculation: 'growth-square-root',
      inputs: {
        temperature_degC: 37,
        time_h: 5,
        referenceRate_1h: 1.1214,
        reference_degC: 37,
        lag_h: 2,
        start: 2,
        ceiling: 12,
      },
      expected: { doubling_h: 37.09 / 60, growth_log10: 3 * 0.487 },
      tolerance: 2e-4,
      why: 'printed with 4 digits',
    },
    {
      id: 'K-32',
      calculation: 'weibull-inactivation',
      inputs: { time_min: 10, scale_min: 2, shape: 0.7 },
      expected: { reduction_log10: 3.08517, needed_min: 25.86275 },
      tolerance: 2e-6,
      why: 'printed with 6 digits',
    },
    {
      id: 'WP5 fog',
      calculation: 'log-linear-shoulder-tail',
      inputs: { time_min: 12, reduction_min: 1.1, shoulder_min: 4.1, start: 3 },
      expected: { reduction_log10: 7.1818, survivors: 6.579e-5, anySurvivor: 6.579e-5, needed_min: 10.7 },
      tolerance: 1e-4,
      why: 'printed with 4 digits',
    },
    {
      id: 'WP5 liquid',
      calculation: 'log-linear-shoulder-tail',
      inputs: { time_min: 12, reduction_min: 0.8, start: 3, tail: -12 },
      expected: { reduction_log10: 15, needed_min: 4.8 },
      tolerance: 1e-9,
      why: 'arithmetic',
    },
    {
      id: 'WP6 60 h',
      calculation: 'growth-square-root',
      inputs: { temperature_degC: 8, time_h: 60, start: Math.log10(2) },
      expected: { rate_1h: 0.063452, doubling_h: 10.924, end: Math.log10(90.04) },
      tolerance: 3e-5,
      why: 'printed with 4 digits',
    },
    {
      id: 'WP6 time at 8 degC',
      calculation: 'time-to-level',
      inputs: { temperature_degC: 8, start_cfumL: 2, limit_cfumL: 1000 },
      expected: { time_h: 97.94 },
      tolerance: 1e-4,
      why: 'printed with 4 digits',
    },
    {
      id: 'WP6 time at 4 degC',
      calculation: 'time-to-level',
      inputs: { temperature_degC: 4, start_cfumL: 2, limit_cfumL: 1000 },
      expected: { time_h: 246.25, rate_1h: 0.025236 },
      tolerance: 3e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'WP6 swab at 60 h',
      calculation: 'swab-detection',
      inputs: { density_cfumL: 90.04 },
      expected: { probability: 0.894708 },
      tolerance: 1e-5,
      why: 'density printed with 4 digits',
    },
    {
      id: 'WP6 swab at the start',
      calculation: 'swab-detection',
      inputs: { density_cfumL: 2 },
      expected: { probability: 0.048771 },
      tolerance: 1e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'growth over a history equals the constant one',
      calculation: 'growth-over-history',
      inputs: { times_h: [0, 10, 60], temperatures_degC: [8, 8, 8], start: Math.log10(2) },
      expected: { end: Math.log10(90.04) },
      tolerance: 3e-5,
      why: 'closed form',
    },
  ]);

  it('the exact integral is the limit of a fine trapezoid, and never above the coarse one (seed in the property)', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 600, max: 1300 }), { minLength: 2, maxLength: 12 }),
        (tenths) => {
          const temperatures = tenths.map((t) => t / 10);
          const times = temperatures.map((_, i) => 2 * i);
          const { exact, trapezoid } = lethality(times, temperatures, 121.1, 10);
          expect(exact).toBeLessThanOrEqual(trapezoid * (1 + 1e-12));
          const parts = 400;
          const fineTimes: number[] = [];
          const fine: number[] = [];
          for (let i = 1; i < times.length; i++)
            for (let k = i === 1 ? 0 : 1; k <= parts; k++) {
              fineTimes.push(times[i - 1] + (2 * k) / parts);
              fine.push(temperatures[i - 1] + ((temperatures[i] - temperatures[i - 1]) * k) / parts);
            }
          // Error of the trapezoid: (ln10 dT / (400 z))^2 / 12 of the integral, under 2e-4 for 70 K.
          expect(Math.abs(lethality(fineTimes, fine, 121.1, 10).trapezoid / exact - 1)).toBeLessThan(2e-4);
        },
      ),
      { seed: 4711, numRuns: 60 },
    );
  });
});
