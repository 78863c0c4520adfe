/** Every row of the catalogue is complete, and says no more than its source does. */
import { describe, expect, test } from 'vitest';
import {
  type Citation,
  demandsInForce,
  elements,
  materials,
  profiles,
  type Requirement,
  requirementById,
  requirements,
  sourceByKey,
  sources,
} from './index.ts';
import { strongest } from './row.ts';

const kindOf = (c: Citation) => sourceByKey.get(c.source)!.kind;
const units = new Set([
  'mm',
  'deg',
  'mL',
  'um',
  '1',
  '%',
  'bar',
  'h',
  'Pa',
  'm/s',
  'mg/kg',
  'mg/dm2',
  'L/(min m)',
]);
const unique = (list: readonly string[]) => expect(new Set(list).size).toBe(list.length);
const sentence = /^[A-Z0-9].*[.]$/s;

test('the catalogue holds at least 220 requirements and 25 materials', () => {
  expect(requirements.length).toBeGreaterThanOrEqual(220);
  expect(materials.length).toBeGreaterThanOrEqual(25);
});

test('ids and keys are unique', () => {
  unique(requirements.map((r) => r.id));
  unique(requirements.map((r) => r.text));
  unique(sources.map((s) => s.key));
  unique(materials.map((m) => m.id));
  unique(elements.map((e) => e.id));
  unique(profiles.map((p) => p.id));
});

describe('every requirement', () => {
  test('is complete', () => {
    for (const r of requirements) complete(r);
  });

  function complete(r: Requirement) {
    expect(r.text, r.id).toMatch(sentence);
    expect(elements.map((e) => e.id)).toContain(r.element);
    expect(r.areas.length).toBeGreaterThan(0);
    expect(r.hazards.length).toBeGreaterThan(0);
    expect(r.hazards).not.toContain(undefined);
    expect(r.evidence.length).toBeGreaterThan(0);
    expect(r.citations.length).toBeGreaterThan(0);
    expect(r.remedies.length).toBeGreaterThan(0);
    for (const remedy of r.remedies) expect(remedy.text).toMatch(sentence);
    if (r.conflict) {
      expect(r.conflict.reason).toMatch(sentence);
      expect(r.conflict.control).toMatch(sentence);
    }
  }

  test('is as strong as its strongest citation, and no stronger', () => {
    for (const r of requirements) expect(r.kind, r.id).toBe(strongest(r.citations.map(kindOf)));
  });

  test('has limits with a number, a unit, a datum, areas of the row and a source', () => {
    for (const r of requirements) {
      for (const l of r.limits) {
        const which = `${r.id} ${l.quantity}`;
        expect(l.atLeast !== undefined || l.atMost !== undefined, which).toBe(true);
        if (l.atLeast !== undefined && l.atMost !== undefined) expect(l.atLeast).toBeLessThan(l.atMost);
        expect(units, `${which}: "${l.unit}"`).toContain(l.unit);
        expect(l.datum ?? '', which).not.toBe('');
        expect(l.kind, which).toBe(kindOf(l.citation));
        for (const area of l.areas) expect(r.areas, which).toContain(area);
        for (const p of l.profiles)
          expect(
            profiles.map((x) => x.id),
            which,
          ).toContain(p);
      }
    }
  });

  test('cites old and new machine law together', () => {
    for (const r of requirements) {
      const keys = r.citations.map((c) => c.source);
      expect(keys.includes('EU-MD'), r.id).toBe(keys.includes('EU-MR'));
    }
  });

  test('names an existing one, not itself, as the general case', () => {
    for (const r of requirements) {
      if (r.specialises === undefined) continue;
      expect(requirementById.has(r.specialises), `${r.id}: ${r.specialises}`).toBe(true);
      expect(r.specialises).not.toBe(r.id);
    }
  });
});

test('where several profiles name a figure for one quantity, area and angle, each profile has exactly one', () => {
  for (const p of profiles) {
    for (const demand of demandsInForce({ profile: p.id, careLevel: 'high', on: '2026-11-25' })) {
      for (const l of demand.limits) {
        for (const area of l.areas) {
          const rivals = demand.limits.filter(
            (o) =>
              o.quantity === l.quantity && o.areas.includes(area) && `${o.angle_deg}` === `${l.angle_deg}`,
          );
          expect(rivals, `${demand.id} ${l.quantity} ${area} in "${p.id}"`).toHaveLength(1);
        }
      }
    }
  }
});

test('every source is cited, has a title, an edition and says what was seen', () => {
  const cited = new Set([
    ...requirements.flatMap((r) => [...r.citations, ...r.limits.map((l) => l.citation)]).map((c) => c.source),
    ...materials.map((m) => m.citation.source),
  ]);
  for (const s of sources) {
    expect(cited, s.key).toContain(s.key);
    for (const text of [s.title, s.edition, s.seen]) expect(text).not.toBe('');
  }
});

test('every element has a requirement', () => {
  for (const e of elements)
    expect(
      requirements.some((r) => r.element === e.id),
      e.id,
    ).toBe(true);
});

test('every material is complete', () => {
  for (const m of materials) {
    expect(m.name).not.toBe('');
    expect(m.designations.length, m.id).toBeGreaterThan(0);
    expect(m.nameHints.length, m.id).toBeGreaterThan(0);
    for (const hint of m.nameHints) expect(hint).toBe(hint.toLowerCase());
    expect(m.remarks, m.id).toMatch(sentence);
    expect(sourceByKey.has(m.citation.source), m.id).toBe(true);
    if (m.density_kg_m3 !== undefined) expect(m.density_kg_m3).toBeGreaterThan(800);
  }
});
