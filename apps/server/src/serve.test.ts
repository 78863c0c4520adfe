/** The server as a process: events over the wire, restarts, kill -9, and one process a data folder. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Event, event, type Job, machineSummary, uploadAnswer } from '@coveline/api';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { boxObj, trayObj } from '../test-data/box-obj.ts';
import { type Running, serve } from './serve.ts';

const built = new URL('../dist/index.js', import.meta.url).href;

// Databases on disk and child processes on a busy machine of two cores.
vi.setConfig({ testTimeout: 150_000, hookTimeout: 60_000 });

let dataDir: string;
let running: Running | undefined;
let child: ChildProcess | undefined;

beforeEach(async () => {
  dataDir = await mkdtemp(join(tmpdir(), 'coveline-'));
});

afterEach(async () => {
  await running?.close();
  running = undefined;
  child?.kill('SIGKILL');
  await rm(dataDir, { recursive: true });
});

async function open(more = {}): Promise<string> {
  running = await serve({ dataDir, port: 0, by: 'Reviewer', ...more });
  return running.url;
}

/** The same in a process of its own; resolves to its address. */
async function openElsewhere(): Promise<string> {
  const script = `
    import { serve } from '${built}';
    const { url } = await serve({ dataDir: process.argv[1], port: 0 });
    console.log(url);`;
  child = spawn(process.execPath, ['--input-type=module', '-e', script, dataDir], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = once(child, 'exit').then(([code]) => Promise.reject(new Error(`The server ended: ${code}`)));
  ended.catch(() => {});
  const [line] = (await Promise.race([once(child.stdout!, 'data'), ended])) as [Buffer];
  return line.toString().trim();
}

async function newMachine(url: string): Promise<string> {
  const answer = await fetch(`${url}/api/machines`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'Invented mixer' }),
  });
  return machineSummary.parse(await answer.json()).id;
}

async function upload(url: string, machine: string, content: string): Promise<Job> {
  const body = new FormData();
  body.append('file', new Blob([content]), 'model.obj');
  const answer = await fetch(`${url}/api/machines/${machine}/revisions`, { method: 'POST', body });
  return uploadAnswer.parse(await answer.json()).job;
}

async function state(url: string, id: string): Promise<string> {
  const jobs = (await (await fetch(`${url}/api/jobs`)).json()) as Job[];
  return jobs.find((job) => job.id === id)?.state ?? 'unknown';
}

/** Events as they come in, until the connection ends. */
function listen(url: string): { events: Event[]; connected: Promise<void>; ended: Promise<void> } {
  const events: Event[] = [];
  const answer = fetch(`${url}/api/events`, { headers: { accept: 'text/event-stream' } });
  const ended = answer.then(async ({ body }) => {
    let text = '';
    for await (const chunk of body!.pipeThrough(new TextDecoderStream())) {
      text += chunk;
      const messages = text.split('\n\n');
      text = messages.pop()!;
      for (const message of messages)
        if (message.startsWith('data: ')) events.push(event.parse(JSON.parse(message.slice(6))));
    }
  });
  return { events, connected: answer.then(() => {}), ended };
}

test('a job is followed from waiting to done by its events, and the stream ends with the server', async () => {
  const url = await open();
  const { events, connected, ended } = listen(url);
  await connected;
  const machine = await newMachine(url);
  const job = await upload(url, machine, boxObj(100, 60, 30));
  const states = () => events.flatMap((e) => (e.type === 'job' && e.job.id === job.id ? [e.job.state] : []));
  await expect.poll(() => states().at(-1), { timeout: 60_000 }).toBe('done');
  expect(states()[0]).toBe('waiting');
  expect(states()).toContain('running');
  const versions = events.flatMap((e) => (e.type === 'machine' && e.machine === machine ? [e.version] : []));
  expect(versions).toEqual(versions.toSorted((a, b) => a - b));
  expect(versions.length).toBeGreaterThan(2);
  await running!.close();
  running = undefined;
  await ended;
});

/** The processes that compute for this one. */
function computing(): number[] {
  const { stdout } = spawnSync('ps', ['-o', 'pid=,stat=,args=', '--ppid', String(process.pid)], {
    encoding: 'utf8',
  });
  return stdout
    .split('\n')
    .filter((line) => line.includes('compute/dist/child.js') && !/^\s*\d+\s+Z/.test(line))
    .map((line) => Number.parseInt(line, 10));
}

test('a running job that is cancelled leaves no process behind', async () => {
  const url = await open();
  const job = await upload(url, await newMachine(url), trayObj(300));
  await expect.poll(computing, { timeout: 40_000 }).toHaveLength(1);
  const answer = await fetch(`${url}/api/jobs/${job.id}/cancel`, { method: 'POST' });
  expect(((await answer.json()) as Job).state).toBe('cancelled');
  await expect.poll(computing, { timeout: 1000, interval: 20 }).toEqual([]);
  expect(await state(url, job.id)).toBe('cancelled');
});

