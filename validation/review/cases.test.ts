/** Each case of `cases/`: what a reviewer must say is said, and what would be a false alarm is not. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Case, type Expectation, fits, judge } from './case.ts';

const folder = new URL('./cases/', import.meta.url);
const cases = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .sort()
  .map((name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Case);

const told = (e: Expectation) => JSON.stringify(e);

describe.each(cases.map((c) => [c.case, c] as const))('%s', (_, c) => {
  const result = judge(c);
  const titles = result.findings.map(
    (f) => `${f.requirement} ${f.status} rank ${f.consequence.rank}: ${f.title}`,
  );

  test('is judged as an experienced reviewer does', () => {
    for (const e of c.mustAppear)
      expect(
        result.findings.some((f) => fits(f, e)),
        `missing ${told(e)} in\n${titles.join('\n')}`,
      ).toBe(true);
    for (const e of c.mustNotAppear) {
      const false_ = result.findings.filter((f) => fits(f, e)).map((f) => f.title);
      expect(false_, `false alarm against ${told(e)}`).toEqual([]);
    }
    for (const [id, status] of Object.entries(c.lines ?? {}))
      expect(`${id}: ${result.requirements.find((r) => r.requirement === id)?.status}`).toBe(
        `${id}: ${status}`,
      );
  });

  test('is judged the same way twice, whatever the order of places', () => {
    const turned: Case = {
      ...c,
      pools: [...(c.pools ?? [])].reverse(),
      faces: [...(c.faces ?? [])].reverse(),
      corners: [...(c.corners ?? [])].reverse(),
      gaps: [...(c.gaps ?? [])].reverse(),
      joints: [...(c.joints ?? [])].reverse(),
      closed: [...(c.closed ?? [])].reverse(),
      blind: [...(c.blind ?? [])].reverse(),
      ...(c.heads && { heads: [...c.heads].reverse() }),
      ...(c.threads && { threads: [...c.threads].reverse() }),
      ...(c.hand && { hand: { ...c.hand, places: [...c.hand.places].reverse() } }),
      ...(c.jets && { jets: { ...c.jets, places: [...c.jets.places].reverse() } }),
      ...(c.sky && { sky: [...c.sky].reverse() }),
      ...(c.clearances && { clearances: [...c.clearances].reverse() }),
    };
    const ids = (r: typeof result) => r.findings.map((f) => [f.id, f.title, f.places]);
    expect(JSON.stringify(judge(c))).toBe(JSON.stringify(result));
    expect(ids(judge(turned))).toEqual(ids(result));
  });
});

test('the profile decides where sources disagree', () => {
  const byName = (name: string) => cases.find((c) => c.case === name)!;
  const told = (c: Case, profile: string, places: readonly string[]) =>
    places.filter((p) => judge(c, profile).findings.some((f) => f.places.includes(p)));
  const radii = byName('Radii 2.9, 3, 6 and an obtuse edge');
  expect(told(radii, 'eu', ['a', 'b', 'c', 'd'])).toEqual(['a']);
  expect(told(radii, 'bioprocess', ['a', 'b', 'c', 'd'])).toEqual(['a']);
  expect(told(radii, 'eu-preferred', ['a', 'b', 'c', 'd'])).toEqual(['a', 'b']);
  expect(told(radii, 'us', ['a', 'b', 'c', 'd'])).toEqual(['a', 'b', 'c']);
  const leg = byName('Capped branch, 1.35 bores from the wall');
  expect(['eu', 'eu-preferred', 'us', 'bioprocess'].map((p) => told(leg, p, ['branch']).length)).toEqual([
    1, 1, 0, 0,
  ]);
  const covers = byName('Two covers near three degrees');
  expect(told(covers, 'eu', ['a', 'b', 'c'])).toEqual(['a', 'b', 'c']);
  expect(told(covers, 'us', ['a', 'b', 'c'])).toEqual(['c']);
});

test('every finding of every case is complete', () => {
  for (const c of cases) {
    const result = judge(c);
    expect(new Set(result.findings.map((f) => f.id)).size, c.case).toBe(result.findings.length);
    for (const f of result.findings) {
      expect(f.title, f.id).toMatch(/^[A-Z0-9"]/);
      expect(f.numbers.length, f.title).toBeGreaterThan(0);
      for (const n of f.numbers) expect(Number.isFinite(n.value), `${f.title}: ${n.label}`).toBe(true);
      expect(f.why.length, f.title).toBeGreaterThan(40);
      expect(f.remedies.length, f.title).toBeGreaterThan(0);
      expect(f.demand.citations.length, f.title).toBeGreaterThan(0);
      expect(f.parts.length, f.title).toBeGreaterThan(0);
      for (const text of [f.title, f.why, f.demand.limit, f.consequence.reason])
        expect(text).not.toMatch(/compliant|certified|undefined|NaN|Infinity/i);
    }
    for (const line of result.requirements) expect(line.basis, line.requirement).not.toBe('');
  }
});
