import { expect, test } from 'vitest';
import { box, hollowBox, tray } from '../../../../../validation/shapes/box.ts';
import { cylinder } from '../../../../../validation/shapes/cylinder.ts';
import {
  type Mesh,
  meshVolume,
  modelOf,
  placed,
  transformed,
} from '../../../../../validation/shapes/mesh.ts';
import { arc, revolve } from '../../../../../validation/shapes/revolve.ts';
import { cup, dish, uPipe } from '../../../../../validation/shapes/vessels.ts';
import { defaultSettings } from '../../settings.ts';
import { measureStandingLiquid } from '../standing-liquid.ts';
import { meanDepth, wetShare } from './contents.ts';
import { inflated } from './inflate.ts';
import { loadManifoldUnion } from './manifold-union.ts';
import { exactPools } from './merge-tree.ts';

const union = await loadManifoldUnion();
const volumes = (mesh: Mesh): number[] =>
  exactPools(mesh)
    .pools.map((p) => p.volume_mm3)
    .filter((v) => v > 1e-6);

test('mean of the positive depth over a triangle: wholly wet, one corner wet, two corners wet', () => {
  expect(meanDepth(1, 2, 3)).toBe(2);
  expect(meanDepth(-1, -2, 0)).toBe(0);
  // A corner cut at half its sides: a quarter of the area with a third of the depth.
  expect(meanDepth(1, -1, -1)).toBeCloseTo(1 / 12, 12);
  expect(meanDepth(-1, 1, 1)).toBeCloseTo(1 / 3 + 1 / 12, 12);
});

test('share of a triangle that is wet: cut at half its sides, a quarter lies on one side', () => {
  expect([wetShare(1, 2, 3), wetShare(-1, -2, 0)]).toEqual([1, 0]);
  expect(wetShare(1, -1, -1)).toBeCloseTo(1 / 4, 12);
  expect(wetShare(-1, 1, 1)).toBeCloseTo(3 / 4, 12);
});

test('a tilted tray to nine digits', () => {
  const tan = Math.tan((2 * Math.PI) / 180);
  const [volume, ...more] = volumes(transformed(tray(400, 100, 5, 2), placed({ turn: 0, tiltY: 2 })));
  expect(more).toEqual([]);
  expect(volume / ((100 * 25) / (2 * tan))).toBeCloseTo(1, 9);
});

test('a dish holds what its facets hold', () => {
  const n = 64;
  const inside = revolve([...arc([0, 0], 50, -90, 0, n / 4), [0, 0]], n);
  const [volume, ...more] = volumes(dish(50, 2, n));
  expect(more).toEqual([]);
  expect(volume / meshVolume(inside)).toBeCloseTo(1, 9);
});

test('nothing stands in a hollow, on a box, under an inverted cup or in a drained one', () => {
  expect(volumes(hollowBox(30, 20, 10, 1))).toEqual([]);
  expect(volumes(box([0, 0, 0], [10, 10, 10]))).toEqual([]);
  expect(volumes(transformed(cup(20, 30, 1, 32), placed({ tiltX: 180 })))).toEqual([]);
});

test('what hangs into a pool is taken off', () => {
  // A rod of 10 x 10 from above, 15 mm deep into a tray of 20 mm, that touches nothing; one solid of two shells.
  const pool = tray(100, 80, 20, 2);
  const rod = box([40, 30, 5], [50, 40, 60]);
  const [volume, ...more] = volumes(union([pool, rod]));
  expect(more).toEqual([]);
  expect(volume).toBeCloseTo(100 * 80 * 20 - 100 * 15, 1);
});

test('both ends of a U are one pool', () => {
  const found = volumes(uPipe(20, 1, 60, 40, 35, 48));
  expect(found).toHaveLength(1);
});

test('faces move by what is asked, corners and smooth faces alike', () => {
  const cube = inflated(box([0, 0, 0], [10, 20, 30]), 0.01);
  expect([...cube.positions.subarray(0, 3)].map((c) => c / -0.01)).toSatisfy((c: number[]) =>
    c.every((x) => Math.abs(x - 1) < 0.01),
  );
  const round = inflated(cylinder(10, 20, 64), 0.01);
  const radius = Math.hypot(round.positions[3], round.positions[4]);
  expect((radius - 10) / 0.01).toBeCloseTo(1, 1);
});

test('the two methods agree on a pool between parts that touch, at any turn', () => {
  const bodies = (turn: number) => [
    { id: 'floor', mesh: box([0, 0, -2], [60, 40, 0]), placement: placed({ turn }) },
    { id: 'left', mesh: box([-2, -2, -2], [0, 42, 15]), placement: placed({ turn }) },
    { id: 'right', mesh: box([60, -2, -2], [62, 42, 15]), placement: placed({ turn }) },
    { id: 'front', mesh: box([0, -2, -2], [60, 0, 15]), placement: placed({ turn }) },
    { id: 'back', mesh: box([0, 40, -2], [60, 42, 15]), placement: placed({ turn }) },
  ];
  for (const turn of [0, 12, 31]) {
    const { measure } = measureStandingLiquid(modelOf(bodies(turn)), defaultSettings, {}, undefined, union);
    expect(measure.places).toHaveLength(1);
    const [{ exact_mL = 0, difference = 1, caveats }] = measure.places;
    expect(Math.abs(exact_mL / 36 - 1)).toBeLessThan(0.002);
    expect(Math.abs(difference)).toBeLessThan(0.005);
    expect(caveats).toBeUndefined();
  }
});

test('a pool that drains through a crack that only the exact method sees is dropped, and a note tells', () => {
  // A slit of 0.3 mm through the wall, narrower than the columns can see.
  const slit = union([
    box([-2, -2, -2], [62, 42, 0]),
    box([-2, -2, -2], [0, 42, 15]),
    box([60, -2, -2], [62, 42, 15]),
    box([-2, -2, -2], [62, 0, 15]),
    box([-2, 40, -2], [30, 42, 15]),
    box([30.3, 40, -2], [62, 42, 15]),
  ]);
  const far = { id: 'far', mesh: box([900, 900, 0], [901, 901, 1]) };
  const model = modelOf([{ id: 'tray', mesh: slit }, far]);
  const columns = measureStandingLiquid(model, defaultSettings).measure;
  expect(columns.total_mL).toBeGreaterThan(1);
  const { measure, notes } = measureStandingLiquid(model, defaultSettings, {}, undefined, union);
  expect(measure).toEqual({ total_mL: 0, places: [] });
  expect(notes.join()).toContain(`(${Number(columns.total_mL.toPrecision(3))} mL) are not listed`);
});
