/**
 * Rectangular trays, tilted and turned: elementary geometry. A tray that falls by `fall` mm per mm towards one wall of
 * height h holds the wedge W h2 / (2 fall) (while it does not reach the other wall); one that falls towards a corner
 * holds the corner of a cube, h3 / (6 fallX fallY).
 */
import { transformPoint } from '@coveline/model';
import { describe, expect, test } from 'vitest';
import { box, tray } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { about, modelOf, movedModel, multiply, placed, scaled } from '../../shapes/mesh.ts';
import { difference } from '../../shapes/solid.ts';
import { poolsIn } from './pools-in.ts';

const tan = (deg: number): number => Math.tan((deg * Math.PI) / 180);

describe('falling towards one wall', () => {
  const turns = [0, 13, 30, 33, 45, 60, 77];
  const cases = [
    { tilt: 0.05, height: 0.6, within: 0.03 },
    { tilt: 0.5, height: 2, within: 0.01 },
    { tilt: 1, height: 5, within: 0.01 },
    { tilt: 3, height: 20, within: 0.01 },
  ];
  for (const { tilt, height, within } of cases) {
    test.each(turns)(`tilt ${tilt}, walls of ${height} mm, turned %s`, async (turn) => {
      const [length, width] = [700, 300];
      const standing = modelOf([
        { id: 'tray', mesh: tray(length, width, height, 2), placement: placed({ tiltY: tilt }) },
      ]);
      const fall = tan(tilt);
      const expected =
        height / fall <= length
          ? (width * height ** 2) / (2 * fall)
          : width * (length * height - (length ** 2 * fall) / 2);
      const { pools } = await poolsIn(movedModel(standing, about(2, turn)));
      expect(pools).toHaveLength(1);
      expect(Math.abs((pools[0].volume_mL * 1000) / expected - 1)).toBeLessThan(within);
      // Upright wall of the tilted tray: its foot is the deepest point.
      expect(pools[0].depth_mm).toBeCloseTo(height * Math.cos((tilt * Math.PI) / 180), 1);
    });
  }
});

test('the pitch hardly matters, walls of 0.3 mm hold at 4 mm', async () => {
  const model = modelOf([
    { id: 'tray', mesh: tray(700, 300, 5, 0.3), placement: placed({ tiltY: 1, turn: 0 }) },
  ]);
  const expected = (300 * 25) / (2 * tan(1));
  for (const pitch_mm of [4, 3, 2, 1]) {
    const { pools } = await poolsIn(movedModel(model, about(2, 20)), { pitch_mm });
    expect(pools).toHaveLength(1);
    expect(Math.abs((pools[0].volume_mL * 1000) / expected - 1)).toBeLessThan(0.005);
  }
});

test.each([0, 25, 40])('falling towards a corner, turned %s', async (turn) => {
  // The floor has the normal of the placement; its falls along the tray's own edges follow from that.
  const placement = placed({ tiltX: -1.5, tiltY: 2 });
  const fallX = -placement[2] / placement[10];
  const fallY = -placement[6] / placement[10];
  const height = 8;
  const { pools } = await poolsIn(
    movedModel(modelOf([{ id: 'tray', mesh: tray(700, 500, height, 2), placement }]), about(2, turn)),
  );
  const expected = Math.abs(height ** 3 / (6 * fallX * fallY));
  expect(pools).toHaveLength(1);
  expect(Math.abs((pools[0].volume_mL * 1000) / expected - 1)).toBeLessThan(0.01);
});

describe('drain holes in the floor', () => {
  const pierced = (diameter: number, x: number) =>
    difference(tray(400, 200, 30, 3), cylinder(diameter / 2, 20, 64, placed({ move: [x, 100, -10] })));

  test.each([3, 5, 10])('a level tray with a hole of %s mm is dry', async (diameter) => {
    const { total_mL } = await poolsIn(modelOf([{ id: 'tray', mesh: pierced(diameter, 200) }]));
    expect(total_mL).toBe(0);
  });

  test.each([5, 10])('a hole of %s mm above the lowest corner keeps the wedge below it', async (diameter) => {
    const model = modelOf([{ id: 'tray', mesh: pierced(diameter, 300), placement: placed({ tiltY: 2 }) }]);
    const { pools } = await poolsIn(movedModel(model, about(2, 10)));
    const run = 100 - diameter / 2;
    const expected = (200 * run ** 2 * tan(2)) / 2;
    expect(pools).toHaveLength(1);
    expect(Math.abs((pools[0].volume_mL * 1000) / expected - 1)).toBeLessThan(0.01);
    // It runs over at the edge of the hole that is nearest to the low wall.
    const low = transformPoint(multiply(about(2, 10), placed({ tiltY: 2 })), [300 + diameter / 2, 100, 0]);
    expect(Math.hypot(...low.map((c, k) => c - pools[0].spill_mm[k]))).toBeLessThan(1);
  });
});

test('five sheets that touch are a tray', async () => {
  const [l, w, h, t] = [300, 200, 40, 2];
  const model = modelOf([
    { id: 'floor', mesh: box([0, 0, -t], [l, w, 0]) },
    { id: 'left', mesh: box([-t, -t, -t], [0, w + t, h]) },
    { id: 'right', mesh: box([l, -t, -t], [l + t, w + t, h]) },
    { id: 'front', mesh: box([0, -t, -t], [l, 0, h]) },
    { id: 'back', mesh: box([0, w, -t], [l, w + t, h]) },
  ]);
  const { pools } = await poolsIn(movedModel(model, about(2, 12)));
  expect(pools).toHaveLength(1);
  expect(pools[0].parts).toEqual(['back', 'floor', 'front', 'left', 'right']);
  expect(Math.abs((pools[0].volume_mL * 1000) / (l * w * h) - 1)).toBeLessThan(0.005);
  expect(Math.abs((pools[0].area_cm2 * 100) / (l * w) - 1)).toBeLessThan(0.005);
  expect(pools[0].depth_mm).toBeCloseTo(h, 6);
});

test('two bodies make a dam together, and neither alone', async () => {
  // A channel with three walls, and a gate that closes its fourth side to 25 of 40 mm.
  const channel = difference(tray(200, 80, 40, 3), box([190, -0.001, 0], [210, 80.001, 50]));
  const gate = box([190, 0, 0], [193, 80, 25]);
  const together = await poolsIn(
    modelOf([
      { id: 'channel', mesh: channel },
      { id: 'gate', mesh: gate },
    ]),
  );
  expect(together.pools).toHaveLength(1);
  expect(together.pools[0].parts).toEqual(['channel', 'gate']);
  expect(Math.abs((together.total_mL * 1000) / (190 * 80 * 25) - 1)).toBeLessThan(0.005);
  expect((await poolsIn(modelOf([{ id: 'channel', mesh: channel }]))).total_mL).toBe(0);
  expect((await poolsIn(modelOf([{ id: 'gate', mesh: gate }]))).total_mL).toBe(0);
});

test('a small fitting is measured as well as a large machine', async () => {
  const model = modelOf([
    { id: 'tray', mesh: scaled(tray(700, 300, 20, 2), 0.04), placement: placed({ tiltY: 3 }) },
  ]);
  const expected = (0.04 * 300 * (0.04 * 20) ** 2) / (2 * tan(3));
  const { pools } = await poolsIn(movedModel(model, about(2, 50)));
  expect(Math.abs((pools[0].volume_mL * 1000) / expected - 1)).toBeLessThan(0.01);
});
