import type { Machine } from '@coveline/api';
import { type Command, parseProject } from '@coveline/project';
import { beforeEach, expect, test, vi } from 'vitest';

const kept = new Map<string, string>();
vi.stubGlobal('window', {
  localStorage: {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
  },
});

const fresh = async () => {
  vi.resetModules();
  return await import('./waiting.ts');
};
beforeEach(() => kept.clear());

const named = (name: string): Command => ({ do: 'rename', name });
function machine(): Machine {
  const read = parseProject({
    schema: 'coveline.project/1',
    name: 'as held',
    revisions: [{ id: 'A', label: 'A', file: 'a.step' }],
  });
  if (!read.ok) throw new Error(read.errors.join());
  return { id: 'mixer', project: read.project } as Machine;
}

test('what waits comes back in its order when the page is opened again', async () => {
  const first = await fresh();
  first.addWaiting('mixer', named('one'));
  first.addWaiting('other', named('two'));
  const again = await fresh();
  expect(again.waiting()).toEqual(first.waiting());
  again.removeFirstWaiting();
  expect((await fresh()).waiting()).toEqual([{ machine: 'other', command: named('two') }]);
});

test('what is in the storage and is no command is left out, not thrown', async () => {
  kept.set('coveline.waiting', '[{"machine":"mixer","command":{"do":"fly"}},5]');
  await expect(fresh().then((w) => w.waiting())).resolves.toEqual([]);
  kept.set('coveline.waiting', 'no JSON');
  await expect(fresh().then((w) => w.waiting())).resolves.toEqual([]);
});

test('an answer of the server does not hide what waits and what is on the way', async () => {
  const { addWaiting, arrived, setOut, withWaiting } = await fresh();
  addWaiting('mixer', named('waits'));
  expect(withWaiting(machine()).project.name).toBe('waits');
  const later = named('on the way');
  setOut('mixer', later);
  setOut('other', named('of another machine'));
  expect(withWaiting(machine()).project.name).toBe('on the way');
  arrived(later);
  expect(withWaiting(machine()).project.name).toBe('waits');
});

test('a change of a revision that is gone is left for the server to refuse', async () => {
  const { addWaiting, withWaiting } = await fresh();
  addWaiting('mixer', { do: 'decide', revision: 'Z', finding: 'f', decision: null });
  expect(withWaiting(machine()).project).toEqual(machine().project);
});
