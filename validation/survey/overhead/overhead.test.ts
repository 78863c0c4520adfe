/** What hangs above a mouth, against closed forms. All values follow from the drawing. */
import type { Model } from '@coveline/model';
import { defaultSettings, type FilterFace, type Mouth, measureOverhead } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { assemble, motion } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { type Mesh, transformed } from '../../shapes/mesh.ts';
import { arc, revolve } from '../../shapes/revolve.ts';
import { filter, mouth, moved, segment, strip } from '../sky/scene.ts';

const look = (
  model: Model,
  m: Mouth,
  { filters = [], ring = 25 }: { filters?: readonly FilterFace[]; ring?: number } = {},
) => measureOverhead(model, { ...defaultSettings, besideMouth_mm: ring }, { mouths: [m], filters });

const jar = (r: number): Mesh => cylinder(r * 1.05, r, 32, motion([0, 0, -r]));

describe.each([8, 35, 400])('mouth of radius %i mm', (r) => {
  test.each([0, 23, 90])('bars over it, turned by %i degrees, cover the share of the closed form', (turn) => {
    for (const x of [0.2, 0.6]) {
      const bar = box([-3 * r, -x * r, 2 * r], [3 * r, x * r, 3 * r]);
      const model = assemble({ jar: jar(r), bar: transformed(bar, motion([0, 0, 0], [0, 0, 1], turn)) });
      const { places } = look(model, mouth(r)).measure;
      expect(places.length).toBe(1);
      expect(Math.abs(places[0].covers - strip(x))).toBeLessThan(0.004);
      expect(places[0].height_mm).toBeCloseTo(2 * r, 6);
      expect(places[0].parts).toEqual(['bar']);
      expect(places[0].mouth).toBe('mouth');
    }
  });

  test('a tray shields the mouth from what hangs over it, as far as it reaches', () => {
    const tray = box([-2 * r, -2 * r, r], [0.5 * r, 2 * r, 1.1 * r]);
    const motor = box([-2 * r, -2 * r, 3 * r], [2 * r, 2 * r, 4 * r]);
    const small = box([-0.5 * r, -0.5 * r, 2 * r], [0.4 * r, 0.5 * r, 2.5 * r]);
    const { places } = look(assemble({ jar: jar(r), motor, tray, small }), mouth(r), { ring: 0 }).measure;
    expect(places.map((p) => p.parts[0])).toEqual(['tray', 'motor']);
    expect(Math.abs(places[0].covers - (1 - segment(0.5)))).toBeLessThan(0.002);
    expect(Math.abs(places[1].covers - segment(0.5))).toBeLessThan(0.002);
    expect(places[1].height_mm).toBeCloseTo(3 * r, 6);
  });

  test('a filter face with or without a part is a clean ceiling', () => {
    const motor = box([-2 * r, -2 * r, 5 * r], [2 * r, 2 * r, 6 * r]);
    const hood = box([-2 * r, -2 * r, 3 * r], [2 * r, 2 * r, 4 * r]);
    const filters = [filter(2 * r, 3 * r)];
    expect(look(assemble({ jar: jar(r), motor }), mouth(r), { filters }).measure.places).toEqual([]);
    const withPart = [filter(2 * r, 3 * r, { parts: ['hood'] })];
    expect(
      look(assemble({ jar: jar(r), motor, hood }), mouth(r), { filters: withPart }).measure.places,
    ).toEqual([]);
    expect(look(assemble({ jar: jar(r), motor, hood }), mouth(r)).measure.places[0].parts).toEqual(['hood']);
    // The guard that belongs to the filter hangs a little below its face.
    const below = [filter(2 * r, 3.5 * r, { parts: ['hood'] })];
    expect(look(assemble({ jar: jar(r), motor, hood }), mouth(r), { filters: below }).measure.places).toEqual(
      [],
    );
  });

  test('what hangs beside the mouth is told with its share of the ring', () => {
    const beside = box([r * 1.2, -4 * r, r], [9 * r, 4 * r, 2 * r]);
    const ring = r;
    const { places } = look(assemble({ jar: jar(r), beside }), mouth(r), { ring }).measure;
    expect(places.length).toBe(1);
    expect(places[0].covers).toBe(0);
    // The segment of the large circle beyond 1.2 r, over the area of the ring.
    expect(Math.abs(places[0].beside - (segment(0.6) * 4) / 3)).toBeLessThan(0.002);
    expect(places[0].height_mm).toBeCloseTo(r, 6);
    expect(look(assemble({ jar: jar(r), beside }), mouth(r), { ring: 0.1 * r }).measure.places).toEqual([]);
  });

  test('the lowest point is found: the tip of a cone, the bottom of a ball, the low side of a slanting plate', () => {
    const cone = revolve(
      [
        [0, 1.5 * r],
        [0.2 * r, 3 * r],
        [0, 3 * r],
      ],
      16,
    );
    const tip = look(
      assemble({ jar: jar(r), cone: transformed(cone, motion([0.31 * r, 0.17 * r, 0])) }),
      mouth(r),
    );
    expect(tip.measure.places[0].height_mm).toBeCloseTo(1.5 * r, 6);
    const ball = transformed(
      revolve(arc([0, 0], 0.5 * r, -90, 90, 24), 48),
      motion([0.3 * r, 0.1 * r, 2 * r]),
    );
    const drop = look(assemble({ jar: jar(r), ball }), mouth(r)).measure.places[0];
    expect(drop.height_mm).toBeCloseTo(1.5 * r, 6);
    expect(drop.at_mm[0]).toBeCloseTo(0.3 * r, 6);
    const plate = transformed(
      box([-5 * r, -5 * r, 0], [5 * r, 5 * r, 0.1 * r]),
      motion([0, 0, 3 * r], [1, 2, 0], 30),
    );
    const slant = look(assemble({ jar: jar(r), plate }), mouth(r)).measure.places[0];
    // The plane falls by tan 30 along the radius.
    expect(slant.height_mm / r).toBeCloseTo(3 - Math.tan(Math.PI / 6), 2);
  });
});

