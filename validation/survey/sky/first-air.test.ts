/** First air against closed forms. All values follow from the drawing. */
import { defaultSettings, measureOpenSky, type SkyView } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { assemble, motion } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { identity, transformed } from '../../shapes/mesh.ts';
import { filter, mouth, moved, segment, strip } from './scene.ts';

/** Of the share of a bar in the brief: 0.4 % of the mouth at 2 601 rays. */
const tolerance = 0.004;

const turns = [
  { name: 'as drawn', by: identity },
  { name: 'tilted', by: motion([70, -30, 500], [1, 2, 0.5], 37) },
  { name: 'flow from the side', by: motion([0, 10, 20], [1, 0.1, 0], 92) },
] as const;

describe.each(turns)('$name', ({ by }) => {
  describe.each([8, 35, 400])('mouth of radius %i mm', (r) => {
    const look = (
      parts: Parameters<typeof assemble>[0],
      ...filters: ReturnType<typeof filter>[]
    ): SkyView => {
      const { model, site } = moved(assemble(parts), [mouth(r)], filters, by);
      return measureOpenSky(model, defaultSettings, site).measure.places[0];
    };
    const jar = cylinder(r * 1.05, r, 32, motion([0, 0, -r]));
    const face = filter(4 * r, 10 * r, { velocity_mPerS: 0.45 });

    test('nothing in the way: all open, with distance and time', () => {
      const place = look({ jar }, face);
      expect(place.open).toBe(1);
      expect(place.past).toBe(0);
      expect(place.interruptedBy).toEqual([]);
      expect(place.distance_mm).toBeCloseTo(10 * r, 6);
      expect(place.transit_s).toBeCloseTo((10 * r) / 450, 9);
      expect(place.caveats).toBeUndefined();
    });

    test('a plate over half of it leaves half', () => {
      const plate = box([-3 * r, 0, 5 * r], [3 * r, 3 * r, 5.01 * r]);
      for (const turn of [0, 17.19, 61]) {
        const turnedPlate = transformed(plate, motion([0, 0, 0], [0, 0, 1], turn));
        const place = look({ jar, plate: turnedPlate }, face);
        expect(Math.abs(place.open - 0.5)).toBeLessThan(0.001);
        expect(place.interruptedBy).toEqual([{ part: 'plate', share: expect.closeTo(1 - place.open, 9) }]);
      }
    });

    test.each([0.15, 0.5, 0.8])('a bar of half width %f r hides the share of the closed form', (x) => {
      for (const turn of [0, 40]) {
        const bar = box([-3 * r, -x * r, 5 * r], [3 * r, x * r, 6 * r]);
        const place = look({ jar, bar: transformed(bar, motion([0, 0, 0], [0, 0, 1], turn)) }, face);
        expect(Math.abs(1 - place.open - strip(x))).toBeLessThan(tolerance);
        expect(place.interruptedBy.map((i) => i.part)).toEqual(['bar']);
      }
    });

    test('a rod and a plate under it: each air is told by what it meets last', () => {
      const rod = box([-3 * r, -0.5 * r, 6 * r], [3 * r, 0.5 * r, 7 * r]);
      const plate = box([0, -3 * r, 3 * r], [3 * r, 3 * r, 3.1 * r]);
      const place = look({ jar, rod, plate }, face);
      expect(place.interruptedBy.map((i) => i.part)).toEqual(['plate', 'rod']);
      expect(Math.abs(place.interruptedBy[0].share - 0.5)).toBeLessThan(0.002);
      expect(Math.abs(place.interruptedBy[1].share - strip(0.5) / 2)).toBeLessThan(0.002);
    });

    test('a face that ends over the mouth: the rest stands beside the stream', () => {
      const place = look({ jar }, filter(r, 10 * r, { at_mm: [1.4 * r, 0, 10 * r] }));
      // The face begins at 0.4 r and goes on beyond the mouth in all other directions.
      expect(Math.abs(place.past - (1 - segment(0.4)))).toBeLessThan(0.002);
      expect(place.open + place.past).toBeCloseTo(1, 9);
      expect(place.caveats?.[0]).toMatch(/beside the stream/);
      const none = look({ jar }, filter(r, 10 * r, { at_mm: [5 * r, 0, 10 * r] }));
      expect(none).toMatchObject({ open: 0, past: 1, interruptedBy: [] });
      expect(none.distance_mm).toBeUndefined();
    });
  });
});

