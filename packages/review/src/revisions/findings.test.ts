import { brief, type Decision } from '@coveline/project';
import { defaultSettings, type Pool } from '@coveline/survey';
import { expect, test } from 'vitest';
import { type BoxPart, boxModel } from '../geometry/box-model.fixture.ts';
import { review } from '../review.ts';
import { compareReviews, type Reviewed } from './findings.ts';
import { identify } from './identity.ts';

const plate: BoxPart = { name: 'plate', low: [0, 0, 700], high: [300, 300, 705] };
const shelf: BoxPart = { name: 'shelf', low: [400, 0, 700], high: [700, 300, 705] };
const frame: BoxPart = { name: 'frame', low: [0, 400, 0], high: [700, 440, 900] };
const at = (part: BoxPart): readonly [number, number, number] => [
  part.low[0] + 100,
  part.low[1] + 100,
  part.high[2],
];
const pool = (id: string, part: BoxPart, volume_mL: number): Pool => ({
  id,
  parts: [part.name],
  at_mm: at(part),
  bounds_mm: [at(part), at(part)],
  volume_mL,
  depth_mm: 2,
  area_cm2: 40,
  deepest_mm: at(part),
  spill_mm: at(part),
});
const reviewed = (
  boxes: readonly BoxPart[],
  places: readonly Pool[],
  decisions: Readonly<Record<string, Decision>> = {},
): Reviewed => {
  const model = boxModel(boxes);
  const total_mL = places.reduce((sum, p) => sum + p.volume_mL, 0);
  const survey = { settings: defaultSettings, notes: [], measures: { standingLiquid: { total_mL, places } } };
  const partChanges = Object.fromEntries(boxes.map((b) => [b.name, { areaClass: 'food' as const }]));
  const result = review({ model, survey, brief: brief.parse({}), partChanges, today: '2026-11-25' });
  return { model, survey, result, decisions };
};
const told = (b: Reviewed, a: Reviewed) =>
  compareReviews(b, a, '2026-11-25').findings.map((c) => [c.change, c.before?.places[0], c.after?.places[0]]);

test('findings are mended, new, better, worse or unchanged', () => {
  const old = reviewed([plate, shelf], [pool('a', plate, 10), pool('b', shelf, 10)]);
  expect(told(old, reviewed([plate, shelf], [pool('a', plate, 10), pool('b', shelf, 10)]))).toEqual([
    ['unchanged', 'a', 'a'],
    ['unchanged', 'b', 'b'],
  ]);
  expect(told(old, reviewed([plate, shelf], [pool('a2', plate, 4)]))).toEqual([
    ['better', 'a', 'a2'],
    ['mended', 'b', undefined],
  ]);
  expect(told(reviewed([plate, shelf], [pool('a', plate, 4)]), old).map(([change]) => change)).toEqual([
    'worse',
    'new',
  ]);
});

const concession = (until: string): Decision => ({
  kind: 'concession',
  reason: 'The guide needs it.',
  because: 'function',
  controlMeasures: [{ what: 'Wipe it.', interval: '', owner: '' }],
  grantedBy: 'R. Example',
  until,
});

test('a decision is carried over where nothing got worse, and reopened where it did or has ended', () => {
  const bare = reviewed([plate], [pool('a', plate, 10)]);
  const decided = (d: Decision) => ({ ...bare, decisions: { [bare.result.findings[0].id]: d } });
  const carried = (before: Reviewed, mL: number) =>
    compareReviews(before, reviewed([plate], [pool('z', plate, mL)]), '2026-11-25').findings[0].carried;
  expect(carried(decided(concession('2027-01-01')), 10)).toMatchObject({ stands: true });
  expect(carried(decided(concession('2027-01-01')), 14)).toMatchObject({
    stands: false,
    because: 'It got worse since it was decided.',
  });
  expect(carried(decided(concession('2026-01-01')), 10)).toMatchObject({
    stands: false,
    because: 'The concession ended on 2026-01-01.',
  });
  expect(carried(decided({ kind: 'change', note: '', option: '' }), 10)).toMatchObject({ stands: false });
});

test('a renamed, a moved and a split part are known again', () => {
  const renamed = { ...plate, name: 'guide plate' };
  expect(
    told(reviewed([plate], [pool('a', plate, 10)]), reviewed([renamed], [pool('n', renamed, 10)])),
  ).toEqual([['unchanged', 'a', 'n']]);
  const moved = { ...plate, low: [0, 0, 900], high: [300, 300, 905] } as const;
  const both = compareReviews(
    reviewed([plate, shelf, frame], [pool('a', plate, 10)]),
    reviewed([moved, shelf, frame], [pool('m', moved, 10)]),
    '2026-11-25',
  );
  expect(both.places.map((p) => p.change)).toEqual(['moved']);
  expect(both.findings.map((c) => c.change)).toEqual(['unchanged']);
  const halves: readonly BoxPart[] = [
    { name: 'left half', low: [0, 0, 700], high: [150, 300, 705] },
    { name: 'right half', low: [150, 0, 700], high: [300, 300, 705] },
  ];
  expect(identify(boxModel([plate, shelf]), boxModel([...halves, shelf])).split).toEqual([
    ['plate', ['left half', 'right half']],
  ]);
  expect(
    told(reviewed([plate], [pool('a', plate, 10)]), reviewed(halves, [pool('l', halves[0], 10)])),
  ).toEqual([['unchanged', 'a', 'l']]);
});

test('totals stand side by side', () => {
  const { totals } = compareReviews(
    reviewed([plate], [pool('a', plate, 10)]),
    reviewed([plate], []),
    '2026-11-25',
  );
  expect(totals.find((t) => t.label === 'Standing liquid')).toMatchObject({
    before: 10,
    after: 0,
    unit: 'mL',
  });
  expect(totals.find((t) => t.label === 'Flat faces up')).toMatchObject({ before: null, after: null });
});
