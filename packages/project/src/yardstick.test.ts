import { expect, test } from 'vitest';
import { parseProject, yardstickOf } from './index.ts';

const source = {
  key: 'house',
  title: 'House rules (invented)',
  edition: '1',
  kind: 'guidance',
  seen: 'own text',
};
const pack = {
  schema: 'coveline.pack/1',
  name: 'House',
  sources: [source],
  profiles: [{ id: 'house', name: 'House', summary: 'Own figures.', jurisdiction: 'eu', basedOn: 'eu' }],
};
const parsed = (more: object) => {
  const read = parseProject({ schema: 'coveline.project/1', name: 'x', ...more });
  if (!read.ok) throw new Error(read.errors.join('\n'));
  return read.project;
};

test('the packs of a project bring their profile', () => {
  const { catalogue, brief, notes } = yardstickOf(parsed({ brief: { profile: 'house' }, packs: [pack] }));
  expect(catalogue.sources.get('house')?.title).toBe('House rules (invented)');
  expect(brief.profile).toBe('house');
  expect(notes).toEqual([]);
});

test('a pack that clashes is left aside and told, and the others stay', () => {
  const clash = { ...pack, name: 'Copy' };
  const { catalogue, notes } = yardstickOf(parsed({ packs: [pack, clash] }));
  expect(catalogue.profiles.has('house')).toBe(true);
  expect(notes).toEqual([
    'The pack "Copy" is left aside: The catalogue has the source "house" already: choose another name (and 1 more).',
  ]);
});

test('a profile that went with its pack is replaced by the first, and told', () => {
  const { brief, notes } = yardstickOf(parsed({ brief: { profile: 'house' } }));
  expect(brief.profile).toBe('eu');
  expect(notes).toHaveLength(1);
  expect(notes[0]).toMatch(/asks for the profile "house", which neither the catalogue nor a pack has: "eu"/);
});

test('two packs of one name are refused in a file', () => {
  const read = parseProject({ schema: 'coveline.project/1', name: 'x', packs: [pack, pack] });
  expect(read).toMatchObject({
    ok: false,
    errors: [expect.stringContaining('the name "House" is used twice')],
  });
});