test('kill -9 of the process that computes fails its job with a sentence, and nothing else', async () => {
  const url = await open();
  const machine = await newMachine(url);
  const job = await upload(url, machine, trayObj(300));
  await expect.poll(computing, { timeout: 40_000 }).toHaveLength(1);
  process.kill(computing()[0], 'SIGKILL');
  await expect.poll(() => state(url, job.id), { timeout: 40_000 }).toBe('failed');
  const [failed] = (await (await fetch(`${url}/api/jobs`)).json()) as Job[];
  expect(failed.error).toBe('A fault of ours ended the survey; the log of the server has the details.');
  const next = await upload(url, machine, boxObj(10, 10, 10));
  await expect.poll(() => state(url, next.id), { timeout: 60_000 }).toBe('done');
});

test('a job that runs when the server closes is finished by the next one', async () => {
  const first = await open();
  const job = await upload(first, await newMachine(first), trayObj(60));
  await expect.poll(() => state(first, job.id), { timeout: 40_000, interval: 20 }).toBe('running');
  await running!.close();
  const second = await open();
  await expect.poll(() => state(second, job.id), { timeout: 60_000 }).toBe('done');
});

test('after kill -9 of the server the upload is there and its job is finished', async () => {
  const first = await openElsewhere();
  await expect(serve({ dataDir, port: 0 })).rejects.toMatchObject({ code: 'data-in-use' });
  const machine = await newMachine(first);
  const job = await upload(first, machine, trayObj(60));
  await expect.poll(() => state(first, job.id), { timeout: 40_000, interval: 20 }).toBe('running');
  child!.kill('SIGKILL');
  await once(child!, 'exit');
  const second = await open();
  expect(await state(second, job.id)).not.toBe('unknown');
  // The engine gives a worker 10 s without a sign of life.
  await expect.poll(() => state(second, job.id), { timeout: 90_000, interval: 500 }).toBe('done');
});

test('a project folder is taken in once, with its surveys', async () => {
  const folder = join(dataDir, 'seed');
  await mkdir(folder);
  const revisions = [{ id: 'one', label: 'One', file: 'one.obj', up: 'z' }];
  await writeFile(join(folder, 'one.obj'), boxObj(100, 60, 30));
  const project = { schema: 'coveline.project/1', name: 'Invented doser', invented: true, revisions };
  await writeFile(join(folder, 'project.json'), JSON.stringify(project));
  const first = await open({ seed: folder });
  await expect
    .poll(async () => (await (await fetch(`${first}/api/machines`)).json())[0].revisions[0].surveyedAt, {
      timeout: 60_000,
    })
    .not.toBeNull();
  await running!.close();
  const second = await open({ seed: folder });
  const machines = await (await fetch(`${second}/api/machines`)).json();
  expect(machines).toMatchObject([
    { id: 'invented-doser', invented: true, revisions: [{ id: 'one', parts: 1 }] },
  ]);
  expect(await (await fetch(`${second}/api/jobs`)).json()).toHaveLength(1);
});

test('a seed folder without its model is one sentence, and frees the data folder', async () => {
  const folder = join(dataDir, 'seed');
  await mkdir(folder);
  const revisions = [{ id: 'one', label: 'One', file: 'gone.obj' }];
  await writeFile(
    join(folder, 'project.json'),
    JSON.stringify({ schema: 'coveline.project/1', name: 'x', revisions }),
  );
  await expect(open({ seed: folder })).rejects.toThrow(/gone\.obj" cannot be opened \(ENOENT\)/);
  await open();
});

test('a port that is taken, and an address of another machine, are one sentence each', async () => {
  const { port } = new URL(await open());
  const other = { dataDir: join(dataDir, 'other') };
  await expect(serve({ ...other, port: Number(port) })).rejects.toMatchObject({
    name: 'InputError',
    message: `Port ${port} on 127.0.0.1 is taken: choose another one.`,
  });
  // 192.0.2.1 is reserved for documentation (RFC 5737).
  await expect(serve({ ...other, host: '192.0.2.1', port: 0 })).rejects.toMatchObject({ code: 'no-host' });
});

test('the workbench answers all its own addresses, and missing files are missing', async () => {
  const webDir = join(dataDir, 'web');
  await mkdir(join(webDir, 'assets'), { recursive: true });
  await writeFile(join(webDir, 'index.html'), '<!doctype html><title>Coveline</title>');
  await writeFile(join(webDir, 'assets', 'main-abc123.js'), 'export {};');
  const url = await open({ webDir });
  for (const path of ['/', '/index.html', '/machines/some-machine?view=front']) {
    const page = await fetch(url + path);
    expect([page.status, page.headers.get('cache-control')]).toEqual([200, 'no-cache']);
    expect(await page.text()).toContain('<title>Coveline</title>');
  }
  const script = await fetch(`${url}/assets/main-abc123.js`);
  expect(script.headers.get('cache-control')).toContain('immutable');
  expect((await fetch(`${url}/assets/gone.js`)).status).toBe(404);
  expect((await fetch(`${url}/../../package.json`)).status).toBe(404);
});
