import type { Vec3 } from '@coveline/model';
import { defaultSettings, type Pool } from '@coveline/survey';
import { expect, test } from 'vitest';
import { boxModel } from '../geometry/box-model.fixture.ts';
import { compareRevisions, type Surveyed } from './compare.ts';

const pool = (id: string, part: string, at: Vec3, volume_mL: number): Pool => ({
  id,
  parts: [part],
  at_mm: at,
  bounds_mm: [at, at],
  volume_mL,
  depth_mm: 1,
  area_cm2: 10,
  deepest_mm: at,
  spill_mm: at,
});

const parts = (lift: number) =>
  boxModel(
    ['tray', 'pan', 'shelf', 'channel'].map((name) => ({
      name,
      low: [0, 0, lift],
      high: [500, 500, lift + 10],
    })),
  );
const surveyed = (places: readonly Pool[], lift = 0): Surveyed => ({
  model: parts(lift),
  survey: {
    settings: defaultSettings,
    notes: [],
    measures: { standingLiquid: { total_mL: 0, places } },
  },
});

const told = (before: readonly Pool[], after: readonly Pool[], lift = 0) =>
  compareRevisions(surveyed(before), surveyed(after, lift)).map((c) => [c.change, c.before, c.after]);

test('a pool that is gone is mended, one that comes is new, one that stays is unchanged', () => {
  const stays = pool('p1', 'tray', [0, 0, 0], 10);
  expect(
    told([stays, pool('p2', 'shelf', [0, 0, 500], 5)], [stays, pool('p3', 'channel', [0, 0, 900], 4)]),
  ).toEqual([
    ['unchanged', 'p1', 'p1'],
    ['mended', 'p2', undefined],
    ['new', undefined, 'p3'],
  ]);
});

test('the same place with another id is matched by part and position, and told better or worse by its size', () => {
  expect(told([pool('a', 'tray', [0, 0, 0], 10)], [pool('b', 'tray', [8, 0, 0], 4)])).toEqual([
    ['better', 'a', 'b'],
  ]);
  expect(told([pool('a', 'tray', [0, 0, 0], 10)], [pool('b', 'tray', [8, 0, 0], 14)])).toEqual([
    ['worse', 'a', 'b'],
  ]);
  expect(told([pool('a', 'tray', [0, 0, 0], 10)], [pool('b', 'tray', [8, 0, 0], 10.3)])).toEqual([
    ['unchanged', 'a', 'b'],
  ]);
});

test('another part, or a place far off, is another place', () => {
  expect(told([pool('a', 'tray', [0, 0, 0], 10)], [pool('b', 'pan', [0, 0, 0], 10)])).toHaveLength(2);
  expect(told([pool('a', 'tray', [0, 0, 0], 10)], [pool('b', 'tray', [400, 0, 0], 10)])).toHaveLength(2);
});

test('of several candidates the nearest pairs match, each place once', () => {
  expect(
    told(
      [pool('a1', 'tray', [0, 0, 0], 1), pool('a2', 'tray', [15, 0, 0], 1)],
      [pool('b1', 'tray', [14, 0, 0], 1), pool('b2', 'tray', [1, 0, 0], 1)],
    ),
  ).toEqual([
    ['unchanged', 'a1', 'b2'],
    ['unchanged', 'a2', 'b1'],
  ]);
});

test('a place that went up with its part is the same place', () => {
  const lifted = [pool('b', 'tray', [0, 0, 80], 10)];
  expect(told([pool('a', 'tray', [0, 0, 0], 10)], lifted, 80)).toEqual([['unchanged', 'a', 'b']]);
  expect(told([pool('a', 'tray', [0, 0, 0], 10)], lifted)).toHaveLength(2);
});
