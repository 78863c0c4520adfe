import { pack } from '@coveline/catalogue';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  applyCommand,
  type Command,
  command as commandSchema,
  describeCommand,
  keptCalculation,
  type Project,
  project,
} from './index.ts';

const base: Project = project.parse({
  schema: 'coveline.project/1',
  name: 'Filler',
  revisions: [
    { id: 'r1', label: 'A', file: 'a.step' },
    { id: 'r2', label: 'B', file: 'b.step' },
  ],
});

/** A calculation as a command hands it over. */
function kept(change: object = {}) {
  const { id: _, ...rest } = keptCalculation.parse({
    id: 'c',
    calculation: 'dead-leg-ratio',
    title: 'Dead leg',
    inputs: { length: '65 mm' },
    gave: { value: 2.5, unit: '1' },
    ...change,
  });
  return rest;
}

const source = { key: 'house', title: 'x', edition: '1', kind: 'guidance', seen: 'all' } as const;
const packOf = (name: string) => pack.parse({ schema: 'coveline.pack/1', name });

const part = fc.constantFrom('frame/leg', 'frame/leg#2', 'tray');
const revision = fc.constantFrom('r1', 'r2');
const commands: fc.Arbitrary<Command> = fc.oneof(
  fc.record({ do: fc.constant('rename' as const), name: fc.string({ minLength: 1, maxLength: 20 }) }),
  fc.record({
    do: fc.constant('setPart' as const),
    revision,
    part,
    change: fc.option(fc.record({ areaClass: fc.constantFrom('food', 'splash', 'nonFood') })),
  }) as fc.Arbitrary<Command>,
  fc.record({
    do: fc.constant('decide' as const),
    revision,
    finding: fc.constantFrom('f1', 'f2'),
    decision: fc.option(
      fc.record({ kind: fc.constant('doesNotApply' as const), reason: fc.constant('why') }),
    ),
  }) as fc.Arbitrary<Command>,
  fc.record({
    do: fc.constant('setRevision' as const),
    revision,
    label: fc.string({ minLength: 1, maxLength: 9 }),
    up: fc.constantFrom('x', 'y', 'z', '-z'),
  }) as fc.Arbitrary<Command>,
  fc.record({
    do: fc.constant('setSite' as const),
    revision,
    item: fc.constantFrom('floor', 'added:1'),
    change: fc.option(
      fc.constantFrom(
        { do: 'accept' },
        { do: 'remove' },
        { do: 'set', item: { what: 'floor', height_mm: 3 } },
      ),
    ),
  }) as fc.Arbitrary<Command>,
  fc.record({
    do: fc.constant('setCalculation' as const),
    calculation: fc.constantFrom('c1', 'c2', 'c3'),
    kept: fc.option(fc.constantFrom('Dead leg', 'Rinse').map((title) => kept({ title }))),
  }) as fc.Arbitrary<Command>,
  fc
    .record({ name: fc.constantFrom('House', 'Dairy'), is: fc.boolean() })
    .map(({ name, is }): Command => ({ do: 'setPack', name, pack: is ? packOf(name) : null })),
  fc.record({
    do: fc.constant('setBrief' as const),
    brief: fc.constantFrom('basic', 'raised', 'high').map((careLevel) => ({ ...base.brief, careLevel })),
  }) as fc.Arbitrary<Command>,
);

test('undoing any run of commands in reverse gives the project back (seed 20261125)', () => {
  fc.assert(
    fc.property(fc.array(commands, { maxLength: 12 }), (run) => {
      let now = base;
      const inverses: Command[] = [];
      for (const c of run) {
        const { project: next, inverse } = applyCommand(now, c);
        inverses.push(inverse);
        now = next;
      }
      for (const inverse of inverses.reverse()) now = applyCommand(now, inverse).project;
      // A revision that had no entries may be left with an empty table.
      expect(withoutEmpty(now)).toEqual(withoutEmpty(base));
    }),
    { seed: 20261125 },
  );
});

function withoutEmpty(p: Project): Project {
  const drop = <T extends object>(table: Record<string, T>) =>
    Object.fromEntries(Object.entries(table).filter(([, v]) => Object.keys(v).length > 0));
  return { ...p, parts: drop(p.parts), site: drop(p.site), decisions: drop(p.decisions) };
}

test('a command on a revision that is not there says so', () => {
  expect(() => applyCommand(base, { do: 'setPart', revision: 'r9', part: 'tray', change: null })).toThrow(
    'The machine has no revision "r9".',
  );
});

test('a command leaves the project that it was given untouched', () => {
  const before = JSON.stringify(base);
  applyCommand(base, { do: 'setPart', revision: 'r1', part: 'tray', change: { areaClass: 'food' } });
  expect(JSON.stringify(base)).toBe(before);
});

