import { brief, cleaningStep, type SurfaceGroup } from '@coveline/project';
import { defaultSettings } from '@coveline/survey';
import { expect, test } from 'vitest';
import { boxModel } from '../geometry/box-model.fixture.ts';
import type { ReviewRequest } from '../request.ts';
import { review } from '../review.ts';

const judged = (over: Partial<ReviewRequest> = {}) =>
  review({
    model: boxModel([
      { name: 'valve seat seal', low: [0, 0, 900], high: [30, 30, 905] },
      { name: 'product pipe', low: [0, 0, 700], high: [30, 300, 730] },
      { name: 'motor', low: [0, 0, 300], high: [200, 200, 500] },
      { name: 'cover', low: [0, 400, 300], high: [900, 900, 310] },
    ]),
    survey: { settings: defaultSettings, notes: [], measures: {} },
    brief: brief.parse({ cleaning: { ways: ['inPlace', 'foamAndRinse', 'byHand'], interval_h: 12 } }),
    partChanges: {
      'valve seat seal': { material: 'fkm', areaClass: 'food' },
      'product pipe': { areaClass: 'food', material: '1.4404' },
    },
    today: '2026-11-25',
    ...over,
  });

const group = (
  steps: readonly Record<string, unknown>[],
  parts: readonly string[],
): Omit<SurfaceGroup, 'id'> => ({
  name: 'Seat',
  way: 'inPlace',
  soil: 'fruit',
  parts: [...parts],
  steps: steps.map((s) => cleaningStep.parse({ action: 'flow', ...s })),
  reasons: [],
});

test('parts are put into groups by what they are, with reasons', () => {
  const { groups, uncleaned } = judged().cleaning;
  const of = (id: string) => groups.find((g) => g.group.id === id)!.group;
  expect(of('line').parts).toContain('product pipe');
  expect(of('wiped').parts).toEqual(['motor']);
  expect(of('open').parts).toContain('cover');
  for (const g of groups) {
    expect(g.proposed).toBe(true);
    expect(g.breaches).toEqual([]);
    expect(g.group.reasons.length).toBeGreaterThan(0);
  }
  expect(uncleaned).toEqual([]);
});

// Check values M-12-02 and 20 min twice a day: 40 min a day are 243.3 h a year.
test('a standard FKM seat in hot caustic is a finding with its hours a year, and EPDM is none', () => {
  const hot = group(
    [{ kind: 'detergent', medium: 'naoh', concentration_pct: 2, temperature_degC: 80, time_min: 20 }],
    ['valve seat seal'],
  );
  const withFkm = judged({ groups: { seat: hot } });
  const finding = withFkm.findings.find((f) => f.requirement === 'joint-seal-mat')!;
  expect(finding).toMatchObject({ parts: ['valve seat seal'], status: 'notShown', measure: null });
  expect(finding.title).toMatch(/^FKM.* does not stand caustic soda solution: 1 part cleaned with it$/);
  expect(finding.numbers[0].value).toBeCloseTo(243.33, 1);
  const epdm = judged({
    groups: { seat: hot },
    partChanges: { 'valve seat seal': { material: 'epdm', areaClass: 'food' } },
  });
  expect(epdm.findings.filter((f) => f.requirement === 'joint-seal-mat')).toEqual([]);
});

test('what nobody knows is unknown, never fine', () => {
  const { cleaning } = judged({
    groups: {
      seat: group(
        [{ kind: 'detergent', medium: 'naoh', concentration_pct: 1, temperature_degC: 60, time_min: 10 }],
        ['cover'],
      ),
    },
    partChanges: { cover: { material: 'unknown' } },
  });
  const [verdict] = cleaning.groups.find((g) => g.group.id === 'seat')!.materials;
  expect(verdict).toMatchObject({ verdict: 'unknown', text: 'Nobody has said what it is made of.' });
});

test('a part that people put into a group leaves the proposed one', () => {
  const { groups } = judged({ groups: { seat: group([], ['cover']) } }).cleaning;
  expect(groups.filter((g) => g.group.parts.includes('cover')).map((g) => g.group.id)).toEqual(['seat']);
});

// By hand: 10 min of hose at 12 L/min are 120 L; 38 K above 12 °C make 120 · 38 · 4.186 / 3600 / 0.85 = 6.238 kWh; 730 runs a year.
test('water and heat are summed as by hand, and what is not said is not counted', () => {
  const rinse = { kind: 'rinse', medium: 'hotWater', action: 'spray', temperature_degC: 50, time_min: 10 };
  const all = ['valve seat seal', 'product pipe', 'motor', 'cover'];
  const { resources } = judged({
    groups: { seat: { ...group([rinse, { ...rinse, action: 'flow' }], all), way: 'foamAndRinse' } },
  }).cleaning;
  const value = (label: string) => resources!.numbers.find((n) => n.label === label)!.value;
  expect(value('Water of a run')).toBe(120);
  expect(value('Heat of a run')).toBeCloseTo(6.238, 3);
  expect(value('Water a year')).toBeCloseTo(0.12 * 730, 6);
  expect(resources!.open).toEqual(['Seat, rinse: how much it takes is not said.']);
});
