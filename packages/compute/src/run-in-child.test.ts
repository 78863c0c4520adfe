import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import { ChildFault, LimitError, TaskError } from './errors.ts';
import { runInChild } from './run-in-child.ts';

/** A task as a module of its own. */
const module = (body: string) => `data:text/javascript,${encodeURIComponent(`export default ${body}`)}`;
const endless = module("(_, { onProgress }) => { onProgress('Turning in circles', 0.5); for (;;); }");

describe('runInChild', () => {
  test('returns the result, the progress and the peak memory', async () => {
    const seen: [string, number][] = [];
    const add = module(
      "async ({ a, b }, { folder, onProgress }) => { onProgress('Adding', 0.25); return { sum: a + b, folder }; }",
    );
    const { result, peakMemory_MB } = await runInChild(add, { a: 2, b: 3 }, '/some/folder', {
      onProgress: (stage, done) => seen.push([stage, done]),
    });
    expect(result).toEqual({ sum: 5, folder: '/some/folder' });
    expect(seen).toEqual([['Adding', 0.25]]);
    expect(peakMemory_MB).toBeGreaterThan(10);
    expect(peakMemory_MB).toBeLessThan(500);
  });

  test('an endless loop ends at the time limit and says during what', async () => {
    const run = runInChild(endless, null, '', { limits: { time_s: 1 } });
    await expect(run).rejects.toThrow('Stopped at the limit of 1 s of time during "Turning in circles".');
    await expect(run).rejects.toBeInstanceOf(LimitError);
  });

  test('stages before the one that hit the limit count as finished', async () => {
    const two = module("(_, c) => { c.onProgress('Reading', 0); c.onProgress('Measuring', 0.5); for (;;); }");
    const error = await runInChild(two, null, '', { limits: { time_s: 1 } }).catch((e: unknown) => e);
    expect((error as LimitError).finished).toEqual(['Reading']);
  });

  // On a machine that is busy with other things a single measurement of time may miss.
  test('a cancel ends a busy child within 100 ms', { retry: 3 }, async () => {
    const controller = new AbortController();
    let cancelled = 0;
    const run = runInChild(endless, null, '', {
      signal: controller.signal,
      onProgress: () => {
        cancelled = performance.now();
        controller.abort();
      },
    });
    await expect(run).rejects.toHaveProperty('name', 'AbortError');
    expect(performance.now() - cancelled).toBeLessThan(100);
  });

  test('a signal that was aborted before starts nothing', async () => {
    await expect(runInChild(endless, null, '', { signal: AbortSignal.abort() })).rejects.toHaveProperty(
      'name',
      'AbortError',
    );
  });

  test.each([
    ['typed arrays', '() => { const all = []; for (;;) all.push(new Float64Array(1e6).fill(1)); }'],
    ['objects', '() => { const all = []; for (;;) all.push({ n: all.length, t: String(all.length) }); }'],
    [
      'WebAssembly memory',
      '() => { const m = new WebAssembly.Memory({ initial: 1, maximum: 65536 }); for (;;) { const at = m.buffer.byteLength; m.grow(16); new Uint8Array(m.buffer, at).fill(1); } }',
    ],
  ])('%s without end hit the memory limit', async (_, body) => {
    const error = await runInChild(module(body), null, '', { limits: { memory_MB: 300 } }).catch((e) => e);
    expect(error).toBeInstanceOf(LimitError);
    expect(error.limit).toBe('memory');
  });

  test('what a task throws arrives with its name and code', async () => {
    const run = runInChild(
      module("() => { throw Object.assign(new RangeError('too far'), { code: 'far' }); }"),
      null,
      '',
    );
    const error = await run.catch((e: unknown) => e);
    expect(error).toBeInstanceOf(TaskError);
    expect(error).toMatchObject({ message: 'too far', thrown: { name: 'RangeError', code: 'far' } });
  });

  test('a child that is killed from outside is a fault, with its last words', async () => {
    const run = runInChild(
      module(
        "() => { console.error('last words'); process.kill(process.pid, 'SIGKILL'); return new Promise(() => {}); }",
      ),
      null,
      '',
    );
    await expect(run).rejects.toBeInstanceOf(ChildFault);
    await expect(run).rejects.toThrow(/SIGKILL[\s\S]*last words/);
  });

  test('a busy child ends when its parent is killed', async () => {
    const compute = pathToFileURL(createRequire(import.meta.url).resolve('@coveline/compute/child'));
    const index = new URL('./index.js', compute).href;
    const busy = module('(_, { onProgress }) => { onProgress(String(process.pid), 0); for (;;); }');
    const parent = spawn(process.execPath, [
      '--input-type=module',
      '-e',
      `import { runInChild } from '${index}'; runInChild('${busy.replaceAll("'", '%27')}', null, '', { onProgress: (pid) => console.log(pid) });`,
    ]);
    const [chunk] = (await once(parent.stdout, 'data')) as [Buffer];
    const child = Number(chunk.toString());
    expect(isAlive(child)).toBe(true);
    parent.kill('SIGKILL');
    await expect.poll(() => isAlive(child), { timeout: 2000 }).toBe(false);
  });
});

/** A process that ended but was not collected by its parent yet does not count as alive. */
function isAlive(pid: number): boolean {
  const { status, stdout } = spawnSync('ps', ['-o', 'stat=', '-p', String(pid)], { encoding: 'utf8' });
  return status === 0 && !stdout.trim().startsWith('Z');
}
