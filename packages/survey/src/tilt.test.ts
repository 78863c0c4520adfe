import type { Vec3 } from '@coveline/model';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isLevel, reversed, type Tilt, turnOf, untilt } from './tilt.ts';

const near = (a: Vec3, b: Vec3): void => {
  for (let k = 0; k < 3; k++) expect(a[k]).toBeCloseTo(b[k], 9);
};

test('right-handed quarter turns', () => {
  const [x, y, z] = [
    turnOf({ axis: 'x', deg: 90 }),
    turnOf({ axis: 'y', deg: 90 }),
    turnOf({ x_deg: 0, y_deg: -90 }),
  ];
  near(x([0, 1, 0]), [0, 0, 1]);
  near(x([0, 0, 1]), [0, -1, 0]);
  near(y([0, 0, 1]), [1, 0, 0]);
  near(y([1, 0, 0]), [0, 0, -1]);
  near(z([1, 0, 0]), [0, 0, 1]);
});

test('a turn keeps lengths and angles, and its reverse takes it back (seed 5)', () => {
  const angle = fc.double({ min: -60, max: 60, noNaN: true });
  const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
  const point = fc.tuple(coordinate, coordinate, coordinate);
  fc.assert(
    fc.property(angle, angle, point, point, (x_deg, y_deg, p, q) => {
      const tilt: Tilt = { x_deg, y_deg };
      const turn = turnOf(tilt);
      const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
      expect(dot(turn(p), turn(q))).toBeCloseTo(dot(p, q), 7);
      near(untilt(tilt)(turn(p)), p);
      near(turnOf(reversed(tilt))(turn(p)), p);
    }),
    { seed: 5 },
  );
});

test('one axis alone is the same in either form', () => {
  near(turnOf({ axis: 'y', deg: 7 })([1, 2, 3]), turnOf({ x_deg: 0, y_deg: 7 })([1, 2, 3]));
  expect(isLevel({ axis: 'x', deg: 0 })).toBe(true);
  expect(isLevel({ x_deg: 0, y_deg: -1 })).toBe(false);
});
