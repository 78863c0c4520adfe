/** Room under and beside a machine, against closed forms. All values follow from the drawing. */
import type { Model } from '@coveline/model';
import { type Clearance, defaultSettings, measureClearances, type Site } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { assemble, motion } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { type Mesh, movedModel, transformed } from '../../shapes/mesh.ts';
import { union } from '../../shapes/solid.ts';

const measure = (model: Model, site: Partial<Site> = {}) =>
  measureClearances(model, defaultSettings, { walls: [], doors: [], ...site });
const floors = (model: Model, site: Partial<Site> = {}): readonly Clearance[] =>
  measure(model, site).measure.places.filter((p) => p.kind === 'floor');

const legs = (height: number, at: number): Record<string, Mesh> =>
  Object.fromEntries(
    [0, 1, 2, 3].map((k) => {
      const [x, y] = [(k & 1) * at, (k >> 1) * at];
      return [`leg ${k}`, box([x, y, 0], [x + 40, y + 40, height])];
    }),
  );

describe.each([20, 120, 280])('a base %i mm above the floor', (h) => {
  test.each([0, 31])('turned by %i degrees: height, area without the legs, and where', (turn) => {
    const model = movedModel(
      assemble({ base: box([0, 0, h], [640, 640, h + 50]), ...legs(h, 600) }),
      motion([900, 40, 70], [0, 0, 1], turn),
    );
    const { measure: found, notes, field } = measure(model);
    expect(found.places.map((p) => p.parts)).toEqual([['base']]);
    expect(found.places[0].distance_mm).toBeCloseTo(h, 6);
    const open_cm2 = (640 * 640 - 4 * 40 * 40) / 100;
    expect(Math.abs((found.places[0].area_cm2 ?? 0) / open_cm2 - 1)).toBeLessThan(0.002);
    expect(notes).toContain('Clearances: the lowest point of the model is taken as the floor.');
    expect([...field].some((d) => Math.abs(d - h) < 1e-3)).toBe(true);
  });

  test('a floor that is given counts from there', () => {
    const model = assemble({ base: box([0, 0, h], [640, 640, h + 50]) });
    const [low] = floors(model, { floor_mm: -10 });
    expect(low.distance_mm).toBeCloseTo(h + 10, 6);
    expect(low.area_cm2).toBeCloseTo(64 * 64, 6);
    expect(measure(model, { floor_mm: -10 }).notes).toEqual([]);
  });
});

test('what stands on the floor has no clearance; a cross member of the same body has', () => {
  const frame = union(
    box([0, 0, 0], [40, 40, 500]),
    box([560, 0, 0], [600, 40, 500]),
    box([0, 0, 90], [600, 40, 130]),
  );
  const [member, ...more] = floors(assemble({ frame }));
  expect(more).toEqual([]);
  expect(member.distance_mm).toBeCloseTo(90, 4);
  expect(member.area_cm2).toBeCloseTo((520 * 40) / 100, 1);
});

test('over a tray the tray is what stands low, and what is above it only as far as it sticks out', () => {
  const tray = box([0, 0, 60], [300, 300, 80]);
  const plate = box([-100, 0, 150], [300, 300, 160]);
  const places = floors(assemble({ tray, plate }), { floor_mm: 0 });
  expect(places.map((p) => [p.parts[0], p.distance_mm])).toEqual([
    ['tray', expect.closeTo(60, 6)],
    ['plate', expect.closeTo(150, 6)],
  ]);
  expect(places[1].area_cm2).toBeCloseTo((100 * 300) / 100, 0);
});

test('of a slanting plate only what lies below the limit counts', () => {
  for (const slope of [10, 30, 60]) {
    const a = (slope * Math.PI) / 180;
    const plate = transformed(box([0, 0, 0], [1000, 200, 5]), motion([0, 0, 200], [0, 1, 0], -slope));
    const [low] = floors(assemble({ plate }), { floor_mm: 0 });
    expect(low.distance_mm).toBeCloseTo(200, 4);
    // The underside reaches the limit of 300 mm after 100 mm of height; seen from below that is 100 / tan. The lower
    // end of the plate looks down as well.
    const reach = Math.min(1000 * Math.cos(a), 100 / Math.tan(a)) + 5 * Math.sin(a);
    expect((low.area_cm2 ?? 0) / ((reach * 200) / 100)).toBeGreaterThan(0.998);
    expect((low.area_cm2 ?? 0) / ((reach * 200) / 100)).toBeLessThan(1.002);
  }
});

test('a lying pipe counts with the half that looks down; what is small or high is left out', () => {
  const pipe = cylinder(30, 800, 96, motion([0, 0, 100], [0, 1, 0], 90));
  const bolt = box([0, 400, 80], [9, 409, 90]);
  const high = box([0, 800, 301], [500, 900, 310]);
  const places = floors(assemble({ pipe, bolt, high }), { floor_mm: 0 });
  expect(places.map((p) => p.parts[0])).toEqual(['pipe']);
  expect(places[0].distance_mm).toBeCloseTo(70, 1);
  // All of its width but the last degrees, which stand as walls.
  expect((places[0].area_cm2 ?? 0) / 480).toBeGreaterThan(0.99);
  expect((places[0].area_cm2 ?? 0) / 480).toBeLessThanOrEqual(1.0001);
});

test.each([0, 25, 110])(
  'walls around a machine turned by %i degrees: the nearest point, and who stands near',
  (turn) => {
    const a = (turn * Math.PI) / 180;
    const base = transformed(box([0, 0, 0], [1000, 600, 800]), motion([0, 0, 0], [0, 0, 1], turn));
    const corners = [
      [0, 0],
      [1000, 0],
      [1000, 600],
      [0, 600],
    ].map(([x, y]) => x * Math.cos(a) - y * Math.sin(a));
    const wall = { id: 'west', at_mm: [-1300, 7, 9] as const, into: [3, 0, 0] as const };
    const { places } = measure(assemble({ base, stool: box([-1100, 0, 0], [-1050, 50, 400]) }), {
      walls: [wall],
    }).measure;
    const found = places.find((p) => p.kind === 'wall');
    expect(found).toMatchObject({ of: 'west', parts: ['stool'], distance_mm: expect.closeTo(200, 6) });
    const distance = Math.min(...corners) + 1300;
    expect(found?.nearer).toEqual([
      { part: 'stool', distance_mm: expect.closeTo(200, 6) },
      ...(distance < 500 ? [{ part: 'base', distance_mm: expect.closeTo(distance, 6) }] : []),
    ]);
  },
);

test('a machine that reaches through a wall, a wall that leans, a door that the model lacks', () => {
  const model = assemble({ base: box([0, 0, 0], [1000, 600, 800]) });
  const { measure: found, notes } = measure(model, {
    walls: [
      { id: 'through', at_mm: [50, 0, 0], into: [1, 0, 0] },
      { id: 'leaning', at_mm: [-500, 0, 0], into: [1, 0, 0.3] },
    ],
    doors: [{ id: 'gone', parts: ['hatch'], hinge: { at_mm: [0, 0, 0], axis: [0, 0, 1] } }],
  });
  const [wall] = found.places.filter((p) => p.kind === 'wall');
  expect(wall.distance_mm).toBeCloseTo(-50, 6);
  expect(wall.caveats).toEqual(['The machine reaches through the wall by 50 mm.']);
  expect(notes.join(' ')).toMatch(/"leaning" is left out, because it does not stand upright/);
  expect(notes.join(' ')).toMatch(/"gone" is left out, because the model has none of its parts/);
});
