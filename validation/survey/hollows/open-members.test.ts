/** Tubes and profiles with an end or a hole that nothing closes. */
import type { Model } from '@coveline/model';
import { type OpenMember, survey } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { box, hollowBox } from '../../shapes/box.ts';
import type { Mesh } from '../../shapes/mesh.ts';
import { difference } from '../../shapes/solid.ts';
import { type Body, modelOfBodies, orientations, rod, tubes } from './drilled.ts';

async function openIn(model: Model): Promise<readonly OpenMember[]> {
  const { result } = await survey(model, { measures: ['hollows'], settings: { pitch_mm: 4 } });
  return result.measures.hollows?.openMembers ?? [];
}

/** A tube along x from 0 to `length`, inside `wide` x `high`, walls of 2 mm, open at both ends. */
function section(length: number, wide: number, high: number): Mesh {
  return difference(
    box([0, -wide / 2 - 2, -high / 2 - 2], [length, wide / 2 + 2, high / 2 + 2]),
    box([-1, -wide / 2, -high / 2], [length + 1, wide / 2, high / 2]),
  );
}
const plain = (id: string, mesh: Mesh): Body => ({ id, mesh, bores: [] });
const plate = (id: string, x: number, wide = 40): Body =>
  plain(id, box([x, -wide, -wide], [x + 5, wide, wide]));

describe.each([
  [300, 16, 16],
  [600, 46, 26],
  [1200, 76, 76],
])('a tube %s mm long, inside %s x %s mm', (length, wide, high) => {
  const tube = plain('tube', section(length, wide, high));

  test('open at both ends: length and mouth as drawn, however it lies', async () => {
    for (const placement of orientations) {
      for (const noise_mm of [0, 0.02]) {
        const found = await openIn(modelOfBodies([tube], { cad: false, noise_mm, placement }));
        expect(found).toHaveLength(1);
        expect(found[0].parts).toEqual(['tube']);
        expect(found[0].through).toBe('end');
        expect(found[0].openEnds).toBe(2);
        expect(Math.abs(found[0].length_mm / length - 1)).toBeLessThan(0.01);
        expect(Math.abs(found[0].mouth_mm / high - 1)).toBeLessThan(0.01);
        // Walls within about a width of an end see out.
        const walls_cm2 = (2 * (wide + high) * length) / 100;
        expect(found[0].inner_cm2).toBeGreaterThan(0.6 * walls_cm2);
        expect(found[0].inner_cm2).toBeLessThan(1.1 * walls_cm2);
      }
    }
  });

  test('closed by a plate at one end', async () => {
    const found = await openIn(modelOfBodies([tube, plate('plate', length, 50)], { cad: false }));
    expect(found).toHaveLength(1);
    expect(found[0].openEnds).toBe(1);
    expect(found[0].at_mm[0]).toBeLessThan(length / 2);
  });

  test('closed at both ends it is a closed hollow', async () => {
    const bodies = [tube, plate('one', length, 50), plate('other', -5, 50)];
    expect(await openIn(modelOfBodies(bodies, { cad: false }))).toEqual([]);
  });
});

test('a round tube, and one whose end another tube carries on', async () => {
  const one = tubes('one', [{ from: [0, 0, 0], direction: [1, 0, 0], length: 400, radius: 20 }], 2);
  const found = await openIn(modelOfBodies([one]));
  expect(found.map(({ mouth_mm }) => mouth_mm)).toEqual([expect.closeTo(40, 0)]);
  const other = tubes('other', [{ from: [400, 0, 0], direction: [1, 0, 0], length: 300, radius: 20 }], 2);
  const both = await openIn(modelOfBodies([one, other]));
  expect(both.map(({ parts, openEnds }) => [parts.join(), openEnds])).toEqual([
    ['one', 1],
    ['other', 1],
  ]);
  expect(both[0].caveats?.join()).toContain('another tube leads on');
  const third = tubes('third', [{ from: [700, 0, 0], direction: [1, 0, 0], length: 300, radius: 20 }], 2);
  const row = await openIn(modelOfBodies([one, other, third]));
  expect(row.map(({ parts }) => parts.join())).toEqual(['one', 'third']);
});

test.each([5, 8.4, 14])('a closed tube that is drilled through its wall with %s mm', async (diameter) => {
  const closed = hollowBox(600, 26, 26, 2);
  const drilled = difference(
    closed,
    rod({ from: [200, 13, 20], direction: [0, 0, 1], length: 20, radius: diameter / 2 }),
  );
  const found = await openIn(modelOfBodies([plain('tube', drilled)], { cad: false }));
  expect(found).toHaveLength(1);
  expect(found[0].through).toBe('hole');
  expect(found[0].openEnds).toBe(0);
  expect(Math.abs(found[0].mouth_mm - diameter)).toBeLessThan(1);
});

test('a solid bar, a channel that is open along its length, and a cup are none', async () => {
  const channel = difference(box([0, -25, -25], [600, 25, 25]), box([-1, -23, -23], [601, 23, 30]));
  const cup = difference(box([0, -25, -25], [120, 25, 25]), box([2, -23, -23], [130, 23, 23]));
  for (const mesh of [box([0, -10, -10], [500, 10, 10]), channel, cup])
    expect(await openIn(modelOfBodies([plain('body', mesh)], { cad: false }))).toEqual([]);
});

test('a plug pushed into each end, tight, closes; one that is too thin does not', async () => {
  const tube = plain('tube', section(400, 26, 26));
  const plug = (id: string, x: number, size: number) =>
    plain(id, box([x, -size / 2, -size / 2], [x + 10, size / 2, size / 2]));
  expect(await openIn(modelOfBodies([tube, plug('a', 2, 26), plug('b', 388, 26)], { cad: false }))).toEqual(
    [],
  );
  const [open] = await openIn(modelOfBodies([tube, plug('a', 2, 26), plug('b', 388, 14)], { cad: false }));
  expect(open.openEnds).toBe(1);
  // Between the plug and the corner of the tube: a ball in the corner of 13 x 13 that touches a corner 6 mm inwards.
  expect(open.mouth_mm).toBeGreaterThan(5.9);
  expect(open.mouth_mm).toBeLessThan(7.2);
});
