import { describe, expect, test } from 'vitest';
import { boxesAt, boxShape } from '../box.fixture.ts';
import { border } from './border.ts';
import { cornerNormals } from './corner-normals.ts';
import { featureEdges } from './feature-edges.ts';
import { mergeFaces } from './merge-faces.ts';
import { partBoxes } from './part-boxes.ts';

/** Two triangles of a level rectangle, turned by `angle` about the origin and rounded as drawings are. */
function rectangle(x0: number, y0: number, x1: number, y1: number, angle: number): number[] {
  const at = (x: number, y: number) => [
    Math.round((x * Math.cos(angle) - y * Math.sin(angle)) * 1000) / 1000,
    Math.round((x * Math.sin(angle) + y * Math.cos(angle)) * 1000) / 1000,
    7,
  ];
  const [a, b, c, d] = [at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)];
  return [...a, ...b, ...c, ...a, ...c, ...d];
}

function length(segments: Float32Array): number {
  let sum = 0;
  for (let i = 0; i < segments.length; i += 6)
    sum += Math.hypot(
      segments[i + 3] - segments[i],
      segments[i + 4] - segments[i + 1],
      segments[i + 5] - segments[i + 2],
    );
  return sum;
}

describe('border of a patch', () => {
  test('of strips of different length that lie side by side is its outline', () => {
    // A stair of 60 strips of 2 mm, each 5 mm longer than the last: the outline is as long as its bounding box's.
    const strips = Array.from({ length: 60 }, (_, i) =>
      rectangle(0, i * 2, 100 + i * 5, i * 2 + 2, 0.21),
    ).flat();
    expect(length(border(strips))).toBeCloseTo(2 * (120 + 395), 0);
  });

  test('of a ring has an inner line too', () => {
    const ring = [
      [0, 0, 30, 10],
      [0, 20, 30, 30],
      [0, 10, 10, 20],
      [20, 10, 30, 20],
    ].flatMap(([x0, y0, x1, y1]) => rectangle(x0, y0, x1, y1, 0));
    expect(length(border(ring))).toBeCloseTo(4 * 30 + 4 * 10, 3);
  });
});

test('a box has twelve edges to draw, and flat normals out of its faces', () => {
  const shape = boxShape([10, 20, 30]);
  expect(featureEdges(shape).length / 6).toBe(12);
  expect(length(featureEdges(shape))).toBeCloseTo(4 * (10 + 20 + 30), 6);
  const normals = cornerNormals(shape);
  expect([...normals.subarray(0, 9)].map((n) => Math.round(n))).toEqual(
    [0, 0, -1, 0, 0, -1, 0, 0, -1].map((n) => n || 0),
  );
  for (let i = 0; i < normals.length; i += 3)
    expect(Math.hypot(normals[i], normals[i + 1], normals[i + 2])).toBeCloseTo(1, 6);
});

test('normals are averaged within a CAD face and not across its border', () => {
  // A roof of two faces at a right angle: one face for both gives the bisector at the ridge, two faces do not.
  const positions = new Float64Array([0, 0, 0, 10, 0, 0, 0, 10, 10, 10, 10, 10, 0, 20, 0, 10, 20, 0]);
  const triangles = new Uint32Array([0, 1, 3, 0, 3, 2, 2, 3, 5, 2, 5, 4]);
  const ridge = (faces: number[]) => {
    const cad = { faceOfTriangle: new Uint32Array(faces), faces: [], edges: [] };
    return [...cornerNormals({ positions, triangles, cad, hash: '' }).subarray(2 * 3, 2 * 3 + 3)];
  };
  const half = Math.SQRT1_2;
  expect(ridge([0, 0, 1, 1])[1]).toBeCloseTo(-half, 6);
  expect(Math.abs(ridge([0, 0, 0, 0])[1])).toBeLessThan(0.45);
});

test('merged parts stand where their placements put them, from the origin', () => {
  const model = boxesAt([
    [0, 0, 0],
    [100, 0, 0],
  ]);
  const { position, first } = mergeFaces(model, [50, 0, 0]);
  expect([...first]).toEqual([0, 12, 24]);
  const xs = position.filter((_, i) => i % 3 === 0);
  expect(Math.min(...xs.subarray(0, 36))).toBe(-50);
  expect(Math.max(...xs.subarray(36))).toBe(60);
  expect([...partBoxes(model)]).toEqual([0, 0, 0, 10, 10, 10, 100, 0, 0, 110, 10, 10]);
});
