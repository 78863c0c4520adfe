import { expect, test } from 'vitest';
import { parseProject, type SiteProposal, siteEntries, siteOf } from './index.ts';

const drain = (id: string, x: number, confidence: SiteProposal['confidence']): SiteProposal => ({
  id,
  item: { what: 'drain', at_mm: [x, 0, 0], diameter_mm: 25 },
  confidence,
  reason: 'a bore',
});
const proposals: SiteProposal[] = [
  { id: 'floor', item: { what: 'floor', height_mm: 0 }, confidence: 'high', reason: 'feet' },
  drain('d1', 1, 'high'),
  drain('d2', 2, 'low'),
  drain('d3', 3, 'medium'),
];

test('what is sure or likely holds by itself, a guess waits', () => {
  const site = siteOf({}, proposals);
  expect(site.floor_mm).toBe(0);
  expect(site.drains.map((d) => d.id)).toEqual(['d1', 'd3']);
  expect(site.nozzles).toEqual([]);
});

test('people accept, change, leave out and add; the survey goes by that', () => {
  const changes = {
    d1: { do: 'remove' },
    d2: { do: 'accept' },
    floor: { do: 'set', item: { what: 'floor', height_mm: -80 } },
    'added:1': { do: 'set', item: { what: 'main', parts: ['a'] } },
    'added:2': { do: 'accept' },
  } as const;
  const parsed = parseProject({
    schema: 'coveline.project/1',
    name: 'Filler',
    revisions: [{ id: 'a', label: 'A', file: 'a.step' }],
    site: { a: changes },
  });
  if (!parsed.ok) throw new Error(parsed.errors.join());
  const site = siteOf(parsed.project.site.a, proposals);
  expect(site.floor_mm).toBe(-80);
  expect(site.drains.map((d) => d.id)).toEqual(['d2', 'd3']);
  expect(site.mains).toEqual([{ id: 'added:1', parts: ['a'] }]);
  // Something accepted that the model does not propose any more is nothing.
  expect(siteEntries(parsed.project.site.a, proposals).map((e) => [e.id, e.standing])).toEqual([
    ['floor', 'changed'],
    ['d1', 'removed'],
    ['d2', 'accepted'],
    ['d3', 'proposed'],
    ['added:1', 'added'],
  ]);
});

test.each([
  [
    { a: { f: { do: 'set', item: { what: 'access', outward: [0, 0, 0] } } } },
    'site.a.f.item.outward: a list of 3 was found, expected a direction that is not zero.',
  ],
  [{ b: {} }, 'site: "b" is no revision of this project, expected one of "a".'],
  [
    { a: { f: { do: 'set', item: { what: 'drain', at_mm: [0, 0, 0], diameter_mm: 0 } } } },
    'site.a.f.item.diameter_mm: 0 was found, expected more than 0.',
  ],
])('a wrong site gets one sentence: %o', (site, sentence) => {
  const revisions = [{ id: 'a', label: 'A', file: 'a.step' }];
  const parsed = parseProject({ schema: 'coveline.project/1', name: 'Filler', revisions, site });
  expect(parsed).toEqual({ ok: false, errors: [sentence] });
});
