/** What holds for the embedded database alone: one process a folder, and what was acknowledged survives kill -9. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { getMachine, history, openStore } from './index.ts';

const built = new URL('../dist/index.js', import.meta.url).href;

/** Opens the folder, then renames one machine without end, and prints each number once it is committed. */
const writer = `
  import { openStore, createMachine, doCommand } from '${built}';
  const store = await openStore({ dataDir: process.argv[1] });
  const project = { schema: 'coveline.project/1', name: 'n0', invented: true, brief: {}, revisions: [], parts: {}, decisions: {} };
  const as = { by: 'w', what: 'w' };
  await store.transaction((tx) => createMachine(tx, 'm', project, as));
  for (let i = 1; ; i++) {
    await store.transaction((tx) => doCommand(tx, 'm', { do: 'rename', name: 'n' + i }, as));
    console.log(i);
  }`;

let dataDir: string;
let child: ChildProcess | undefined;

beforeEach(async () => {
  dataDir = await mkdtemp(join(tmpdir(), 'coveline-'));
});

afterEach(async () => {
  child?.kill('SIGKILL');
  await rm(dataDir, { recursive: true });
});

test('a second process gets one sentence; after kill -9 of the first nothing acknowledged is lost', async () => {
  child = spawn(process.execPath, ['--input-type=module', '-e', writer, dataDir], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let acknowledged = 0;
  const lines = createInterface({ input: child.stdout! });
  lines.on('line', (line) => {
    acknowledged = Number(line);
  });
  await expect.poll(() => acknowledged, { timeout: 40_000 }).toBeGreaterThan(20);

  await expect(openStore({ dataDir })).rejects.toMatchObject({
    code: 'data-in-use',
    message: `The data folder ${dataDir} is in use by another process: stop that one or choose another folder.`,
  });

  const ended = once(lines, 'close');
  child.kill('SIGKILL');
  await ended;
  const store = await openStore({ dataDir });
  const [row, log] = await store.transaction(async (tx) => [
    await getMachine(tx, 'm'),
    await history(tx, 'm'),
  ]);
  // One more may have been committed and not printed yet.
  expect(Number(row.project.name.slice(1)) - acknowledged).toBeOneOf([0, 1]);
  expect(log.length).toBe(row.version);
  await store.close();
}, 90_000);

test('the folder is free again after a close, and keeps what was written', async () => {
  const first = await openStore({ dataDir });
  const blob = await first.blobs.putText('kept');
  await expect(openStore({ dataDir })).rejects.toMatchObject({ code: 'data-in-use' });
  await first.close();
  const second = await openStore({ dataDir });
  expect(second.blobs.path(blob)).toBe(first.blobs.path(blob));
  await second.close();
}, 90_000);

test('an unreachable server is one sentence', async () => {
  const databaseUrl = 'postgres://nobody@127.0.0.1:1/none';
  await expect(openStore({ dataDir, databaseUrl })).rejects.toMatchObject({
    code: 'database-unreachable',
    message: expect.stringMatching(/^The database cannot be reached: .*ECONNREFUSED.*\.$/),
  });
});