test('a nozzle that dips into the mouth hangs over it at height 0; a rail that stands beside does not hang', () => {
  const nozzle = cylinder(10, 100, 48, motion([0, 0, -20]));
  const rail = box([40, -100, -30], [50, 100, 30]);
  const { places } = look(assemble({ jar: jar(35), nozzle, rail }), mouth(35)).measure;
  expect(places.map((p) => p.parts[0])).toEqual(['nozzle']);
  expect(places[0].height_mm).toBe(0);
  expect(Math.abs(places[0].covers - (10 / 35) ** 2)).toBeLessThan(0.002);
});

test('a tilted mouth is seen from straight above; one that looks aside or down catches nothing', () => {
  const bar = box([-300, -12, 200], [300, 12, 220]);
  const m = mouth(35, { outward: [1, 0, 1] });
  const { places } = look(assemble({ bar }), m).measure;
  // Along x the mouth is foreshortened, along y it is not: the share of the strip stays.
  expect(Math.abs(places[0].covers - strip(12 / 35))).toBeLessThan(0.003);
  for (const outward of [
    [1, 0, 0],
    [0, 0.2, -1],
  ] as const) {
    const { measure, notes } = look(assemble({ bar }), mouth(35, { outward }));
    expect(measure.places).toEqual([]);
    expect(notes[0]).toMatch(/does not look up/);
  }
});

test('turned about the vertical and moved, the machine gives the same shares', () => {
  const parts = {
    jar: jar(35),
    bar: box([-200, -12, 200], [200, 12, 220]),
    lamp: box([5, -100, 400], [60, 100, 450]),
  };
  const once = look(assemble(parts), mouth(35)).measure.places;
  const { model, site } = moved(assemble(parts), [mouth(35)], [], motion([400, -80, 900], [0, 0, 1], 33));
  const turned = measureOverhead(model, defaultSettings, site).measure.places;
  expect(turned.map((p) => p.parts)).toEqual(once.map((p) => p.parts));
  turned.forEach((p, i) => {
    expect(Math.abs(p.covers - once[i].covers)).toBeLessThan(0.002);
    expect(Math.abs(p.beside - once[i].beside)).toBeLessThan(0.003);
  });
});
