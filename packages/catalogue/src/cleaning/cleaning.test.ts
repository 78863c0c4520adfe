import { describe, expect, test } from 'vitest';
import { disinfectionPoints, media, mediumById, orderRules, sourceByKey, templates } from '../index.ts';

const sentence = /^[A-Z0-9].*[.]$/s;
const unique = (list: readonly string[]) => expect(new Set(list).size).toBe(list.length);

test('ids are unique', () => {
  for (const list of [media, orderRules, templates, disinfectionPoints]) unique(list.map((x) => x.id));
});

test('every medium warns, and what burns or poisons carries a pictogram', () => {
  for (const m of media) {
    expect(m.caution, m.id).toMatch(sentence);
    const harmless = ['none', 'water', 'hotWater', 'steam', 'oil'].includes(m.group);
    expect(m.pictograms.length > 0, m.id).toBe(!harmless);
  }
});

test('every rule says why and cites a source', () => {
  for (const r of orderRules) {
    for (const text of [r.text, r.why]) expect(text, r.id).toMatch(sentence);
    expect(sourceByKey.has(r.citation.source), r.id).toBe(true);
  }
  expect(orderRules.some((r) => r.danger)).toBe(true);
});

describe.each(templates.map((t) => [t.id, t] as const))('%s', (_, t) => {
  test('names media that exist, ranges that rise, and says how', () => {
    expect(sourceByKey.has(t.citation.source)).toBe(true);
    for (const s of t.steps) {
      expect(mediumById.has(s.medium), s.medium).toBe(true);
      expect(s.how).toMatch(sentence);
      for (const range of [s.concentration_pct, s.temperature_degC, s.time_min]) {
        if (range) expect(range[0]).toBeLessThanOrEqual(range[1]);
      }
      const works = !['none', 'water', 'hotWater', 'steam', 'oil'].includes(mediumById.get(s.medium)!.group);
      expect(s.concentration_pct !== undefined, `${s.kind} ${s.medium}`).toBe(works);
    }
  });
});

test('what disinfects in a template reaches a published point', () => {
  for (const t of templates) {
    for (const s of t.steps.filter((x) => x.kind === 'disinfect')) {
      const points = disinfectionPoints.filter((p) => p.medium === s.medium);
      const reached = points.some(
        (p) =>
          (s.time_min?.[0] ?? 0) >= p.atLeast_min &&
          (s.temperature_degC?.[0] ?? -1) >= (p.atLeast_degC ?? -1) &&
          (s.concentration_pct?.[0] ?? 0) >= (p.concentration_pct?.[0] ?? 0),
      );
      expect(reached, `${t.id}: ${s.medium}`).toBe(true);
    }
  }
});