test.each<[Command, string]>([
  [{ do: 'rename', name: 'Doser' }, 'Rename the machine to "Doser"'],
  [
    { do: 'setBrief', brief: { ...base.brief, careLevel: 'high', acceptedPool_mL: 2 } },
    'Change the level of care and the pool that is accepted in the brief',
  ],
  [
    {
      do: 'setPart',
      revision: 'r1',
      part: 'machine/cover#2',
      change: { areaClass: 'splash', finish_Ra_um: 0.8 },
    },
    'Set "cover#2" to splash area and Ra 0.8 µm',
  ],
  [{ do: 'setPart', revision: 'r1', part: 'a/b', change: null }, 'Return "b" to its proposals'],
  [
    { do: 'decide', revision: 'r1', finding: 'gen-drain~1', decision: null },
    'Withdraw the decision on gen-drain~1',
  ],
  [
    {
      do: 'decide',
      revision: 'r1',
      finding: 'gen-drain~1',
      decision: {
        kind: 'concession',
        reason: 'level guide',
        because: 'function',
        controlMeasures: [{ what: 'wipe', interval: '', owner: '' }],
        grantedBy: 'QA',
        until: '2027-06-30',
      },
    },
    'Grant a concession on gen-drain~1 until 2027-06-30',
  ],
  [{ do: 'setRevision', revision: 'r2', label: 'C', up: 'z' }, 'Revision "B": name it "C"'],
  [{ do: 'setCalculation', calculation: 'c1', kept: kept() }, 'Keep the calculation "Dead leg"'],
  [{ do: 'setPack', name: 'House', pack: packOf('House') }, 'Add the pack "House"'],
  [{ do: 'setPack', name: 'House', pack: null }, 'Remove the pack "House"'],
  [
    { do: 'setSite', revision: 'r1', item: 'door:a/visor', change: { do: 'accept' } },
    'Accept "visor" of the site',
  ],
  [
    { do: 'setSite', revision: 'r1', item: 'door:a/visor', change: { do: 'remove' } },
    'Leave "visor" of the site out',
  ],
  [
    {
      do: 'setSite',
      revision: 'r1',
      item: 'floor',
      change: { do: 'set', item: { what: 'floor', height_mm: 2 } },
    },
    'Set the floor "floor" of the site',
  ],
  [
    { do: 'setSite', revision: 'r1', item: 'floor', change: null },
    'Return "floor" of the site to what is proposed',
  ],
])('%o reads well', (command, words) => {
  expect(describeCommand(command, base)).toBe(words);
});

const withTwo: Project = ['c1', 'c2'].reduce(
  (now, calculation) =>
    applyCommand(now, { do: 'setCalculation', calculation, kept: kept({ title: calculation }) }).project,
  base,
);

test('a calculation that comes back stands where it was', () => {
  const removed = applyCommand(withTwo, { do: 'setCalculation', calculation: 'c1', kept: null });
  expect(removed.project.calculations.map((c) => c.id)).toEqual(['c2']);
  expect(applyCommand(removed.project, removed.inverse).project).toEqual(withTwo);
});

test.each([
  [null, 'Remove the calculation "c1"'],
  [kept({ title: 'Branch' }), 'Rename the calculation "c1" to "Branch"'],
  [
    kept({ title: 'Branch', inputs: { length: '3 cm' } }),
    'Rename the calculation "c1" to "Branch" and change the values',
  ],
  [kept({ title: 'c1', note: 'as drawn' }), 'Change the note in the calculation "c1"'],
  [kept({ title: 'c1', about: { revision: 'r1' } }), 'Change where it belongs in the calculation "c1"'],
  [kept({ title: 'c1', gave: null }), 'Take over what the calculation "c1" gives now'],
  [kept({ title: 'c1' }), 'Leave the calculation "c1" as it is'],
])('what is done to a kept calculation reads well: %o', (next, words) => {
  expect(describeCommand({ do: 'setCalculation', calculation: 'c1', kept: next }, withTwo)).toBe(words);
});

test('a pack is replaced in its place, and comes back to where it was', () => {
  const set = (now: Project, name: string) =>
    applyCommand(now, { do: 'setPack', name, pack: packOf(name) }).project;
  const two = set(set(base, 'House'), 'Dairy');
  const other = { ...packOf('House'), sources: [source] };
  expect(describeCommand({ do: 'setPack', name: 'House', pack: other }, two)).toBe(
    'Replace the pack "House"',
  );
  const replaced = applyCommand(two, { do: 'setPack', name: 'House', pack: other });
  expect(replaced.project.packs).toEqual([other, packOf('Dairy')]);
  expect(applyCommand(replaced.project, replaced.inverse).project).toEqual(two);
  const removed = applyCommand(two, { do: 'setPack', name: 'House', pack: null });
  expect(applyCommand(removed.project, removed.inverse).project).toEqual(two);
});

test('a pack is set under its own name', () => {
  const read = commandSchema.safeParse({ do: 'setPack', name: 'Other', pack: packOf('House') });
  expect(read.error?.issues[0].message).toBe('a pack is set under its own name');
});
