import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chartOf, ticksOf } from './chart-of.ts';

const columns = [
  { name: 'number', unit: '1' },
  { name: 'result', unit: 'mm' },
  { name: 'remark', unit: '' },
];

test('a table of points becomes lines; names of segments, falling numbers and mixed units do not', () => {
  const rows = [
    [1, 5, ''],
    [2, 7, 'out'],
    [3, 6, ''],
  ];
  expect(chartOf({ title: 'Chart', columns, rows })).toEqual({
    title: 'Chart',
    across: 'number',
    unit: 'mm',
    x: [1, 2, 3],
    series: [{ name: 'result', values: [5, 7, 6] }],
  });
  expect(chartOf({ title: 'Chart', columns, rows: [...rows].reverse() })).toBeNull();
  expect(chartOf({ title: 'Chart', columns, rows: rows.map(([n, ...r]) => [`P${n}`, ...r]) })).toBeNull();
  const mixed = [columns[0], columns[1], { name: 'angle', unit: 'deg' }];
  expect(chartOf({ title: 'Chart', columns: mixed, rows: rows.map(([n, r]) => [n, r, 1]) })).toBeNull();
});

test('ticks rise, enclose the range and stay few (seed 5)', () => {
  const size = fc.double({ min: 1e-6, max: 1e9, noNaN: true });
  fc.assert(
    fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), size, (low, span) => {
      fc.pre(span > Math.abs(low) * 1e-6);
      const ticks = ticksOf(low, low + span);
      const slack = span * 1e-6;
      expect(ticks.length).toBeGreaterThanOrEqual(2);
      expect(ticks.length).toBeLessThanOrEqual(9);
      expect(ticks[0]).toBeLessThanOrEqual(low + slack);
      expect(ticks[ticks.length - 1]).toBeGreaterThanOrEqual(low + span - slack);
      for (let i = 1; i < ticks.length; i++) expect(ticks[i]).toBeGreaterThan(ticks[i - 1]);
    }),
    { seed: 5 },
  );
  expect(ticksOf(0.9, 1.9)).toEqual([0.8, 1, 1.2, 1.4, 1.6, 1.8, 2]);
  expect(ticksOf(3, 3).length).toBeGreaterThanOrEqual(2);
});
