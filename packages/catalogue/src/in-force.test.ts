import { expect, test } from 'vitest';
import { demandsInForce, limitsFor } from './index.ts';

const find = (id: string, profile: string, on = '2026-11-25') =>
  demandsInForce({ profile, careLevel: 'raised', on }).find((d) => d.id === id);

test('machine law changes over on 20 January 2027', () => {
  const keys = (on: string) => find('gen-drain', 'eu', on)!.citations.map((c) => c.source);
  expect(keys('2027-01-19')).toContain('EU-MD');
  expect(keys('2027-01-19')).not.toContain('EU-MR');
  expect(keys('2027-01-20')).toContain('EU-MR');
  expect(keys('2027-01-20')).not.toContain('EU-MD');
  expect(find('gen-drain', 'eu', '2027-01-20')!.kind).toBe('law');
});

test('European law is no law in the United States', () => {
  const d = find('gen-drain', 'us')!;
  expect(d.kind).toBe('standard');
  expect(d.citations.map((c) => c.source)).not.toContain('EU-MD');
});

test('profiles take their own figures', () => {
  const radius = (p: string) => limitsFor(find('gen-radius-food', p)!, 'radius', 'food', 90)[0].atLeast;
  expect(radius('eu')).toBe(3);
  expect(radius('eu-preferred')).toBe(6);
  expect(radius('us')).toBe(6.35);
  const branch = (p: string) => limitsFor(find('pipe-dead', p)!, 'ratio', 'food')[0].atMost;
  expect(branch('eu')).toBe(1);
  expect(branch('us')).toBe(2);
});

test('an included angle of 135 degrees or more asks for no radius', () => {
  const d = find('gen-radius-food', 'eu')!;
  expect(limitsFor(d, 'radius', 'food', 134)).toHaveLength(1);
  expect(limitsFor(d, 'radius', 'food', 135)).toHaveLength(0);
});

test('some demands come with the level of care', () => {
  const ids = (careLevel: 'basic' | 'high') =>
    demandsInForce({ profile: 'eu', careLevel, on: '2026-11-25' }).map((d) => d.id);
  expect(ids('basic')).not.toContain('hood-door');
  expect(ids('high')).toContain('hood-door');
});

test('an unknown profile is named, with those that exist', () => {
  expect(() => demandsInForce({ profile: 'mars', careLevel: 'basic', on: '2026-11-25' })).toThrow(
    'The catalogue has no profile "mars"; it has "eu", "eu-preferred", "us", "bioprocess".',
  );
});
