/** Air that several parts seal off together: what faces it is no flat face, no inside corner and no joint line. */
import { survey } from '@coveline/survey';
import { expect, test } from 'vitest';
import { assemble, motion } from '../shapes/assemble.ts';
import { box } from '../shapes/box.ts';
import { movedModel } from '../shapes/mesh.ts';
import { difference } from '../shapes/solid.ts';

const tube = difference(box([0, 0, 0], [400, 50, 50]), box([-1, 3, 3], [401, 47, 47]));
const capped = { tube, left: box([-4, 0, 0], [0, 50, 50]), right: box([400, 0, 0], [404, 50, 50]) };

test.each([0, 31])('a square tube with two end plates, turned by %s degrees', async (turn) => {
  const model = movedModel(assemble(capped), motion([5, 6, 7], [0, 0, 1], turn));
  const { measures } = (await survey(model)).result;
  expect(measures.hollows?.closed.length).toBe(1);
  // The tube's top, and not the 176 cm2 of its inner floor; the end plates are below the least area, 4 mm wide.
  expect(measures.flatFaces?.up_cm2).toBeCloseTo(200 + 2 * 2, 3);
  expect(measures.insideCorners?.places).toEqual([]);
  const joints = measures.narrowGaps?.joints ?? [];
  expect(joints.length).toBe(2);
  for (const j of joints) {
    // Around the outside only.
    expect(Math.abs(j.length_mm / 200 - 1)).toBeLessThan(0.01);
    expect(Math.abs(j.area_cm2 / ((50 * 50 - 44 * 44) / 100) - 1)).toBeLessThan(0.02);
  }
});

test('the same tube left open counts its inside', async () => {
  const { measures } = (await survey(assemble({ tube }))).result;
  expect(measures.flatFaces?.up_cm2).toBeCloseTo(200 + 176, 3);
  expect(measures.insideCorners?.sharp_mm).toBeCloseTo(4 * 400, 3);
});

test('a tilted machine seals the same air', async () => {
  const { measures } = (await survey(assemble(capped), { tilt: { axis: 'y', deg: 1.5 } })).result;
  expect(measures.insideCorners?.places).toEqual([]);
  expect(measures.narrowGaps?.joints.length).toBe(2);
});
