import { builtIn, type Pack, pack, withPacks } from '@coveline/catalogue';
import { brief } from '@coveline/project';
import { defaultSettings } from '@coveline/survey';
import { expect, test } from 'vitest';
import { boxModel } from './geometry/box-model.fixture.ts';
import { review } from './review.ts';

const citation = { source: 'house', clause: '1', standing: 'seen' };
const requirement = {
  id: 'house-radius',
  text: 'Inside edges are rounded with 8 mm.',
  element: 'general',
  areas: ['food'],
  hazards: ['biological'],
  evidence: [{ by: 'measure', measure: 'insideCorners', strength: 'decides' }],
  citations: [citation],
  limits: [{ quantity: 'radius', atLeast: 8, unit: 'mm', datum: 'edge', areas: ['food'], citation }],
  remedies: [{ text: 'Bend with a larger radius.', cost: 'low' }],
  specialises: 'gen-radius-food',
};
const house = (change: object): Pack =>
  pack.parse({
    schema: 'coveline.pack/1',
    name: 'House (invented)',
    sources: [{ key: 'house', title: 'House rules', edition: '1', kind: 'guidance', seen: 'own text' }],
    requirements: [{ ...requirement, ...change }],
  });

/** A machine without a corner that the built-in limit would mind. */
function reviewWith(pack: Pack) {
  const { catalogue, notes } = withPacks(builtIn, [pack]);
  expect(notes).toEqual([]);
  return review({
    model: boxModel([{ name: 'plate', low: [0, 0, 700], high: [300, 300, 705] }]),
    survey: {
      settings: defaultSettings,
      notes: [],
      measures: { insideCorners: { sharp_mm: 0, places: [] } },
    },
    brief: brief.parse({}),
    partChanges: { plate: { areaClass: 'food' } },
    catalogue,
    today: '2026-11-25',
  });
}
const statusOf = (pack: Pack) =>
  reviewWith(pack).requirements.find((r) => r.requirement === 'house-radius')!.status;

test('a figure of a pack is not taken as met because the built-in figure is', () => {
  expect(builtIn.requirements.has('gen-radius-food')).toBe(true);
  expect(statusOf(house({}))).toBe('notShown');
  expect(statusOf(house({ specialises: undefined }))).toBe('notShown');
});

test('a demand of a pack that is shown by looking is asked on the round', () => {
  const { round } = reviewWith(house({ evidence: [{ by: 'inspection' }] }));
  const ids = round.stops.flatMap((s) => s.items).map((i) => i.id);
  expect(ids).toContain('house-radius');
});
