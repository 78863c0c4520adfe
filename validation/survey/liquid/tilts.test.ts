/**
 * Tilts of the whole machine. A level channel with one open end is dry; tilted by a away from it, it holds the wedge
 * W L2 tan(a) / 2 (elementary geometry). A level tray with a hole in one corner is dry when that corner is the lowest.
 */
import { defaultSettings, liquidOverTilts, loadManifoldUnion, SurveyStopped, survey } from '@coveline/survey';
import { expect, test } from 'vitest';
import { box, tray } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { modelOf, placed } from '../../shapes/mesh.ts';
import { difference } from '../../shapes/solid.ts';

const [length, width, height] = [400, 100, 40];
const channel = modelOf([
  {
    id: 'channel',
    mesh: difference(tray(length, width, height, 3), box([length - 1, -1, 0], [length + 9, width + 1, 50])),
  },
]);
const union = await loadManifoldUnion();

test.each([0.5, 1, 2])(
  'a channel tilted by %s degrees away from its open end is the worst of the range',
  (range_deg) => {
    const { level, worst, best, samples } = liquidOverTilts(channel, defaultSettings, { range_deg, union });
    expect(level.total_mL).toBe(0);
    const a = (range_deg * Math.PI) / 180;
    expect(worst.y_deg).toBe(-range_deg);
    // About x as well the wedge falls to one side and grows: never less than without.
    const wedge_mL = (width * (length - 1) ** 2 * Math.tan(a)) / 2 / 1000;
    expect(worst.total_mL).toBeGreaterThan(0.99 * wedge_mL);
    const upright = samples.find(({ x_deg, y_deg }) => x_deg === 0 && y_deg === -range_deg);
    expect(Math.abs((upright?.total_mL ?? 0) / wedge_mL - 1)).toBeLessThan(0.03);
    expect(best.total_mL).toBe(0);
  },
);

test('the best tilt of a level tray puts its drained corner lowest', () => {
  const mesh = difference(
    tray(300, 200, 30, 3),
    cylinder(6, 20, 48, placed({ move: [294, 194, -10] })),
    // A ridge around the hole keeps 4 mm of liquid on the level tray.
  );
  const ridged = modelOf([
    { id: 'tray', mesh },
    {
      id: 'ridge',
      mesh: difference(
        cylinder(9, 4, 48, placed({ move: [294, 194, -0.5] })),
        cylinder(6, 20, 48, placed({ move: [294, 194, -10] })),
      ),
    },
  ]);
  const { level, best } = liquidOverTilts(ridged, defaultSettings, {
    range_deg: 1,
    bestWithin_deg: 4,
    union,
  });
  expect(level.total_mL).toBeGreaterThan(150);
  expect(best.total_mL).toBeLessThan(0.2 * level.total_mL);
  // Right-handed: about y by a positive angle +x falls, about x by a negative one +y falls.
  expect(best.y_deg).toBeGreaterThan(0);
  expect(best.x_deg).toBeLessThan(0);
});

test('the same tilts twice give the same bytes, and the survey carries them', async () => {
  const tiltRange = { range_deg: 1, steps: 3, bestWithin_deg: 2 };
  const one = liquidOverTilts(channel, defaultSettings, tiltRange);
  expect(JSON.stringify(liquidOverTilts(channel, defaultSettings, tiltRange))).toBe(JSON.stringify(one));
  const { result } = await survey(channel, { measures: ['standingLiquid'], tiltRange });
  expect(result.measures.standingLiquid?.tilts).toEqual(one);
});

test('a tilt about both axes gives places on the level machine', async () => {
  const tilt = { x_deg: -1, y_deg: -1.5 };
  const { result } = await survey(channel, { measures: ['standingLiquid'], tilt, exact: loadManifoldUnion });
  const [pool] = result.measures.standingLiquid?.places ?? [];
  // The corner of floor and walls that lies lowest.
  expect(pool.deepest_mm.map((c) => Math.abs(Math.round(c)))).toEqual([0, 100, 0]);
});

test('nonsense is refused, an aborted signal stops the search', () => {
  expect(() => liquidOverTilts(channel, defaultSettings, { range_deg: 0 })).toThrow('above 0');
  expect(() => liquidOverTilts(channel, defaultSettings, { range_deg: 1, steps: 4 })).toThrow('odd');
  expect(() =>
    liquidOverTilts(channel, defaultSettings, { range_deg: 1 }, { signal: { aborted: true } }),
  ).toThrow(SurveyStopped);
});