test('air that comes at an angle throws the shadow of a plate aside', () => {
  const r = 35;
  for (const angle of [10, 30, 50]) {
    const a = (angle * Math.PI) / 180;
    // Rays go up and to the right: at height h they have moved by h tan a.
    const reach = 100 * Math.tan(a);
    const far = 400 * Math.tan(a);
    const face = filter(300, 400, { at_mm: [far, 0, 400], flow: [-Math.sin(a), 0, -Math.cos(a)] });
    const plate = box([reach + 0.3 * r, -200, 100], [reach + 300, 200, 100.001]);
    const model = assemble({ jar: cylinder(36, 80, 32, motion([0, 0, -80])), plate });
    const { places } = measureOpenSky(model, defaultSettings, {
      mouths: [mouth(r)],
      filters: [face],
    }).measure;
    expect(Math.abs(1 - places[0].open - segment(0.3))).toBeLessThan(0.002);
    expect(places[0].distance_mm).toBeCloseTo(400 / Math.cos(a), 6);
  }
});

test('a lid on the rim hides all; the jar and the filter themselves hide nothing', () => {
  const jar = cylinder(36, 80, 32, motion([0, 0, -78]));
  const hood = box([-200, -200, 399], [200, 200, 500]);
  const filters = [filter(200, 400, { parts: ['hood'] })];
  const open = measureOpenSky(assemble({ jar, hood }), defaultSettings, { mouths: [mouth(35)], filters });
  expect(open.measure.places[0].open).toBe(1);
  expect([...open.field].slice(0, 4)).toEqual([1, 1, 1, 1]);
  const duct = box([-200, -200, 600], [200, 200, 700]);
  const behind = { mouths: [mouth(35)], filters: [filter(200, 400)] };
  expect(measureOpenSky(assemble({ jar, duct }), defaultSettings, behind).measure.places[0].open).toBe(1);
  const lid = cylinder(40, 2, 32);
  const shut = measureOpenSky(assemble({ jar, hood, lid }), defaultSettings, {
    mouths: [mouth(35)],
    filters,
  });
  expect(shut.measure.places[0]).toMatchObject({ open: 0, interruptedBy: [{ part: 'lid', share: 1 }] });
  expect([...shut.field].slice(0, 4)).toEqual([0, 0, 0, 0]);
  expect(shut.drawings.get(shut.measure.places[0].id)?.triangles?.length).toBeGreaterThan(0);
});

test('of two streams the one counts in which the mouth stands; panels side by side are one stream', () => {
  const jar = cylinder(36, 80, 32, motion([0, 0, -80]));
  const panels = [-1, 1].map((side) =>
    filter(100, 400, { id: `panel ${side}`, at_mm: [side * 100, 0, 400] }),
  );
  const cross = filter(50, 0, {
    id: 'cross flow',
    at_mm: [-300, 0, 500],
    flow: [1, 0, 0],
    across_mm: [0, 50, 0],
    along_mm: [0, 0, 50],
  });
  const { places } = measureOpenSky(assemble({ jar }), defaultSettings, {
    mouths: [mouth(35)],
    filters: [cross, ...panels],
  }).measure;
  expect(places[0]).toMatchObject({ open: 1, distance_mm: 400 });
});

test('without mouth or filter a note says so, and what cannot be used is named', () => {
  const model = assemble({ jar: cylinder(36, 80, 32) });
  const nothing = measureOpenSky(model, defaultSettings, { mouths: [], filters: [] });
  expect(nothing.measure.places).toEqual([]);
  expect(nothing.notes).toEqual(['First air: no mouth is given, so nothing was looked for.']);
  const bad = measureOpenSky(model, defaultSettings, {
    mouths: [mouth(0)],
    filters: [filter(10, 100, { flow: [1, 0, 0] })],
  });
  expect(bad.notes.join(' ')).toMatch(/mouth "mouth" is left out/);
  expect(bad.notes.join(' ')).toMatch(
    /filter face "filter" is left out, because its air flows along its face/,
  );
});
