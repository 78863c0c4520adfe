/**
 * Trials against the thing done: what a trial says is what the survey measures on a model in which the hole is drilled, or
 * the part stands tilted.
 */
import type { Model, Vec3 } from '@coveline/model';
import { defaultSettings, liquidBasis, proposeFor, survey, tryDrain, tryTilt } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { box, tray } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { about, type Body, modelOf, multiply, placed } from '../../shapes/mesh.ts';
import { difference } from '../../shapes/solid.ts';
import { cup } from '../../shapes/vessels.ts';
import { poolsIn } from './pools-in.ts';

const tan = (deg: number): number => Math.tan((deg * Math.PI) / 180);
const shelf: Body = { id: 'shelf', mesh: box([-50, -50, -120], [350, 250, -110]) };
const other: Body = { id: 'other', mesh: tray(60, 60, 12, 2), placement: placed({ move: [500, 40, 0] }) };
const settings = { ...defaultSettings, leastPool_mL: 1e-3, leastPoolDepth_mm: 1e-2 };

describe('a drain hole', () => {
  // 300 x 200, falling by 1 degree towards x = 300.
  const placement = placed({ tiltY: 1, turn: 0 });
  const standing = (mesh = tray(300, 200, 20, 3)): Model =>
    modelOf([{ id: 'tray', mesh, placement }, shelf, other]);
  const onFloor = (x: number, y: number): Vec3 => {
    const a = Math.PI / 180;
    return [x * Math.cos(a), y, -x * Math.sin(a)];
  };

  test.each([100, 200, 280])('at %s of 300 mm: as if it were drilled', async (x) => {
    const trial = tryDrain(liquidBasis(standing(), settings), { at_mm: onFloor(x, 100), diameter_mm: 10 });
    const drilledMesh = difference(
      tray(300, 200, 20, 3),
      cylinder(5, 40, 64, placed({ move: [x, 100, -20] })),
    );
    const whole = await poolsIn(standing());
    const done = await poolsIn(standing(drilledMesh));
    expect(trial.parts).toEqual(['tray']);
    expect(trial.length_mm).toBeCloseTo(3 / Math.cos(Math.PI / 180), 3);
    expect(Math.abs(trial.saved_mL / (whole.total_mL - done.total_mL) - 1)).toBeLessThan(0.01);
    // The wedge below the lowest point of the mouth stays.
    const wedge_mL = (200 * (300 - x - 5) ** 2 * tan(1)) / 2 / 1000;
    expect(Math.abs(trial.after_mL - wedge_mL)).toBeLessThan(0.02 * wedge_mL + 0.02);
  });

  test('out through the wall, sideways', () => {
    const level = modelOf([{ id: 'tray', mesh: tray(300, 200, 40, 3) }, shelf]);
    const trial = tryDrain(liquidBasis(level, settings), {
      at_mm: [300, 100, 15],
      direction: [2, 0, 0],
      diameter_mm: 10,
    });
    expect(trial.length_mm).toBeCloseTo(3, 6);
    expect(Math.abs(trial.before_mL / 2400 - 1)).toBeLessThan(0.01);
    expect(Math.abs(trial.after_mL / 600 - 1)).toBeLessThan(0.01);
  });

  test('into a vessel below, which is full, it drains no farther than that', () => {
    // The upper tray stands in a tub whose rim is 6 mm over its floor.
    const model = modelOf([
      { id: 'tray', mesh: tray(100, 80, 20, 2), placement: placed({ move: [40, 40, 30] }) },
      { id: 'tub', mesh: tray(200, 160, 36, 2) },
    ]);
    const trial = tryDrain(liquidBasis(model, settings), { at_mm: [90, 80, 30], diameter_mm: 12 });
    expect(Math.abs(trial.before_mL / 160 - 1)).toBeLessThan(0.01);
    expect(Math.abs(trial.after_mL / 48 - 1)).toBeLessThan(0.02);
  });

  test('what leads nowhere is refused', () => {
    const basis = liquidBasis(standing(), settings);
    expect(() => tryDrain(basis, { at_mm: [150, 100, 500], direction: [0, 0, 1], diameter_mm: 5 })).toThrow(
      'nowhere',
    );
    expect(() => tryDrain(basis, { at_mm: [150, 100, 0], diameter_mm: 0 })).toThrow('above 0');
  });
});

