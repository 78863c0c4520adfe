import { type Answer, brief } from '@coveline/project';
import { defaultSettings } from '@coveline/survey';
import { expect, test } from 'vitest';
import { boxModel } from '../geometry/box-model.fixture.ts';
import { review } from '../review.ts';

const found = (state: Answer['state'], more: Partial<Answer> = {}): Answer => ({
  state,
  words: '',
  reading: '',
  by: 'R. Example',
  on: '2026-11-25',
  photographs: [],
  ...more,
});

const judged = (answers: Record<string, Answer>) =>
  review({
    model: boxModel([
      { name: 'hopper', low: [0, 0, 900], high: [300, 300, 1200] },
      { name: 'motor', low: [0, 0, 300], high: [200, 200, 500] },
      { name: 'foot', low: [0, 0, 0], high: [40, 40, 200] },
    ]),
    survey: { settings: defaultSettings, notes: [], measures: {} },
    brief: brief.parse({}),
    partChanges: {},
    answers,
    today: '2026-11-25',
  });
const line = (result: ReturnType<typeof judged>, id: string) =>
  result.requirements.find((r) => r.requirement === id)!;

test('the round goes up the machine, then to what has no place, and leaves out what is not there', () => {
  const stops = judged({}).round.stops.map((s) => s.about);
  expect(stops.slice(0, 3)).toEqual(['feet', 'drive', 'hopper']);
  expect(stops).not.toContain('belt');
  expect(stops.slice(-5)).toEqual(['use', 'people', 'chemistry', 'proof', 'change']);
});

test('every requirement that looking, measuring or papers can show stands on the round exactly once or in a question', () => {
  const { round } = judged({});
  const items = round.stops.flatMap((s) => s.items);
  expect(new Set(items.map((i) => i.id)).size).toBe(items.length);
  expect(round).toMatchObject({ items: items.length, answered: 0 });
  expect(items.map((i) => i.id)).toContain('gen-no-coat');
  // The question on levelling asks for it already.
  expect(items.map((i) => i.id)).not.toContain('feet-level');
});

test('not looked at is no evidence, a good answer is, and says who and when', () => {
  expect(line(judged({}), 'feet-level').status).toBe('notShown');
  const good = judged({ 'feet-level-kept': found('asItShould', { reading: '0.2 deg' }) });
  expect(line(good, 'feet-level')).toMatchObject({
    status: 'met',
    basis: 'On the round: as it should be (R. Example, 2026-11-25): 0.2 deg',
  });
  expect(good.round.answered).toBe(1);
});

test('what is not as it should be becomes a finding at the parts of the element', () => {
  const result = judged({ 'hopper-seen': found('notAsItShould', { words: 'dark, nobody sees the floor' }) });
  expect(result.findings).toHaveLength(1);
  expect(result.findings[0]).toMatchObject({
    requirement: 'gen-visible',
    measure: null,
    status: 'notMet',
    parts: ['hopper'],
    title: 'Hoppers: dark, nobody sees the floor',
  });
  expect(line(result, 'gen-visible')).toMatchObject({ status: 'notMet', findings: [result.findings[0].id] });
});

test('what several questions ask about is shown only when all of them were answered', () => {
  const one = judged({ 'drive-refilled': found('asItShould') });
  expect(line(one, 'drive-leakpath').status).toBe('met');
  const wet = judged({ 'use-run-time': found('asItShould') });
  // "Does the machine dry" is asked for belts as well, but this machine has none.
  expect(line(wet, 'gen-water-film').status).toBe('met');
});

test('a matter without parts is placed on the whole machine', () => {
  const result = judged({ 'use-allergens': found('notAsItShould', { words: 'no matrix' }) });
  expect(result.findings[0]).toMatchObject({ requirement: 'doc-allergen', parts: [] });
  expect(result.findings[0].bounds_mm).toEqual([
    [0, 0, 0],
    [300, 300, 1200],
  ]);
});

test('what is not on this machine is told as such', () => {
  const result = judged({ 'gen-adhesive': found('notHere') });
  expect(line(result, 'gen-adhesive')).toMatchObject({
    status: 'noSuchElement',
    basis: 'On the round: not on this machine (R. Example, 2026-11-25)',
  });
});
