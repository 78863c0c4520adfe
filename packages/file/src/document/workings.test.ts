import type { Working } from '@coveline/quantity';
import { expect, test } from 'vitest';
import { newPrinter } from './printable.ts';
import { newWorkingBook } from './workings.ts';

function fallTime(height_mm: number, change: Partial<Working> = {}): Working {
  return {
    title: 'Time of a fall',
    inputs: [
      { symbol: 'h', name: 'height', value: height_mm, unit: 'mm', from: 'measured on the model' },
      { symbol: 'g', name: 'gravity', value: 9.81, unit: 'm/s2', from: 'given' },
    ],
    formula: ['t = sqrt(2 h / g)'],
    steps: [],
    result: { symbol: 't', name: 'time', value: Math.sqrt((2 * height_mm) / 9810), unit: 's' },
    source: 'closed form',
    validity: 'In a vacuum.',
    warnings: [],
    ...change,
  };
}

test('a formula is printed once, with a row for each time and only what differs as columns', () => {
  const book = newWorkingBook(newPrinter());
  expect([book.numberOf(fallTime(100), 1), book.numberOf(fallTime(400), 2)]).toEqual([1, 2]);
  expect(book.numberOf(fallTime(100), 3)).toBe(1);
  const [one, ...more] = book.all();
  expect(more).toEqual([]);
  expect(one.columns).toEqual(['h, mm', 'time, s']);
  expect(one.rows).toEqual([
    { number: 1, values: ['100', '0.1428'], usedBy: [1, 3] },
    { number: 2, values: ['400', '0.2856'], usedBy: [2] },
  ]);
  expect(one.inputs.map((i) => i.value)).toEqual(['see the table', '9.81 m/s²']);
  expect(one.validity).toBe('In a vacuum');
});

test('another formula, source or validity is another calculation', () => {
  const book = newWorkingBook(newPrinter());
  for (const change of [{}, { formula: ['t = h'] }, { source: 'elsewhere' }, { validity: 'In air.' }])
    book.numberOf(fallTime(100, change), null);
  expect(book.all().map((w) => [w.number, w.rows.length])).toEqual([
    [1, 0],
    [2, 0],
    [3, 0],
    [4, 0],
  ]);
});
