import { demandsInForce } from '@coveline/catalogue';
import { brief } from '@coveline/project';
import { defaultSettings, type Pool, type SurveyResult } from '@coveline/survey';
import { expect, test } from 'vitest';
import { type BoxPart, boxModel } from './geometry/box-model.fixture.ts';
import type { ReviewRequest } from './request.ts';
import { review } from './review.ts';

const boxes: readonly BoxPart[] = [
  { name: 'plate', low: [0, 0, 700], high: [300, 300, 705] },
  { name: 'cover', low: [400, 0, 700], high: [700, 300, 705] },
  { name: 'foot', low: [0, 0, 0], high: [40, 40, 700] },
];
const pool = (id: string, part: string, volume_mL: number): Pool => ({
  id,
  parts: [part],
  at_mm: [100, 100, 705],
  bounds_mm: [
    [50, 50, 705],
    [150, 150, 707],
  ],
  volume_mL,
  depth_mm: 2,
  area_cm2: 40,
  deepest_mm: [100, 100, 705],
  spill_mm: [0, 0, 707],
});
const surveyed = (...places: readonly Pool[]): SurveyResult => ({
  settings: defaultSettings,
  notes: [],
  measures: { standingLiquid: { total_mL: 0, places } },
});
const request = (over: Partial<ReviewRequest> = {}): ReviewRequest => ({
  model: boxModel(boxes),
  survey: surveyed(pool('p1', 'plate', 8), pool('p2', 'cover', 20)),
  brief: brief.parse({}),
  partChanges: {},
  today: '2026-11-25',
  ...over,
});

test('the graver area goes first, then the larger pool', () => {
  const order = (over: Partial<ReviewRequest>) =>
    review(request(over)).findings.map((f) => f.places[0] ?? f.requirement);
  expect(order({})).toEqual(['p2', 'p1']);
  expect(order({ partChanges: { plate: { areaClass: 'food' } } })).toEqual(['p1', 'p2']);
});

test('care decides how grave the same pool is', () => {
  const rank = (careLevel: 'basic' | 'raised' | 'high', areaClass: 'food' | 'splash') =>
    review(
      request({
        brief: brief.parse({ careLevel }),
        partChanges: { plate: { areaClass } },
        survey: surveyed(pool('p', 'plate', 8)),
      }),
    ).findings[0].consequence.rank;
  expect([rank('high', 'food'), rank('raised', 'food'), rank('basic', 'food')]).toEqual([1, 1, 2]);
  expect([rank('high', 'splash'), rank('raised', 'splash'), rank('basic', 'splash')]).toEqual([2, 3, 3]);
});

test('every demand in force has one line, and lines name findings that exist', () => {
  const result = review(request());
  const demands = demandsInForce({ profile: 'eu', careLevel: 'raised', on: '2026-11-25' });
  expect(result.requirements.map((r) => r.requirement)).toEqual(demands.map((d) => d.id));
  const ids = new Set(result.findings.map((f) => f.id));
  for (const line of result.requirements) for (const id of line.findings) expect(ids).toContain(id);
  const told = new Set(result.requirements.flatMap((r) => r.findings));
  expect([...ids].every((id) => told.has(id))).toBe(true);
});

test('a measure that was not computed leaves its requirements open and says so', () => {
  const result = review(request());
  expect(result.notes).toContain('The survey has not computed "insideCorners", so nothing is said about it.');
  const line = result.requirements.find((r) => r.requirement === 'gen-radius-food')!;
  expect(line).toMatchObject({
    status: 'notShown',
    basis: 'To be shown: by the measure of inside corners, not measured',
  });
});

test('the law in force on the day is cited', () => {
  const sources = (today: string) =>
    review(request({ today })).findings[0].demand.citations.map((c) => c.source);
  expect(sources('2027-01-19')).toContain('EU-MD');
  expect(sources('2027-01-20')).toContain('EU-MR');
  expect(sources('2027-01-20')).not.toContain('EU-MD');
});

test('what was set on a part that this model lacks is left aside and told', () => {
  const { notes } = review(request({ partChanges: { gone: { areaClass: 'food' } } }));
  expect(notes).toContain(
    'What was set on 1 parts is left aside, because this model does not have them: gone.',
  );
});

test('an unknown profile is refused with the list of those that exist', () => {
  expect(() => review(request({ brief: brief.parse({ profile: 'x' }) }))).toThrow(
    'The catalogue has no profile "x"',
  );
});

test('the accepted pool of the brief decides, and stands in the limit', () => {
  const result = review(request({ brief: brief.parse({ acceptedPool_mL: 10 }) }));
  expect(result.findings.map((f) => f.places)).toEqual([['p2']]);
  expect(result.findings[0].demand.limit).toContain('at most 10 mL');
});

test('findings keep their ids whatever the order of parts and places', () => {
  const turned = request({
    model: boxModel([...boxes].reverse()),
    survey: surveyed(pool('p2', 'cover', 20), pool('p1', 'plate', 8)),
  });
  const ids = (r: ReviewRequest) => review(r).findings.map((f) => f.id);
  expect(ids(turned)).toEqual(ids(request()));
});

test('an empty model is reviewed without a finding', () => {
  const result = review(request({ model: boxModel([]), survey: surveyed() }));
  expect(result.findings).toEqual([]);
  expect(result.parts).toEqual([]);
});
