/** What the store promises, on every database that it supports. */
import { randomUUID } from 'node:crypto';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { applyCommand, type Command, type Project, project } from '@coveline/project';
import { sql } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { databases, serverUrl } from '../test-data/databases.ts';
import {
  addRevision,
  createMachine,
  doCommand,
  findSurvey,
  getMachine,
  history,
  listJobs,
  listMachines,
  listReviews,
  listSurveys,
  type Message,
  nextUndoRedo,
  orderJob,
  redo,
  type Store,
  storeReview,
  storeSurvey,
  touchMachine,
  undo,
} from './index.ts';

describe.skipIf(serverUrl !== undefined)('PostgreSQL', () => {
  test.skip('the contract on PostgreSQL: set COVELINE_TEST_DATABASE_URL, or use scripts/with-postgres.sh', () => {});
});

const empty: Project = project.parse({ schema: 'coveline.project/1', name: 'Invented mixer' });
const as = { by: 'Reviewer', what: 'Changed something' };
const rename = (name: string): Command => ({ do: 'rename', name });
const withRevision = { ...empty, revisions: [{ id: 'r1', label: 'A', file: 'a.stl', up: 'z' as const }] };

describe.each(databases)('store: $name', ({ open, drop, cutConnections }) => {
  let store: Store;
  let dataDir: string;

  beforeAll(async () => {
    dataDir = await mkdtemp(join(tmpdir(), 'coveline-'));
    store = await open(dataDir);
  }, 60_000);

  afterAll(async () => {
    await store.close();
    await drop();
    await rm(dataDir, { recursive: true });
  });

  async function newMachine(start = empty): Promise<string> {
    const id = `m-${randomUUID()}`;
    await store.transaction((tx) => createMachine(tx, id, start, { by: 'Reviewer', what: 'Created' }));
    return id;
  }
  const perform = (id: string, command: Command) => store.transaction((tx) => doCommand(tx, id, command, as));
  const read = (id: string) => store.transaction((tx) => getMachine(tx, id));

  describe('machines', () => {
    test('a new machine is found again, alone and in the list', async () => {
      const id = await newMachine();
      const row = await read(id);
      expect(row.project).toEqual(empty);
      expect((await store.transaction(listMachines)).map((m) => m.id)).toContain(id);
    });

    test('an id is given once', async () => {
      const id = await newMachine();
      const again = store.transaction((tx) => createMachine(tx, id, empty, as));
      await expect(again).rejects.toMatchObject({ name: 'StoreError', code: 'exists' });
    });

    test('an unknown machine is named in the error', async () => {
      await expect(read('nobody')).rejects.toThrow('There is no machine "nobody".');
      await expect(perform('nobody', rename('x'))).rejects.toMatchObject({ code: 'not-found' });
    });

    test('a project comes back as the same text, key by key', async () => {
      const id = await newMachine(withRevision);
      expect(JSON.stringify((await read(id)).project)).toBe(JSON.stringify(withRevision));
    });

    test('a machine of before calculations reads as one that keeps none, and can be changed', async () => {
      const id = await newMachine(withRevision);
      const { calculations: _, ...before } = withRevision;
      const text = JSON.stringify(before);
      await store.transaction((tx) =>
        tx.execute(sql`UPDATE machine SET project = ${text}::json WHERE id = ${id}`),
      );
      expect((await read(id)).project).toEqual(withRevision);
      const { after } = await perform(id, rename('Later'));
      expect(after.project).toEqual({ ...withRevision, name: 'Later' });
      const listed = await store.transaction(listMachines);
      expect(listed.find((m) => m.id === id)?.project.calculations).toEqual([]);
    });

    test('any text comes back as it was', async () => {
      const name = 'Ünïcode 漢字 🥣 "quotes" \\ \' ; -- %s $1 \u2028';
      const id = await newMachine();
      await perform(id, rename(name));
      expect((await read(id)).project.name).toBe(name);
    });
  });

  describe('commands', () => {
    test('undo and redo are entries of the log; nothing is removed', async () => {
      const id = await newMachine();
      await perform(id, rename('One'));
      await perform(id, rename('Two'));
      await store.transaction((tx) => undo(tx, id, 'Reviewer'));
      expect((await read(id)).project.name).toBe('One');
      const next = await store.transaction((tx) => nextUndoRedo(tx, id));
      expect(next.undo?.command).toEqual(rename('One'));
      expect(next.redo?.command).toEqual(rename('Two'));
      await store.transaction((tx) => redo(tx, id, 'Colleague'));
      expect((await read(id)).project.name).toBe('Two');
      const log = await store.transaction((tx) => history(tx, id));
      expect(log.map((e) => [e.seq, e.kind, e.by])).toEqual([
        [5, 'redo', 'Colleague'],
        [4, 'undo', 'Reviewer'],
        [3, 'do', 'Reviewer'],
        [2, 'do', 'Reviewer'],
        [1, 'do', 'Reviewer'],
      ]);
    });

    test('neither creation nor upload can be undone, and both stand in the log', async () => {
      const id = await newMachine();
      const file = { sha256: 'ab', size_bytes: 3 };
      await store.transaction((tx) => addRevision(tx, id, withRevision.revisions[0], file, as));
      const taken = store.transaction((tx) => undo(tx, id, 'Reviewer'));
      await expect(taken).rejects.toMatchObject({ code: 'nothing-to-undo' });
      await expect(store.transaction((tx) => redo(tx, id, 'Reviewer'))).rejects.toMatchObject({
        code: 'nothing-to-redo',
      });
      expect(await store.transaction((tx) => history(tx, id))).toHaveLength(2);
    });

    test('a kept calculation that was removed comes back as it was typed', async () => {
      const id = await newMachine();
      const kept = {
        calculation: 'pipe-flow',
        title: 'Shear “in” the line',
        note: '',
        inputs: { bore: '2 in', flow: '1,5 m³/h' },
        locale: 'de',
        gave: { value: 0.1, unit: 'Pa' },
      };
      await perform(id, { do: 'setCalculation', calculation: 'c1', kept });
      await perform(id, { do: 'setCalculation', calculation: 'c1', kept: null });
      expect((await read(id)).project.calculations).toEqual([]);
      await store.transaction((tx) => undo(tx, id, 'Reviewer'));
      expect((await read(id)).project.calculations).toEqual([{ id: 'c1', ...kept }]);
    });

    test('an unknown revision is refused and leaves no trace', async () => {
      const id = await newMachine();
      const command: Command = { do: 'setPart', revision: 'r9', part: 'a', change: null };
      await expect(perform(id, command)).rejects.toThrow('The machine has no revision "r9".');
      expect(await store.transaction((tx) => history(tx, id))).toHaveLength(1);
    });

    test('the project is what its log says', async () => {
      const id = await newMachine();
      const file = { sha256: 'ab', size_bytes: 3 };
      await store.transaction((tx) => addRevision(tx, id, withRevision.revisions[0], file, as));
      const decision = { kind: 'doesNotApply', reason: 'Covered in use.' } as const;
      await perform(id, { do: 'decide', revision: 'r1', finding: 'f', decision });
      await perform(id, { do: 'setRevision', revision: 'r1', label: 'A1', up: 'y' });
      await perform(id, { do: 'setPart', revision: 'r1', part: 'p', change: { joint: 'welded' } });
      await store.transaction((tx) => undo(tx, id, 'Reviewer'));
      await store.transaction((tx) => undo(tx, id, 'Reviewer'));
      await store.transaction((tx) => redo(tx, id, 'Reviewer'));
      const row = await read(id);
      const log = await store.transaction((tx) => history(tx, id));
      let replayed = row.initial;
      for (const { adds, command } of log.toReversed()) {
        if (adds) replayed = { ...replayed, revisions: [...replayed.revisions, adds] };
        replayed = applyCommand(replayed, command).project;
      }
      expect(row.project).toEqual(replayed);
      expect(row.project.revisions[0].up).toBe('y');
    });

    test('of commands sent together none is lost, and each has a number of its own', async () => {
      const id = await newMachine(withRevision);
      const parts = Array.from({ length: 40 }, (_, i) => `part-${i}`);
      await Promise.all(
        parts.map((part) =>
          perform(id, { do: 'setPart', revision: 'r1', part, change: { joint: 'bolted' } }),
        ),
      );
      const row = await read(id);
      expect(Object.keys(row.project.parts.r1).toSorted()).toEqual(parts.toSorted());
      expect(row.version).toBe(41);
      const log = await store.transaction((tx) => history(tx, id));
      expect(log.map((e) => e.seq).toReversed()).toEqual(Array.from({ length: 41 }, (_, i) => i + 1));
    });
  });

  describe('transactions', () => {
    test('what fails halfway leaves nothing, job and message included', async () => {
      const id = await newMachine();
      const messages: Message[] = [];
      const stop = await store.listen(
        (m) => messages.push(m),
        () => {},
      );
      const work = store.transaction(async (tx) => {
        await doCommand(tx, id, rename('Lost'), as);
        await orderJob(tx, store.engine, { kind: 'file', machine: id, revision: 'r1' });
        throw new Error('halfway');
      });
      await expect(work).rejects.toThrow('halfway');
      expect((await read(id)).project.name).toBe(empty.name);
      expect(await store.transaction((tx) => listJobs(tx, id))).toEqual([]);
      await perform(id, rename('Kept'));
      await expect.poll(() => messages, { timeout: 5000 }).toEqual([{ machine: id, version: 2 }]);
      await stop();
    });

    test('a transaction inside a transaction is refused instead of waiting for itself', async () => {
      const nested = store.transaction(() => store.transaction(async () => 1));
      await expect(nested).rejects.toThrow('A transaction was begun inside a transaction');
    });

    test('a listener may begin a transaction', async () => {
      const id = await newMachine();
      const names: string[] = [];
      const stop = await store.listen(
        (m) => 'machine' in m && void read(m.machine).then((row) => names.push(row.project.name)),
        () => {},
      );
      await perform(id, rename('Heard'));
      await expect.poll(() => names, { timeout: 5000 }).toEqual(['Heard']);
      await stop();
    });
  });

  describe('surveys and reviews', () => {
    test('one survey per orientation; surveying again replaces it', async () => {
      const id = await newMachine(withRevision);
      const row = {
        machine: id,
        revision: 'r1',
        up: 'z',
        model: '1',
        result: '2',
        fields: '3',
        drawings: '4',
        version: 1,
      };
      await store.transaction(async (tx) => {
        await storeSurvey(tx, row);
        await storeSurvey(tx, { ...row, model: '5' });
        await storeSurvey(tx, { ...row, up: 'y' });
      });
      expect(await store.transaction((tx) => findSurvey(tx, id, 'r1', 'z'))).toMatchObject({ model: '5' });
      expect(await store.transaction((tx) => findSurvey(tx, id, 'r1', 'x'))).toBeNull();
      expect(await store.transaction((tx) => listSurveys(tx, id))).toHaveLength(2);
    });

    test('the last review counts', async () => {
      const id = await newMachine(withRevision);
      const row = { machine: id, revision: 'r1', findings: ['f1', 'f2'] };
      await store.transaction((tx) => storeReview(tx, row));
      await store.transaction((tx) => storeReview(tx, { ...row, findings: [] }));
      expect(await store.transaction((tx) => listReviews(tx, id))).toEqual([{ ...row, findings: [] }]);
    });
  });

  describe('blobs', () => {
    test('the same bytes have one name, and a broken stream leaves nothing', async () => {
      const a = await store.blobs.putText('hygienic');
      const { sha256, bytes } = await store.blobs.receive(
        Readable.from([Buffer.from('hyg'), Buffer.from('ienic')]),
      );
      // printf hygienic | sha256sum
      expect(sha256).toBe('a02ea5b5b28cff076ab3cdb7685b4ee34487d685f3e886944e3a6361dcc7922d');
      expect(a).toBe(sha256);
      expect(bytes).toBe(8);
      expect(await readFile(store.blobs.path(a), 'utf8')).toBe('hygienic');
      const broken = Readable.from(
        (async function* () {
          yield Buffer.from('half');
          throw new Error('connection lost');
        })(),
      );
      await expect(store.blobs.receive(broken)).rejects.toThrow('connection lost');
      expect(await readdir(join(dataDir, 'blobs', 'incoming'))).toEqual([]);
    });
  });

  test('a change is told with its version', async () => {
    const id = await newMachine();
    const messages: Message[] = [];
    const stop = await store.listen(
      (m) => messages.push(m),
      () => {},
    );
    await store.transaction((tx) => touchMachine(tx, id));
    await expect.poll(() => messages, { timeout: 5000 }).toContainEqual({ machine: id, version: 2 });
    await stop();
  });

  test.runIf(cutConnections)(
    'goes on after the server has cut every connection, and tells of the gap',
    async () => {
      const id = await newMachine();
      const messages: Message[] = [];
      let gaps = 0;
      const stop = await store.listen(
        (m) => messages.push(m),
        () => {
          gaps += 1;
        },
      );
      await cutConnections!();
      await expect.poll(() => gaps, { timeout: 10_000 }).toBe(1);
      await perform(id, rename('Afterwards'));
      await expect.poll(() => messages, { timeout: 5000 }).toEqual([{ machine: id, version: 2 }]);
      await stop();
    },
  );
});
