/** What the store promises about jobs, on every database that it supports. */
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { project } from '@coveline/project';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { databases } from '../test-data/databases.ts';
import {
  beginJob,
  cancelJob,
  completeJob,
  createMachine,
  failJob,
  getJob,
  type JobRow,
  orderJob,
  reportJob,
  returnJob,
  type Store,
  StoreError,
} from './index.ts';

const empty = project.parse({ schema: 'coveline.project/1', name: 'Invented mixer' });

describe.each(databases)('jobs: $name', ({ open, drop }) => {
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

  async function newMachine(): Promise<string> {
    const id = `m-${randomUUID()}`;
    await store.transaction((tx) => createMachine(tx, id, empty, { by: 'Reviewer', what: 'Created' }));
    return id;
  }

  const order = (machine: string) =>
    store.transaction((tx) => orderJob(tx, store.engine, { kind: 'survey', machine, revision: 'r1' }));

  test('states follow each other, and a job that is over does not change', async () => {
    const id = await newMachine();
    const { id: job } = await order(id);
    expect((await order(id)).id).toBe(job);
    const at = (change: (...a: Parameters<typeof beginJob>) => Promise<JobRow | null>) =>
      store.transaction((tx) => change(tx, job));
    expect((await at(beginJob))?.state).toBe('running');
    expect((await order(id)).id).not.toBe(job);
    expect(await store.transaction((tx) => reportJob(tx, job, 'Reading', 0.5))).toMatchObject({
      stage: 'Reading',
      done: 0.5,
    });
    expect((await at(returnJob))?.state).toBe('waiting');
    expect((await at(beginJob))?.state).toBe('running');
    const done = await store.transaction((tx) => completeJob(tx, job, ['A sign has no glyph.']));
    expect(done).toMatchObject({ state: 'done', notes: ['A sign has no glyph.'] });
    expect(await at(beginJob)).toBeNull();
    expect(await store.transaction((tx) => failJob(tx, job, 'no'))).toBeNull();
    expect((await store.transaction((tx) => cancelJob(tx, store.engine, job))).state).toBe('done');
  });

  test('an unknown job is named in the error', async () => {
    await expect(store.transaction((tx) => getJob(tx, 'nobody'))).rejects.toBeInstanceOf(StoreError);
  });

  test('a job runs once, a cancelled one never, a failing one again, a hopeless one six times', async () => {
    const names = ['good', 'cancelled', 'flaky', 'hopeless'] as const;
    const machines = new Map<string, string>();
    const jobs: string[] = [];
    for (const name of names) {
      const machine = await newMachine();
      machines.set(machine, name);
      jobs.push((await order(machine)).id);
    }
    await store.transaction((tx) => cancelJob(tx, store.engine, jobs[1]));
    const runs: Record<string, number> = {};
    await store.engine.work(
      'survey',
      2,
      async (job) => {
        const row = await store.transaction((tx) => beginJob(tx, job));
        const name = row && machines.get(row.machine);
        if (!name) return;
        runs[name] = (runs[name] ?? 0) + 1;
        if (name === 'hopeless' || (name === 'flaky' && runs[name] === 1)) throw new Error('try again');
        await store.transaction((tx) => completeJob(tx, job));
      },
      async (job) => {
        await store.transaction((tx) => failJob(tx, job, 'Given up.'));
      },
    );
    const states = () =>
      Promise.all(jobs.map(async (j) => (await store.transaction((tx) => getJob(tx, j))).state));
    await expect.poll(states, { timeout: 50_000 }).toEqual(['done', 'cancelled', 'done', 'failed']);
    expect(runs).toEqual({ good: 1, flaky: 2, hopeless: 6 });
    expect((await store.transaction((tx) => getJob(tx, jobs[3]))).error).toBe('Given up.');
  }, 60_000);
});
