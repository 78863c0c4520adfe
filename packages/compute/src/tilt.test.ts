import { type Model, placedPositions } from '@coveline/model';
import { expect, test } from 'vitest';
import { tiltModel } from './tilt.ts';

/** One vertex at (1, 2, 3), placed at (10, 20, 30). */
const model: Model = {
  shapes: [{ positions: new Float64Array([1, 2, 3]), triangles: new Uint32Array(), hash: '' }],
  parts: [
    {
      id: 'a',
      name: 'a',
      assembly: [],
      shape: 0,
      placement: new Float64Array([1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 10, 20, 30, 1]),
    },
  ],
  unit: 'mm',
  deviation_mm: 0,
  notes: [],
};

test.each([
  ['x', 90, [11, -33, 22]],
  ['y', 90, [33, 22, -11]],
  ['x', 0, [11, 22, 33]],
] as const)('a turn about %s by %d degrees is right-handed', (axis, deg, expected) => {
  const [x, y, z] = placedPositions(tiltModel(model, { axis, deg }), 0);
  expect(x).toBeCloseTo(expected[0], 12);
  expect(y).toBeCloseTo(expected[1], 12);
  expect(z).toBeCloseTo(expected[2], 12);
});
