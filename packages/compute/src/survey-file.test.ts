import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bounds, triangleCount } from '@coveline/model';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { InputError, LimitError } from './errors.ts';
import { SurveyLimitError, surveyFile } from './survey-file.ts';

/** An ASCII STL of a box from the origin, with its faces wound to the outside. */
function boxStl(x: number, y: number, z: number): string {
  const corner = (i: number) => [i & 1 ? x : 0, i & 2 ? y : 0, i & 4 ? z : 0].join(' ');
  const quads = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  const triangles = quads.flatMap(([a, b, c, d]) => [
    [a, b, c],
    [a, c, d],
  ]);
  const facets = triangles.map(
    (t) =>
      `facet normal 0 0 0\nouter loop\n${t.map((i) => `vertex ${corner(i)}`).join('\n')}\nendloop\nendfacet`,
  );
  return `solid box\n${facets.join('\n')}\nendsolid box\n`;
}

/** An OBJ of a bumpy sheet of n by n cells: enough work to be interrupted. */
function gridObj(n: number): string {
  const at = (i: number, j: number) => j * (n + 1) + i + 1;
  const lines = [];
  for (let j = 0; j <= n; j++) for (let i = 0; i <= n; i++) lines.push(`v ${2 * i} ${2 * j} ${(i + j) % 2}`);
  for (let j = 0; j < n; j++)
    for (let i = 0; i < n; i++)
      lines.push(`f ${at(i, j)} ${at(i + 1, j)} ${at(i + 1, j + 1)} ${at(i, j + 1)}`);
  return `o grid\n${lines.join('\n')}\n`;
}

/** The process that computes for this one. */
function child(): number {
  const { stdout } = spawnSync('ps', ['-o', 'pid=,args=', '--ppid', String(process.pid)], {
    encoding: 'utf8',
  });
  const line = stdout.split('\n').find((each) => each.includes('compute/dist/child.js'));
  return Number.parseInt(line ?? '', 10);
}

describe('surveyFile', () => {
  let folder: string;
  let box: string;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'coveline-'));
    box = join(folder, 'box.stl');
    await writeFile(box, boxStl(100, 60, 30));
  });
  afterAll(() => rm(folder, { recursive: true }));

  test('reads, orients, surveys, and says what it took', async () => {
    const stages: string[] = [];
    const found = await surveyFile(
      { path: box, up: 'y', measures: ['flatFaces'] },
      { onProgress: (stage) => stages.push(stage) },
    );
    expect(triangleCount(found.model)).toBe(12);
    const [low, high] = bounds(found.model);
    // The file's y is up now: its x stays, its z points to -y.
    expect(low).toEqual([0, -30, 0]);
    expect(high).toEqual([100, 0, 60]);
    expect(Object.keys(found.outcome.result.measures)).toEqual(['flatFaces']);
    expect(found.outcome.fields.flatFaces).toHaveLength(12);
    expect(found.fileBytes).toBe(boxStl(100, 60, 30).length);
    expect(found.sha256).toBe(
      createHash('sha256')
        .update(boxStl(100, 60, 30))
        .digest('hex'),
    );
    expect(stages[0]).toBe('Reading box.stl');
    expect(found.peakMemory_MB).toBeGreaterThan(30);
    expect(found.seconds.read).toBeGreaterThan(0);
  });

  test('a unit for files without one, and a name for paths without an ending', async () => {
    const plain = join(folder, 'blob');
    await writeFile(plain, boxStl(1, 1, 1));
    const { model } = await surveyFile({ path: plain, fileName: 'cube.stl', unit: 'in', measures: [] });
    expect(bounds(model)[1]).toEqual([25.4, 25.4, 25.4]);
  });

  test('under a tilt the faces slope, and the model comes back level', async () => {
    const tilt = { axis: 'x', deg: 2 } as const;
    const { model, outcome } = await surveyFile({ path: box, tilt, measures: ['flatFaces'] });
    const [low, high] = bounds(model);
    expect(high[2] - low[2]).toBeCloseTo(30, 9);
    const top = outcome.result.measures.flatFaces?.places.find((place) => place.facing === 'up');
    expect(top?.slope_deg).toBeCloseTo(2, 6);
  });

  test.each([
    ['no such file', 'missing.stl', null, 'no-file', /missing\.stl" cannot be opened \(ENOENT\)/],
    ['garbage', 'garbage.stl', 'not a model at all', undefined, /garbage\.stl/],
    ['an empty file', 'empty.stl', '', 'empty', /empty/],
    ['a folder', '.', null, 'no-file', /is not a file/],
  ])('%s is one sentence', async (_, name, content, code, message) => {
    const path = join(folder, name);
    if (content !== null) await writeFile(path, content);
    const error = await surveyFile({ path }).catch((e: unknown) => e);
    expect(error).toBeInstanceOf(InputError);
    expect(error).toMatchObject({ message: expect.stringMatching(message), ...(code && { code }) });
    expect((error as Error).message).not.toContain('\n');
  });

  test('a file over the limit is told its size', async () => {
    const error = await surveyFile({ path: box }, { limits: { size_MB: 0.001 } }).catch((e: unknown) => e);
    expect(error).toBeInstanceOf(LimitError);
    expect(error).toMatchObject({ limit: 'size', message: expect.stringContaining('the limit is 0.001 MB') });
  });

  // On a machine that is busy with other things the first measure may not be finished in time.
  test('a limit leaves the measures that were finished', { retry: 2 }, async () => {
    const grid = join(folder, 'grid.obj');
    await writeFile(grid, gridObj(100));
    const stages: string[] = [];
    let busy = 0;
    const error = await surveyFile(
      // One measure after the other: with more threads the second begins while the first still runs.
      { path: grid, measures: ['standingLiquid', 'flatFaces'], threads: 1 },
      {
        limits: { time_s: 8 },
        // Frozen when the second measure begins, the child cannot go on until its time is over.
        onProgress: (stage) => {
          stages.push(stage);
          busy ||= child();
          if (/^flat/i.test(stage)) process.kill(busy, 'SIGSTOP');
        },
      },
    ).catch((e: unknown) => e);
    expect(stages.at(-1)).toMatch(/^flat/i);
    expect(error).toBeInstanceOf(SurveyLimitError);
    const { limit, partial } = error as SurveyLimitError;
    expect(limit).toBe('time');
    expect(Object.keys(partial.outcome.result.measures)).toEqual(['standingLiquid']);
    expect(triangleCount(partial.model)).toBe(2 * 100 * 100);
    expect(partial.fileBytes).toBe(gridObj(100).length);
  });

  test('an abort ends it', async () => {
    const controller = new AbortController();
    const run = surveyFile(
      { path: box },
      { signal: controller.signal, onProgress: () => controller.abort(new Error('enough')) },
    );
    await expect(run).rejects.toThrow('enough');
  });
});
