import { createHash } from 'node:crypto';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { outcomeFiles } from './outcome-files.ts';
import { surveyFile, surveyFileInto } from './survey-file.ts';

/** An OBJ of trays, boxes and a hollow box that stand, overlap and leave narrow gaps: something for each measure. */
function machineObj(): string {
  const lines: string[] = [];
  let used = 0;
  const box = (low: number[], size: number[], inward = false): void => {
    for (let i = 0; i < 8; i++)
      lines.push(`v ${[0, 1, 2].map((k) => low[k] + ((i >> k) & 1 ? size[k] : 0)).join(' ')}`);
    const quads = ['1 3 4 2', '5 6 8 7', '1 2 6 5', '3 7 8 4', '1 5 7 3', '2 4 8 6'];
    for (const quad of quads) {
      const corners = quad.split(' ').map((i) => Number(i) + used);
      lines.push(`f ${(inward ? corners.reverse() : corners).join(' ')}`);
    }
    used += 8;
  };
  for (let n = 0; n < 12; n++) {
    const x = 130 * n;
    const wall = 2 + (n % 3);
    const sides = [
      [0, 0, 120, 80, wall],
      [0, 0, 120, wall, 30],
      [0, 80 - wall, 120, wall, 30],
      [0, 0, wall, 80, 30],
      [120 - wall, 0, wall, 80, 30],
    ];
    for (const [i, [dx, y, width, depth, height]] of sides.entries()) {
      lines.push(`o tray ${n} side ${i}`);
      box([x + dx, y, 100], [width, depth, height]);
    }
    lines.push(`o plate ${n}`);
    box([x + 10, 100, 100], [60, 60, 10]);
    lines.push(`o cover ${n}`);
    box([x + 10, 100, 110.3 + n * 0.02], [60, 60, 8]);
    lines.push(`o hollow ${n}`);
    box([x, 200, 50], [50, 50, 50]);
    box([x + 5, 205, 55], [40, 40, 40], true);
  }
  return `${lines.join('\n')}\n`;
}

let folder: string;
let path: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'coveline-threads-'));
  path = join(folder, 'machine.obj');
  await writeFile(path, machineObj());
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function digests(threads: number): Promise<string[]> {
  const into = await mkdtemp(join(folder, 'run-'));
  await surveyFileInto(into, { path, threads });
  const files = await Promise.all(Object.values(outcomeFiles).map((name) => readFile(join(into, name))));
  const survey = JSON.parse(files[0].toString());
  expect(survey.measures.standingLiquid.places).toHaveLength(12);
  expect(survey.measures.hollows.closed).toHaveLength(12);
  return files.map((bytes) => createHash('sha256').update(bytes).digest('hex'));
}

test('the files of a survey are the same bytes for 1, 2 and 8 threads', async () => {
  const one = await digests(1);
  expect(await digests(2)).toEqual(one);
  expect(await digests(8)).toEqual(one);
}, 240_000);

/** An OBJ of a bumpy sheet of n by n cells. */
function sheetObj(n: number): string {
  const at = (i: number, j: number) => j * (n + 1) + i + 1;
  const lines = ['o sheet'];
  for (let j = 0; j <= n; j++) for (let i = 0; i <= n; i++) lines.push(`v ${2 * i} ${2 * j} ${(i + j) % 2}`);
  for (let j = 0; j < n; j++)
    for (let i = 0; i < n; i++)
      lines.push(`f ${at(i, j)} ${at(i + 1, j)} ${at(i + 1, j + 1)} ${at(i, j + 1)}`);
  return `${lines.join('\n')}\n`;
}

test('a survey of 180 000 triangles stops within 100 ms of a cancel at twelve moments, seed 3', async () => {
  const sheet = join(folder, 'sheet.obj');
  await writeFile(sheet, sheetObj(300));
  let seed = 3;
  const times: number[] = [];
  for (let k = 0; k < 12; k++) {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    const cancel = new AbortController();
    let asked = 0;
    const timer = setTimeout(
      () => {
        asked = performance.now();
        cancel.abort();
      },
      50 + (seed / 2 ** 32) * 4000,
    );
    const end = await surveyFile({ path: sheet, threads: 2 }, { signal: cancel.signal }).catch(
      (e: unknown) => e,
    );
    clearTimeout(timer);
    if (asked === 0) continue;
    const waited = performance.now() - asked;
    // It was done as the cancel came.
    if (!(end instanceof Error) && waited < 100) continue;
    times.push(waited);
    expect(end).toMatchObject({ name: 'AbortError' });
  }
  expect(times.length).toBeGreaterThan(6);
  // One of them may meet another test that keeps the whole machine busy.
  times.sort((a, b) => a - b);
  expect(times[times.length - 2]).toBeLessThan(100);
}, 120_000);
