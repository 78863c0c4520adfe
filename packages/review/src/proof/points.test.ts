import { samplingLimitById, samplingLimits, samplingMethodById, sourceByKey } from '@coveline/catalogue';
import { brief } from '@coveline/project';
import { defaultSettings, type Pool } from '@coveline/survey';
import { expect, test } from 'vitest';
import { boxModel } from '../geometry/box-model.fixture.ts';
import { review } from '../review.ts';
import { limitOfTest, verdictOn } from './points.ts';

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
const judged = (areaClass: 'food' | 'splash' | 'nonFood', allergens: readonly string[] = []) =>
  review({
    model: boxModel([{ name: 'plate', low: [0, 0, 700], high: [300, 300, 705] }]),
    survey: {
      settings: defaultSettings,
      notes: [],
      measures: {
        standingLiquid: {
          total_mL: 0,
          places: [pool('a', 'plate', 8), pool('b', 'plate', 9), pool('c', 'plate', 10)],
        },
      },
    },
    brief: brief.parse({
      products: [
        { name: 'salad', ph: 6, waterActivity: 0.98, storage_degC: 4, shelfLife_days: 9, allergens },
        { name: 'plain salad', ph: 6, waterActivity: 0.98, storage_degC: 4, shelfLife_days: 9 },
      ],
    }),
    partChanges: { plate: { areaClass } },
    today: '2026-11-25',
  }).proof;

test('points come from findings, hardest first, and not more than two on a part', () => {
  const { points } = judged('food');
  expect(points).toHaveLength(2);
  for (const p of points) {
    expect(p.reason.length).toBeGreaterThan(20);
    expect(p.at_mm).toEqual([100, 100, 705]);
    for (const t of p.tests) {
      expect(samplingMethodById.has(t.method)).toBe(true);
      expect(limitOfTest(t).methods).toContain(t.method);
    }
  }
});

test('hazards of the brief choose what is looked for', () => {
  const of = (p: ReturnType<typeof judged>) => p.points[0].tests.map((t) => t.of);
  expect(of(judged('food'))).toEqual(['visual', 'aerobic', 'listeria']);
  expect(of(judged('food', ['milk']))).toContain('allergen');
  expect(of(judged('splash'))).toContain('enterobacteriaceae');
  expect(judged('nonFood').points).toEqual([]);
});

// Zero-failure plan: ln 0.05 / ln 0.9 = 28.4, so 29 (binomial distribution).
test('29 samples without a positive show that fewer than a tenth are positive', () => {
  expect(judged('food').validation?.value).toBe(29);
});

test('a result is judged with its detection limit', () => {
  const limit = samplingLimitById.get('aerobic-research')!;
  expect(verdictOn(limit, 0.9, null).verdict).toBe('pass');
  expect(verdictOn(limit, 1.1, null).verdict).toBe('alert');
  expect(verdictOn(limit, 2.6, null).verdict).toBe('act');
  expect(verdictOn(limit, null, 0.4).verdict).toBe('pass');
  expect(verdictOn(limit, null, 4).verdict).toBe('notShown');
  expect(verdictOn(limit, null, null).verdict).toBe('notShown');
  expect(verdictOn(samplingLimitById.get('listeria-face')!, 1, null).verdict).toBe('act');
});

test('every limit says what it stands on', () => {
  for (const l of samplingLimits) {
    expect(sourceByKey.has(l.citation.source)).toBe(true);
    expect(l.standing.length).toBeGreaterThan(10);
    for (const m of l.methods) expect(samplingMethodById.has(m)).toBe(true);
    if (l.alertAbove !== undefined) expect(l.alertAbove).toBeLessThan(l.actAbove);
  }
});