describe('a part tilted', () => {
  const level = [{ id: 'tray', mesh: tray(300, 200, 20, 3) }, shelf, other] as const;

  test.each([1, 3, -5])('by %s degrees: as if it stood so', async (deg) => {
    const trial = tryTilt(liquidBasis(modelOf(level), settings), {
      part: 'tray',
      axis: [0, 2, 0],
      deg,
      about_mm: [0, 0, 0],
    });
    const turned = { ...level[0], placement: multiply(about(1, deg), placed({})) };
    const done = await poolsIn(modelOf([turned, shelf, other]));
    const rest = (60 * 60 * 12) / 1000;
    expect(Math.abs(trial.before_mL / 1200 - 1)).toBeLessThan(0.005);
    expect(Math.abs(trial.after_mL / (done.total_mL - rest) - 1)).toBeLessThan(0.01);
    const { result } = await survey(modelOf(level), { settings, measures: ['standingLiquid'] });
    expect(result.measures.standingLiquid?.places).toHaveLength(2);
  });

  test('it turns about the point that is given, or about its own middle', () => {
    const basis = liquidBasis(modelOf(level), settings);
    const tilt = { part: 'tray', axis: [0, 1, 0], deg: 3 } as const;
    // The foot of the wall at x = 300 becomes the deepest place.
    const at = tryTilt(basis, { ...tilt, about_mm: [300, 100, 0] }).after[0].deepest_mm;
    expect(Math.hypot(at[0] - 300, at[2])).toBeLessThan(0.1);
    const middle = tryTilt(basis, tilt).after[0].deepest_mm;
    expect(middle[2]).toBeCloseTo(8.5 - 150 * Math.sin(Math.PI / 60) - 8.5 * Math.cos(Math.PI / 60), 1);
  });

  test('a cup that is turned over is empty', () => {
    const model = modelOf([
      { id: 'cup', mesh: cup(40, 50, 2, 64) },
      { id: 'plate', mesh: box([-45, -45, -20], [45, 45, -10]) },
    ]);
    const trial = tryTilt(liquidBasis(model, settings), { part: 'cup', axis: [1, 0, 0], deg: 180 });
    expect(Math.abs(trial.before_mL / (Math.PI * 1.6 * 50) - 1)).toBeLessThan(0.01);
    expect(trial.after).toEqual([]);
  });

  test('a part that is not there is named', () => {
    expect(() =>
      tryTilt(liquidBasis(modelOf(level), settings), { part: 'lid', axis: [0, 0, 1], deg: 1 }),
    ).toThrow('"lid"');
  });
});

test('proposals for a level tray: a hole wide enough for what surface tension holds, or a tilt', async () => {
  // One wall is lower, so that it runs over there.
  const mesh = difference(tray(120, 80, 10, 4), box([119, -1, 6], [130, 81, 20]));
  const model = modelOf([{ id: 'tray', mesh }, shelf]);
  const { pools } = await poolsIn(model);
  const { part, drain, tilt } = proposeFor(liquidBasis(model, settings), pools[0]);
  expect(part).toBe('tray');
  // 4 x 7.44 mm2 / 8 mm is less than the 4 mm of the floor, / 6 mm is more (see the constant's source).
  expect(drain?.hole.diameter_mm).toBe(8);
  expect(drain?.trial.after_mL).toBeLessThan(0.01 * pools[0].volume_mL);
  // Emptied but for a twentieth once the fall over its length takes the 6 mm up.
  expect(tilt?.trial.saved_mL).toBeGreaterThan(0.5 * pools[0].volume_mL);
  const towards = tilt?.tilt.axis ?? [0, 0, 0];
  expect(Math.abs(towards[1])).toBeGreaterThan(Math.abs(towards[0]));
});
