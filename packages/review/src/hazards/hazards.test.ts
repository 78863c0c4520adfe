import { sourceByKey } from '@coveline/catalogue';
import { brief } from '@coveline/project';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { asksForLess, hazardsOf } from './hazards.ts';
import { hazardRules } from './rules.ts';

type Given = Record<string, unknown>;
const product = (p: Given) => ({
  name: 'trial',
  ph: 6,
  waterActivity: 0.98,
  storage_degC: 4,
  shelfLife_days: 4,
  heating: 'none',
  eaten: 'asIs',
  ...p,
});
const judged = (p: Given, more: Given = {}) => hazardsOf(brief.parse({ products: [product(p)], ...more }));
const ids = (p: Given, more?: Given) => judged(p, more).hazards.map((h) => h.id);

// Figures: 21 CFR 114.3 (pH 4.6, water activity 0.85); Regulation (EC) 2073/2005, Annex I 1.3 and its notes.
test('the limits of the law decide on either side', () => {
  expect(ids({ ph: 4.6 })).toContain('acid');
  expect(ids({ ph: 4.7 })).not.toContain('acid');
  expect(ids({ ph: 4.7, storage_degC: 20, shelfLife_days: 200 })).toContain('low-acid-ambient');
  expect(ids({ ph: 4.7, storage_degC: 20, waterActivity: 0.85 })).not.toContain('low-acid-ambient');
  expect(ids({ waterActivity: 0.85 })).toEqual(['dry-food']);
});

test.each([
  [{ ph: 4.4, shelfLife_days: 30 }, false],
  [{ ph: 4.5, shelfLife_days: 30 }, true],
  [{ waterActivity: 0.92, shelfLife_days: 30 }, false],
  [{ waterActivity: 0.93, shelfLife_days: 30 }, true],
  [{ ph: 5, waterActivity: 0.94, shelfLife_days: 30 }, false],
  [{ ph: 5.1, waterActivity: 0.94, shelfLife_days: 30 }, true],
  [{ shelfLife_days: 4.9 }, false],
  [{ shelfLife_days: 5 }, true],
])('growth of Listeria with %j: %s', (p, grows) => {
  expect(ids(p).includes('listeria-growth')).toBe(grows);
  expect(ids(p).includes('listeria-no-growth')).toBe(!grows);
});

test('people who fall ill easily raise the level by one, and never beyond the highest', () => {
  const given = { ph: 4, shelfLife_days: 10, storage_degC: 4 };
  expect(judged(given).careLevel).toBe('raised');
  const patients = judged(given, { consumers: 'vulnerable' });
  expect(patients.careLevel).toBe('high');
  expect(patients.reasons.at(-1)).toContain('one level more');
  const worst = judged({ storage_degC: 20, shelfLife_days: 300 }, { consumers: 'vulnerable' });
  expect(worst.level).toBe(4);
});

test('the worst product decides, and an allergen counts where another product is without it', () => {
  const two = hazardsOf(
    brief.parse({
      products: [
        product({ name: 'jam', ph: 3 }),
        product({ name: 'porridge', shelfLife_days: 9, allergens: ['Milk'] }),
      ],
    }),
  );
  expect(two.hazards[0]).toMatchObject({ id: 'listeria-growth', products: ['porridge'] });
  expect(two.hazards.find((h) => h.kind === 'allergen')).toMatchObject({ id: 'allergen-milk', level: 2 });
  expect(judged({ allergens: ['milk'] }).hazards.every((h) => h.kind !== 'allergen')).toBe(true);
});

test('what is not known is taken at its worst, and said', () => {
  const { level, assumptions } = hazardsOf(brief.parse({ products: [{ name: 'soup' }] }));
  expect(level).toBe(4);
  expect(assumptions[0]).toMatch(/^Not known of soup: its pH, taken as 7; .*not\.$/);
  expect(hazardsOf(brief.parse({})).reasons).toEqual(['No product is named, so no hazard is known.']);
});

test('a brief that asks for less is noticed', () => {
  const b = brief.parse({ products: [product({ shelfLife_days: 9 })], careLevel: 'basic' });
  expect(asksForLess(b, hazardsOf(b))).toBe(true);
  expect(asksForLess({ ...b, careLevel: 'high' }, hazardsOf(b))).toBe(false);
});

test('knowing more never raises the level above what was assumed', () => {
  fc.assert(
    fc.property(
      fc.record({
        ph: fc.double({ min: 3, max: 7, noNaN: true }),
        waterActivity: fc.double({ min: 0.6, max: 0.99, noNaN: true }),
        storage_degC: fc.double({ min: -20, max: 20, noNaN: true }),
        shelfLife_days: fc.double({ min: 0, max: 365, noNaN: true }),
      }),
      (p) => {
        const known = hazardsOf(brief.parse({ products: [{ name: 'x', ...p }] })).level;
        const unknown = hazardsOf(brief.parse({ products: [{ name: 'x' }] })).level;
        expect(known).toBeLessThanOrEqual(unknown);
      },
    ),
  );
});

test('every rule can hold, cites a source of the catalogue and is a sentence', () => {
  for (const r of hazardRules) {
    expect(sourceByKey.has(r.citation.source), r.id).toBe(true);
    expect(r.text).toMatch(/^[A-Z].*\.$/);
  }
  expect(new Set(hazardRules.map((r) => r.id)).size).toBe(hazardRules.length);
});
