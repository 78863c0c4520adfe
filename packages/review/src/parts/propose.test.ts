import { expect, test } from 'vitest';
import { type BoxPart, boxModel } from '../geometry/box-model.fixture.ts';
import { proposeParts, withChanges } from './propose.ts';

const foot: BoxPart = { name: 'foot', low: [900, 900, 0], high: [950, 950, 700] };
const jar: BoxPart = { name: 'jar', low: [-35, -35, 700], high: [35, 35, 800] };

function proposed(...boxes: readonly BoxPart[]) {
  return proposeParts(boxModel([...boxes, foot]));
}

test('what product touches by its name is food area, feet are not', () => {
  const [hopper, leg] = proposed({ name: 'hopper', low: [0, 0, 800], high: [300, 300, 1200] });
  expect(hopper.areaClass).toBe('food');
  expect(hopper.reasons[0]).toBe('Food area: its name says "hopper", which product touches.');
  expect(leg.areaClass).toBe('nonFood');
});

test('a line without product and a handle on a valve are splash area', () => {
  const parts = proposed(
    { name: 'drain pipe', low: [0, 0, 300], high: [30, 30, 600] },
    { name: 'valve lever', low: [0, 0, 800], high: [10, 10, 900] },
  );
  expect(parts.slice(0, 2).map((p) => p.areaClass)).toEqual(['splash', 'splash']);
});

test('what hangs above an open container is food area, and says how high', () => {
  const [, bar] = proposed(jar, { name: 'bar', low: [-500, -10, 950], high: [500, 10, 970] });
  expect(bar.areaClass).toBe('food');
  expect(bar.reasons[0]).toContain('hangs 150 mm above the open mouth of the jar');
});

test('what stands beside the mouth is food area, what stands further off is not', () => {
  const parts = proposed(
    jar,
    { name: 'strip', low: [60, -100, 780], high: [70, 100, 790] },
    { name: 'strip far', low: [160, -100, 780], high: [170, 100, 790] },
  );
  expect(parts.slice(1, 3).map((p) => p.areaClass)).toEqual(['food', 'splash']);
});

test('a jar under its lid has no open mouth, and lids of machines are parts of them', () => {
  const lid: BoxPart = { name: 'lid', low: [-36, -36, 798], high: [36, 36, 805] };
  const [, , bar] = proposed(jar, lid, { name: 'bar', low: [-500, -10, 950], high: [500, 10, 970] });
  expect(bar.areaClass).toBe('splash');
});

test('material comes from the name, else from grey, else it is not known', () => {
  const materials = proposed(
    { name: 'cover 1.4404', low: [0, 0, 800], high: [9, 9, 810] },
    { name: 'strip POM', low: [0, 0, 800], high: [9, 9, 810] },
    { name: 'ring FFKM', low: [0, 0, 800], high: [9, 9, 810] },
    { name: 'cover', low: [0, 0, 800], high: [9, 9, 810], color: [0.6, 0.6, 0.62] },
    { name: 'cover', low: [0, 0, 800], high: [9, 9, 810], color: [0.1, 0.2, 0.9] },
    { name: 'cover', low: [0, 0, 800], high: [9, 9, 810] },
  ).map((p) => p.material);
  expect(materials.slice(0, 6)).toEqual(['1.4404', 'pom', 'ffkm', '1.4301', 'unknown', 'unknown']);
});

test('joint and finish come from the name', () => {
  const [a, b, c] = proposed(
    { name: 'frame welded', low: [0, 0, 800], high: [9, 9, 810] },
    { name: 'plate Ra 0,4', low: [100, 0, 800], high: [109, 9, 810] },
    { name: 'Schraube M8', low: [200, 0, 800], high: [209, 9, 810] },
  );
  expect(a.joint).toBe('welded');
  expect(b.finish_Ra_um).toBe(0.4);
  expect(c.joint).toBe('bolted');
});

test('every proposal has four reasons that are sentences', () => {
  for (const part of proposed(jar, foot)) {
    expect(part.reasons).toHaveLength(4);
    for (const reason of part.reasons) expect(reason).toMatch(/^[A-Z].*\.$/);
    expect(part.setByUser).toEqual([]);
  }
});

test('what a person sets goes before the proposal and is marked', () => {
  const [set, left] = withChanges(proposed(jar), { jar: { areaClass: 'nonFood', finish_Ra_um: null } });
  expect(set).toMatchObject({ areaClass: 'nonFood', setByUser: ['areaClass', 'finish_Ra_um'] });
  expect(left.setByUser).toEqual([]);
});
