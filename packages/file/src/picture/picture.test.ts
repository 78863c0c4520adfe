import type { Model, Vec3 } from '@coveline/model';
import { treeOf } from '@coveline/survey';
import { decode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { boxShape, trayModel, trayOutcome } from '../box.fixture.ts';
import { cameraOnBox, projectionOf } from './camera.ts';
import { directionOf, viewOfPlace } from './place-view.ts';
import { renderPicture } from './render.ts';
import { takeSamples } from './samples.ts';
import { dot, unit } from './vector.ts';

const size = [240, 180] as const;
const tray: readonly [Vec3, Vec3] = [
  [0, 0, 100],
  [200, 120, 134],
];

describe('renderPicture', () => {
  it('gives a PNG of the asked size, the same bytes every time', () => {
    const camera = cameraOnBox(tray[0], tray[1], directionOf(-35, 30), size);
    const a = renderPicture(trayModel(), { camera, size });
    const b = renderPicture(trayModel(), { camera, size });
    expect(decode(a)).toMatchObject({ width: 240, height: 180, channels: 3 });
    expect(Buffer.from(a).equals(Buffer.from(b))).toBe(true);
  });

  it('paints liquid blue at its spill height, seen from above', () => {
    const camera = cameraOnBox(tray[0], tray[1], directionOf(0, 89), size);
    const drawings = [...trayOutcome().drawings.values()];
    const image = decode(
      renderPicture(trayModel(), {
        camera,
        size,
        marks: [{ sign: 'liquid', at_mm: [190, 110, 134], drawings }],
      }),
    );
    const [x, y] = projectionOf(camera, size[0], size[1]).toPixel([60, 40, 134]);
    const at = (Math.round(y) * size[0] + Math.round(x)) * 3;
    const [r, , b] = image.data.slice(at, at + 3);
    expect(b - r).toBeGreaterThan(40);
  });
});

describe('takeSamples', () => {
  it('sees the distance, the part and the normal of a box face exactly', () => {
    const model = trayModel();
    const camera = { target: [100, 60, 200] as Vec3, direction: [0, 0, -1] as Vec3, span_mm: 240 };
    const samples = takeSamples(model, treeOf(model), camera, 48, 48);
    const middle = 24 * 48 + 24;
    expect(samples.part[middle]).toBe(0);
    expect(samples.depth[middle]).toBeCloseTo(96, 9);
    expect([...samples.normal.slice(middle * 3, middle * 3 + 3)]).toEqual([0, 0, 1]);
    expect(samples.part[0]).toBe(-1);
  });

  it('shows material that was cut open', () => {
    const model = trayModel();
    const camera = {
      target: [100, 60, 102] as Vec3,
      direction: [0, 0, -1] as Vec3,
      span_mm: 100,
      cutBefore_mm: 0,
    };
    const samples = takeSamples(model, treeOf(model), camera, 16, 16);
    expect([...samples.cut].every((c) => c === 1)).toBe(true);
  });
});

describe('viewOfPlace', () => {
  const inside: Vec3 = [100, 60, 104];
  const place = { bounds_mm: [inside, inside] as const, points: [inside], enough: 0.6 };

  it('looks down into a tray', () => {
    const camera = viewOfPlace(treeOf(trayModel()), place, size);
    expect(unit(camera.direction)[2]).toBeLessThan(0);
    expect(camera.cutBefore_mm).toBeUndefined();
  });

  it('cuts away what hides a place from everywhere', () => {
    const closed: Model = {
      ...trayModel(),
      shapes: [...trayModel().shapes, boxShape([400, 400, 400])],
      parts: [
        ...trayModel().parts,
        {
          id: 'machine/cover',
          name: 'cover',
          assembly: ['machine'],
          shape: 3,
          placement: new Float64Array([1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, -100, -140, -50, 1]),
        },
      ],
    };
    const camera = viewOfPlace(treeOf(closed), place, size);
    expect(camera.cutBefore_mm).toBeDefined();
  });

  it('has axes of length one at right angles, looking along any direction', () => {
    for (const direction of [
      [0, 0, -1],
      [0, 0, 1],
      [0, 1, 0],
      [1, 2, -3],
    ] as const) {
      const { right, up, forward } = projectionOf({ target: [0, 0, 0], direction, span_mm: 1 }, 10, 10).axes;
      for (const axis of [right, up, forward]) expect(dot(axis, axis)).toBeCloseTo(1, 12);
      expect(dot(right, up)).toBeCloseTo(0, 12);
      expect(dot(forward, up)).toBeCloseTo(0, 12);
    }
  });
});
