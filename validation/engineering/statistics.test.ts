/** Statistics against check values, worked problems and R 4.2. */
import { readFileSync } from 'node:fs';
import { findCalculation } from '@coveline/engineering';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CheckRow, checkRows } from './check.ts';

describe('check values S-01 to S-19', () => {
  const rows: CheckRow[] = [];
  const add = (
    id: string,
    calculation: string,
    inputs: CheckRow['inputs'],
    expected: CheckRow['expected'],
    tolerance: number,
    why: string,
  ) => rows.push({ id, calculation, inputs, expected, tolerance, why });

  for (const [n, exact] of [
    [30, 0.09503385],
    [300, 0.00993608],
    [3000, 0.00099808],
    [10000, 0.00029953],
  ] as const)
    add(
      `S-01-${n}`,
      'proportion-limits',
      { positives: 0, tested: n },
      { upper: exact, ruleOfThree: 3 / n },
      2e-5,
      'printed with eight decimals',
    );
  for (const [confidence_pct, rate, units] of [
    [95, 0.05, 59],
    [95, 0.01, 299],
    [99, 0.01, 459],
    [95, 0.001, 2995],
  ] as const)
    add(`S-02-${units}`, 'sample-size-for-rate', { rate, confidence_pct }, { units }, 0, 'whole number');
  for (const [x, n, low, high] of [
    [0, 30, 0, 0.1157033],
    [1, 100, 0.000253146, 0.05445939],
    [3, 50, 0.01254859, 0.1654819],
    [5, 20, 0.08657147, 0.4910459],
    [1, 10000, 2.531778e-6, 0.000557037],
  ] as const)
    add(
      `S-03-${x}of${n}`,
      'proportion-limits',
      { positives: x, tested: n },
      { low, high },
      2e-6,
      'printed with 6 to 7 digits',
    );
  for (const [count, low, high] of [
    [0, 0, 3.688879],
    [1, 0.025318, 5.571643],
    [5, 1.623486, 11.668332],
    [10, 4.795389, 18.390356],
  ] as const)
    add(`S-04-${count}`, 'poisson-limits', { count }, { low, high }, 1.5e-5, 'printed with six decimals');
  for (const [lot, sample] of [
    [1201, 125],
    [3200, 125],
    [3201, 200],
    [10000, 200],
    [151, 32],
    [280, 32],
  ] as const)
    add(`S-05 lot ${lot}`, 'lot-sample-size', { lot }, { sample }, 0, 'table');
  add(
    'S-06',
    'acceptance-plan',
    { sample: 125, accept: 3 },
    { passGood: 0.962551, passBad: 0.123785, tenth_pct: 5.2663 },
    1e-5,
    'printed with 5 to 6 digits',
  );
  for (const [positives, mpn_1g] of [
    [[1, 0, 0], 3.57104],
    [[2, 1, 0], 14.68908],
    [[3, 1, 0], 42.72882],
    [[3, 3, 1], 462.18273],
    [[3, 3, 2], 1098.94997],
  ] as const)
    add(
      `S-07-${positives.join('')}`,
      'most-probable-number',
      { volumes_g: [0.1, 0.01, 0.001], tubes: [3, 3, 3], positives },
      { mpn_1g },
      2e-6,
      'printed with five decimals',
    );
  const s08 = { volumes_g: [0.1, 0.01, 0.001], tubes: [10, 10, 10], positives: [5, 3, 0] };
  add(
    'S-08',
    'most-probable-number',
    s08,
    { mpn_1g: 9.95077, thomas_1g: 9.97044, likelihood: 0.0079637 },
    6e-6,
    'printed with 5 digits',
  );
  add(
    'S-09',
    'most-probable-number',
    s08,
    { error: 0.1574875, expectedError: 0.1658975 },
    5e-7,
    'printed with 7 digits',
  );
  add(
    'S-09 limits',
    'most-probable-number',
    s08,
    { low_1g: 4.891, high_1g: 20.263 },
    6e-4,
    'the spreadsheet rounds on the way: its limits are symmetric about 9.955',
  );
  const nist = [
    52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6,
    52.4, 53.6, 52.1,
  ];
  add(
    'S-10',
    'chart-ewma',
    { values: nist, target: 50, deviation: 2.0539, weight: 0.3, width: 3, limits: 'steady' },
    { upper: 52.5884, lower: 47.4116, firstAlarm: 0, last: 51.99 },
    1e-4,
    'average printed with two decimals',
  );
  for (const [size, d2, d3, a2, lower, upper, c4] of [
    [2, 1.12838, 0.8525, 1.88, 0, 3.2665, 0.79788],
    [3, 1.69257, 0.88837, 1.0233, 0, 2.5746, 0.88623],
    [4, 2.05875, 0.87981, 0.7286, 0, 2.2821, 0.92132],
    [5, 2.32593, 0.86408, 0.5768, 0, 2.1145, 0.93999],
  ] as const)
    add(
      `S-11-${size}`,
      'chart-constants',
      { size },
      { d2, d3, a2, lower, upper, c4 },
      7e-5,
      'A2 printed with four decimals',
    );
  add(
    'S-12',
    'tolerance-factor',
    { count: 43, coverage_pct: 90, confidence_pct: 99 },
    { oneSided: 1.873954, twoSided: 2.222825, natrella: 1.8751896, howe: 2.2173159 },
    5e-7,
    'printed with 7 digits',
  );
  add(
    'S-13',
    'tolerance-factor',
    { count: 40, coverage_pct: 90, confidence_pct: 99, mean: 10, deviation: 0.2 },
    { twoSided: 2.2528, howe: 2.2467, natrella: 1.9034, oneSided: 1.9017 },
    3e-5,
    'printed with 5 digits',
  );
  for (const [count, coverage_pct, twoSided] of [
    [4, 90, 5.368],
    [10, 90, 2.856],
    [10, 95, 3.393],
    [10, 99, 4.437],
    [20, 95, 2.76],
    [30, 99, 3.355],
  ] as const)
    add(
      `S-14 n=${count} p=${coverage_pct}`,
      'tolerance-factor',
      { count, coverage_pct },
      { twoSided },
      2e-4,
      'printed with 4 digits',
    );
  add('S-15', 'tolerance-factor', { count: 10 }, { oneSided: 2.910963 }, 2e-7, 'printed with 7 digits');
  add('S-16', 'distribution-free-tolerance', {}, { oneSided: 59, twoSided: 93 }, 0, 'whole numbers');
  add(
    'S-17',
    'results-below-detection',
    { found: [1.3, 1.6, 1.1, 2.0, 1.8, 1.45], limits: [1, 1, 1, 1, 1, 1] },
    { mean: 1.03675, deviation: 0.60319, byHalf: 1.12032, byLimit: 1.27083 },
    9e-6,
    'printed with five decimals',
  );
  add(
    'S-18',
    'process-capability',
    { lower: 8, upper: 20, mean: 16, deviation: 2 },
    { cp: 1, cpk: 2 / 3 },
    1e-12,
    'definition',
  );
  add('S-19', 'chart-counts', { mean: 4 }, { upper: 10, lower: 0, exact: 11 }, 0, 'whole numbers');
  add(
    'WP5 proof',
    'proportion-limits',
    { positives: 0, tested: 3000 },
    { upper: 0.000998079, high: 0.00122887 },
    3e-6,
    'printed with 6 digits',
  );
  add('WP5 units for 1e-4', 'sample-size-for-rate', { rate: 1e-4 }, { units: 29956 }, 0, 'whole number');
  add('WP5 units for 1e-6', 'sample-size-for-rate', { rate: 1e-6 }, { units: 2995731 }, 0, 'whole number');
  add(
    'WP9 swabs',
    'proportion-limits',
    { positives: 0, tested: 60 },
    { upper: 0.048703, high: 0.059629 },
    1e-5,
    'printed with 5 digits',
  );
  const trend = [1.1, 1.3, 0.9, 1.4, 1.2, 1, 1.5, 1.7, 1.8, 1.9];
  add(
    'WP9 chart',
    'chart-ewma',
    { values: trend, target: 1.2, deviation: 0.25 },
    { last: 1.5129, firstAlarm: 10 },
    3e-5,
    'printed with four decimals',
  );
  add(
    'WP9 Shewhart',
    'chart-shewhart',
    { values: trend, target: 1.2, deviation: 0.25 },
    { upper: 1.95, beyond: 0 },
    1e-9,
    'arithmetic',
  );
  add(
    'WP9 tolerance',
    'tolerance-factor',
    { count: 6, mean: 1.15, deviation: 0.1871 },
    { oneSided: 3.70768, upper: 1.8436 },
    6e-5,
    'spread printed with 4 digits',
  );
  // A small media fill: 0 of 60 filled units.
  add(
    '0 of 60 units',
    'proportion-limits',
    { positives: 0, tested: 60 },
    { upper: 0.0487 },
    1e-3,
    'printed with 3 digits',
  );
  checkRows(rows);

  it('WP9: the averages and limits of every month', () => {
    const outcome = findCalculation('chart-ewma')!.evaluate({ values: trend, target: 1.2, deviation: 0.25 });
    if (outcome.kind === 'refused') throw new Error(outcome.reason);
    const averages = [1.18, 1.204, 1.1432, 1.1946, 1.1956, 1.1565, 1.2252, 1.3202, 1.4161, 1.5129];
    const limits = [1.335, 1.3729, 1.3933, 1.4053, 1.4126, 1.4171, 1.42, 1.4218, 1.423, 1.4237];
    // Printed with four decimals.
    outcome.tables[0].rows.forEach((row, i) => {
      expect(Math.abs((row[2] as number) - averages[i])).toBeLessThan(6e-5);
      expect(Math.abs((row[4] as number) - limits[i])).toBeLessThan(6e-5);
    });
  });
});

