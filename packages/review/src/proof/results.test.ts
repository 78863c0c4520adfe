import type { SampleResult } from '@coveline/project';
import { expect, test } from 'vitest';
import { readResults, type Targets } from './read-results.ts';
import { trendsOf } from './results.ts';

const month = (i: number) => `2026-${String(i + 1).padStart(2, '0')}-15`;
const result = (i: number, value: number | null, more: Partial<SampleResult> = {}): SampleResult => ({
  id: `r${i}`,
  point: 'p',
  of: 'aerobic',
  limit: 'aerobic-research',
  on: month(i),
  value,
  detectionLimit: null,
  by: '',
  note: '',
  action: '',
  ...more,
});

/**
 * Invented swab campaign with a planted drift. By hand: the logarithms of the first eight are -0.1 and 0.1 in turn,
 * mean 0, spread 0.1069; twice that is 0.2138. Months 9 and 10 at 0.25 lie beyond it: two of three beyond 2 s at the
 * tenth result, and none before, as the ninth stands alone and below 3 s (0.3207).
 */
test('a planted drift is caught at the month that a hand calculation says', () => {
  const calm = Array.from({ length: 8 }, (_, i) => result(i, 10 ** (i % 2 === 0 ? -0.1 : 0.1)));
  const drift = [result(8, 10 ** 0.25), result(9, 10 ** 0.25), result(10, 10 ** 0.4)];
  const [trend] = trendsOf([...drift, ...calm]);
  expect(trend.chart!.mean).toBeCloseTo(0, 9);
  expect(trend.chart!.upper).toBeCloseTo(3 * 0.1 * Math.sqrt(8 / 7), 9);
  expect(trend.chart!.firstAlarm).toBe(9);
  expect(trend.results[trend.chart!.firstAlarm!].result.on).toBe('2026-10-15');
  expect(trend.chart!.alarms.map((a) => a.index)).toEqual([9, 10]);
  expect(trendsOf(calm)[0].chart).toBeNull();
});

test('results are judged one by one, and kept apart by point and test', () => {
  const trends = trendsOf([
    result(0, 3),
    result(1, 0.5),
    result(2, null, { detectionLimit: 0.4 }),
    result(3, 1, { of: 'listeria', limit: 'listeria-face' }),
  ]);
  expect(trends.map((t) => [t.of, t.results.map((r) => r.verdict)])).toEqual([
    ['aerobic', ['act', 'pass', 'pass']],
    ['listeria', ['act']],
  ]);
});

const targets: Targets = {
  pointOf: (words) => (words === 'dish' ? 'point~1' : null),
  testOf: (words) =>
    words === 'aerobic' ? { of: 'aerobic', limit: 'aerobic-research', unit: '1/cm2' } : null,
};

test('a pasted table is read by its column names, with limits of detection and both kinds of dates', () => {
  const text =
    'Datum;Punkt;Test;Ergebnis;Bemerkung\n2026-03-01;dish;aerobic;1,5;first\n02.03.2026;dish;aerobic;<0,4;"a; b"\n2026-03-03;dish;aerobic;nd;';
  const { results, refused } = readResults(text, targets, 'de');
  expect(refused).toEqual([]);
  expect(results.map((r) => [r.on, r.value, r.detectionLimit, r.note])).toEqual([
    ['2026-03-01', 1.5, null, 'first'],
    ['2026-03-02', null, 0.4, 'a; b'],
    ['2026-03-03', null, null, ''],
  ]);
});

test('what cannot be taken says why and where, and the rest is kept', () => {
  const text =
    'date\tpoint\ttest\tvalue\n03/04/2026\tdish\taerobic\t1\n2026-02-30\tdish\taerobic\t1\n2026-02-01\tmoon\taerobic\t1\n2026-02-01\tdish\tmagic\t1\n2026-02-01\tdish\taerobic\tmany\n2026-02-01\tdish\taerobic\t2';
  const { results, refused } = readResults(text, targets, 'en');
  expect(results).toHaveLength(1);
  expect(refused.map((r) => r.slice(0, 7))).toEqual(['Line 2:', 'Line 3:', 'Line 4:', 'Line 5:', 'Line 6:']);
  expect(readResults('a;b\n1;2', targets, 'en').refused[0]).toBe(
    'Line 1 names no column for the date, the point, the test, the result: it has a, b.',
  );
  expect(readResults('  \n', targets, 'en').refused).toHaveLength(1);
});
