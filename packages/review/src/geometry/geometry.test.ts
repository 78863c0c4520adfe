import type { Vec3 } from '@coveline/model';
import { expect, test } from 'vitest';
import { boxModel } from './box-model.fixture.ts';
import { extentsOf, overlap } from './extent.ts';
import { floorClearance } from './floor.ts';
import { hangingOver, mouthOf } from './mouth.ts';

const jar = { name: 'jar', low: [-34, -34, 0] as Vec3, high: [34, 34, 100] as Vec3 };

/** Part of a circle that a strip of half width h through its middle covers: (2/pi)(asin x + x sqrt(1 - x2)), x = h/r. */
const strip = (x: number) => (2 / Math.PI) * (Math.asin(x) + x * Math.sqrt(1 - x * x));

test.each([5, 10, 20, 30])(
  'a bar of half width %i mm hides the share of the closed form within 1 percent of the mouth',
  (h) => {
    for (const turned of [false, true]) {
      const [x, y] = turned ? [h, 300] : [300, h];
      const model = boxModel([jar, { name: 'bar', low: [-x, -y, 250], high: [x, y, 280] }]);
      const extents = extentsOf(model);
      const [hit] = hangingOver(model, extents, mouthOf(model, 0), 1000, () => false);
      expect(hit.share).toBeCloseTo(strip(h / 34), 2);
      expect(hit.height_mm).toBe(150);
    }
  },
);

test('only what stands above the mouth, within reach, is told, lowest first', () => {
  const model = boxModel([
    jar,
    { name: 'beside', low: [40, -10, 200], high: [90, 10, 210] },
    { name: 'below', low: [-10, -10, -50], high: [10, 10, -20] },
    { name: 'far', low: [-10, -10, 5000], high: [10, 10, 5010] },
    { name: 'high', low: [-10, -10, 400], high: [10, 10, 410] },
    { name: 'near', low: [-10, -10, 200], high: [10, 10, 210] },
  ]);
  const extents = extentsOf(model);
  const found = hangingOver(model, extents, mouthOf(model, 0), 1000, () => false);
  expect(found.map((h) => model.parts[h.part].name)).toEqual(['near', 'high']);
});

test('clearance leaves out what stands on the floor and what carries', () => {
  const model = boxModel([
    { name: 'foot', low: [0, 0, 0], high: [40, 40, 80] },
    { name: 'foot plate', low: [0, 0, 30], high: [40, 40, 40] },
    { name: 'drip pan', low: [0, 0, 95], high: [600, 400, 120] },
    { name: 'frame', low: [0, 0, 120], high: [1400, 900, 600] },
  ]);
  const room = floorClearance(extentsOf(model), (p) => p === 1);
  expect(room).toEqual({ floor_mm: 0, lowest: 2, clearance_mm: 95, depth_mm: 450 });
  expect(floorClearance([], () => false)).toBeNull();
});

test('boxes that touch overlap, boxes apart do not', () => {
  const a = { low: [0, 0, 0] as Vec3, high: [1, 1, 1] as Vec3 };
  expect(overlap(a, { low: [1, 0, 0], high: [2, 1, 1] })).toBe(true);
  expect(overlap(a, { low: [1.5, 0, 0], high: [2, 1, 1] })).toBe(false);
  expect(overlap(a, { low: [1.5, 0, 0], high: [2, 1, 1] }, 1)).toBe(true);
});
