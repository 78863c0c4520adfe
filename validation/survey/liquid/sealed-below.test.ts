/** Seams, slits and holes narrower than a given width counted as closed: the tray that they drain then holds h l w. */
import { loadManifoldUnion, survey } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { box, tray } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { about, type Body, modelOf, movedModel, placed } from '../../shapes/mesh.ts';
import { difference, union } from '../../shapes/solid.ts';

const [length, width, height] = [200, 100, 30];
const full_mL = (length * width * height) / 1000;
const walls = difference(tray(length, width, height, 2), box([-5, -5, -5], [205, 105, 0]));

const cases: Record<string, (gap: number) => readonly Body[]> = {
  'a seam under the walls': (gap) => [
    { id: 'floor', mesh: box([-2, -2, -2], [202, 102, 0]) },
    { id: 'walls', mesh: difference(walls, box([-5, -5, -5], [205, 105, gap])) },
  ],
  'a seam beside a wall': (gap) => [
    { id: 'tray', mesh: difference(tray(length, width, height, 2), box([199.9, -5, -5], [210, 105, 50])) },
    { id: 'gate', mesh: box([199.9 + gap, -2, -2], [202, 102, height]) },
  ],
  'a slit in one part': (gap) => [
    {
      id: 'tray',
      mesh: difference(tray(length, width, height, 2), box([80, -5, 0.5], [80 + gap, 5, height + 1])),
    },
  ],
  'a hole in one part': (gap) => [
    {
      id: 'tray',
      mesh: difference(
        tray(length, width, height, 2),
        cylinder(gap / 2, 10, 24, placed({ move: [70, 40, -5] })),
      ),
    },
  ],
};

describe.each(Object.entries(cases))('%s', (name, bodies) => {
  const measured = async (gap: number, sealedBelow_mm: number, turn: number, exact: boolean) => {
    const far = { id: 'far', mesh: box([600, 600, 0], [601, 601, 1]) };
    const { result } = await survey(movedModel(modelOf([...bodies(gap), far]), about(2, turn)), {
      measures: ['standingLiquid'],
      settings: { sealedBelow_mm, pitch_mm: 1 },
      ...(exact && { exact: loadManifoldUnion }),
    });
    return { ...result.measures.standingLiquid, notes: result.notes };
  };

  test.each([0, 37])('closed, it holds what a whole tray holds, turned %s', async (turn) => {
    for (const exact of [false, true]) {
      const { total_mL = 0, places = [], notes } = await measured(0.4, 0.5, turn, exact);
      expect(Math.abs(total_mL / full_mL - 1)).toBeLessThan(0.01);
      expect(places).toHaveLength(1);
      expect(notes.join()).toContain('below 0.5 mm count as closed');
    }
  });

  test('what stands with open seams is told beside it', async () => {
    const { total_mL = 0, unsealed_mL = Number.NaN, places = [] } = await measured(0.4, 0.5, 37, true);
    expect(total_mL).toBeGreaterThan(0.99 * full_mL);
    expect(unsealed_mL).toBeLessThan(0.03 * full_mL);
    expect(places[0].unsealed_mL).toBeCloseTo(unsealed_mL, 9);
  });

  test('wider than what is closed, it drains all the same', async () => {
    // A hole must be wider than the columns are apart: within one part, only they can close what is narrow.
    const { total_mL = Number.NaN } = await measured(name === 'a hole in one part' ? 3 : 0.8, 0.5, 37, true);
    expect(total_mL).toBeLessThan(0.03 * full_mL);
  });
});

test('a tray without seams is not changed by the closing', async () => {
  const model = modelOf([
    {
      id: 'tray',
      mesh: union(tray(60, 40, 10, 2), box([20, 15, -1], [30, 25, 5])),
      placement: placed({ tiltY: 2, turn: 20 }),
    },
  ]);
  const total = async (sealedBelow_mm: number) =>
    (await survey(model, { measures: ['standingLiquid'], settings: { sealedBelow_mm } })).result.measures
      .standingLiquid?.total_mL ?? 0;
  expect(Math.abs((await total(0.5)) / (await total(0)) - 1)).toBeLessThan(0.002);
});
