import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { determinant, identity, inverse, isRigid, type Matrix, multiply, splitRigid } from './matrix.ts';

const entry = fc.double({ min: -10, max: 10, noNaN: true });
const affine = fc.array(entry, { minLength: 12, maxLength: 12 }).map((v): Matrix => {
  const m = identity();
  for (let c = 0; c < 4; c++) for (let r = 0; r < 3; r++) m[c * 4 + r] = v[c * 3 + r];
  return m;
});
const solid = affine.filter((m) => Math.abs(determinant(m)) > 0.1);

const expectSame = (a: Matrix, b: Matrix, digits = 6) => {
  for (let i = 0; i < 16; i++) expect(a[i]).toBeCloseTo(b[i], digits);
};

describe('matrices', () => {
  it('a matrix times its inverse is the identity', () => {
    fc.assert(
      fc.property(solid, (m) => expectSame(multiply(m, inverse(m)!), identity())),
      { seed: 1 },
    );
  });

  it('a matrix is its rigid part times the rest, and the rigid part is rigid', () => {
    fc.assert(
      fc.property(solid, (m) => {
        const { rigid, rest } = splitRigid(m);
        expect(isRigid(rigid)).toBe(true);
        expectSame(multiply(rigid, rest), m);
        // Upper triangular, no translation, mirrored only in its first axis.
        for (const i of [1, 2, 6, 12, 13, 14]) expect(rest[i]).toBe(0);
        expect(Math.sign(determinant(rest))).toBe(Math.sign(determinant(m)));
      }),
      { seed: 2 },
    );
  });

  it('a flat matrix has no inverse', () => {
    const m = identity();
    m[10] = 0;
    expect(inverse(m)).toBeUndefined();
  });
});
