import { expect, test } from 'vitest';
import { writeColor } from './color-scale.ts';

test('a value takes its place between the stops, and the ends hold beyond', () => {
  const scale = {
    low: 0,
    high: 10,
    stops: [
      [0, 0, 0],
      [1, 0.5, 0],
    ],
  } as const;
  const at = (value: number) => {
    const out = new Uint8Array(3);
    writeColor(scale, value, out, 0);
    return [...out];
  };
  expect(at(-5)).toEqual([0, 0, 0]);
  expect(at(5)).toEqual([128, 64, 0]);
  expect(at(50)).toEqual([255, 128, 0]);
});