describe('R 4.2, table written by reference/statistics.R', () => {
  const rows = JSON.parse(
    readFileSync(new URL('./reference/statistics.json', import.meta.url), 'utf8'),
  ) as Omit<CheckRow, 'tolerance' | 'why'>[];
  // ptukey is good to about 1e-8, the noncentral t of R to about 1e-9; the rest to 1e-12.
  checkRows(
    rows.map((row) => ({
      ...row,
      tolerance: row.calculation === 'chart-constants' ? 1e-6 : 1e-7,
      why: 'accuracy of the R functions',
    })),
  );
});

describe('properties', () => {
  const values = (name: string, inputs: CheckRow['inputs']) => {
    const outcome = findCalculation(name)!.evaluate(inputs);
    if (outcome.kind === 'refused') throw new Error(outcome.reason);
    return outcome.values;
  };

  it('more negatives lower the limit, more positives raise it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 50 }), fc.integer({ min: 51, max: 500 }), (x, n) => {
        const upper = values('proportion-limits', { positives: x, tested: n }).upper;
        expect(values('proportion-limits', { positives: x, tested: n + 1 }).upper).toBeLessThan(upper);
        expect(values('proportion-limits', { positives: x + 1, tested: n }).upper).toBeGreaterThan(upper);
      }),
      { seed: 12, numRuns: 100 },
    );
  });

  it('the censored mean of a sample without much censoring lies between the two substitutions', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 6, maxLength: 20 }), (raw) => {
        const found = raw.map((v) => 1 + v / 100);
        fc.pre(new Set(found).size > 1);
        const result = values('results-below-detection', { found, limits: [1] });
        expect(result.mean).toBeLessThan(result.byLimit);
        expect(Number.isFinite(result.deviation)).toBe(true);
      }),
      { seed: 5, numRuns: 50 },
    );
  });

  it('drawn permutations agree between seeds 2 and 9', () => {
    const first = [1.2, 1.9, 2.4, 1.1, 1.8, 2.2, 1.5, 1.7, 2.0, 1.4, 1.6];
    const second = [1.9, 2.6, 2.2, 2.8, 1.7, 2.5, 2.1, 2.9, 2.3, 2.0, 2.7];
    // C(22,11) = 705 432 splits are too many to count; two seeds agree within four standard errors.
    const drawn = values('compare-two-means', { first, second, seed: 2 });
    expect(drawn.exact).toBe(0);
    const again = values('compare-two-means', { first, second, seed: 9 });
    expect(Math.abs(drawn.twoSided - again.twoSided)).toBeLessThan(4 * Math.sqrt((2 * drawn.twoSided) / 1e5));
  });
});
