import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bounds,
  decodeModel,
  encodeModel,
  type Model,
  orient,
  placedPositions,
  transformPoint,
  type UpAxis,
} from './index.ts';

const identity = Float64Array.of(1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1);

function tetrahedron(placement: Float64Array = identity): Model {
  return {
    shapes: [
      {
        positions: Float64Array.of(0, 0, 0, 1, 0, 0, 0, 2, 0, 0, 0, 3),
        triangles: Uint32Array.of(0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3),
        hash: 'ab',
        cad: {
          faceOfTriangle: Uint32Array.of(0, 1, 2, 3),
          faces: [
            { kind: 'plane' },
            { kind: 'plane' },
            { kind: 'plane' },
            { kind: 'freeform', radius_mm: 0.1 },
          ],
          edges: [
            {
              faces: [0, 1],
              turn: 'convex',
              airAngle_deg: 270,
              length_mm: 1,
              points: Float64Array.of(0, 0, 0, 1, 0, 0),
            },
          ],
        },
      },
    ],
    parts: [{ id: 'a/b', name: 'b', assembly: ['a'], shape: 0, placement, color: [0.1, 0.2, 0.3] }],
    unit: 'in',
    deviation_mm: 0.1,
    notes: [{ level: 'warning', text: 'größer', part: 'a/b' }],
  };
}

describe('pack', () => {
  test('a model comes back as it was, also from a view that is not aligned', () => {
    const model = tetrahedron();
    const bytes = encodeModel(model);
    const shifted = new Uint8Array(bytes.length + 3);
    shifted.set(bytes, 3);
    expect(decodeModel(bytes)).toEqual(model);
    expect(decodeModel(shifted.subarray(3))).toEqual(model);
  });

  test('bytes that are no packed model are refused with what was found', () => {
    expect(() => decodeModel(new TextEncoder().encode('ISO-10303-21;\n'))).toThrow(/starts with "ISO-1030"/);
  });
});

describe('place', () => {
  const axes: [UpAxis, [number, number, number]][] = [
    ['x', [1, 0, 0]],
    ['y', [0, 1, 0]],
    ['z', [0, 0, 1]],
    ['-x', [-1, 0, 0]],
    ['-y', [0, -1, 0]],
    ['-z', [0, 0, -1]],
  ];

  test.each(axes)('%s up: that axis becomes +Z, and nothing is mirrored', (up, axis) => {
    const m = orient(tetrahedron(), up).parts[0].placement;
    expect(transformPoint(m, axis).map((v) => v + 0)).toEqual([0, 0, 1]);
    const [a, b, c] = [0, 4, 8].map((i) => [m[i], m[i + 1], m[i + 2]]);
    const determinant =
      a[0] * (b[1] * c[2] - b[2] * c[1]) -
      b[0] * (a[1] * c[2] - a[2] * c[1]) +
      c[0] * (a[1] * b[2] - a[2] * b[1]);
    expect(determinant).toBe(1);
  });

  test('placing moves every vertex as transformPoint moves a point; bounds enclose them exactly (seed 7)', () => {
    const coordinate = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        coordinate,
        fc.double({ min: 0, max: 7, noNaN: true }),
        (x, y, z, turn) => {
          const [c, s] = [Math.cos(turn), Math.sin(turn)];
          const placement = Float64Array.of(c, s, 0, 0, -s, c, 0, 0, 0, 0, 1, 0, x, y, z, 1);
          const model = tetrahedron(placement);
          const placed = placedPositions(model, 0);
          const local = model.shapes[0].positions;
          const [low, high] = bounds(model);
          for (let i = 0; i < local.length; i += 3) {
            const point = transformPoint(placement, [local[i], local[i + 1], local[i + 2]]);
            for (let axis = 0; axis < 3; axis++) {
              expect(placed[i + axis]).toBe(point[axis]);
              expect(low[axis]).toBeLessThanOrEqual(point[axis]);
              expect(high[axis]).toBeGreaterThanOrEqual(point[axis]);
            }
          }
        },
      ),
      { seed: 7 },
    );
  });
});
