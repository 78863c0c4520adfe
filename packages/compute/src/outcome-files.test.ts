import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defaultSettings, type SurveyOutcome } from '@coveline/survey';
import { expect, test } from 'vitest';
import { outcomeFiles, readDrawings, readOutcome, writeOutcome } from './outcome-files.ts';

test('a survey comes back from its folder as it was, NaN included', async () => {
  const outcome: SurveyOutcome = {
    result: {
      settings: defaultSettings,
      notes: ['Größe und Ω'],
      measures: { hollows: { closed: [], blind: [] } },
    },
    fields: { standingLiquid: new Float32Array([Number.NaN, 1.5, -0]), flatFaces: new Float32Array(0) },
    drawings: new Map([
      ['pool-1', { triangles: new Float32Array([0, 1, 2, 3, 4, 5, 6, 7, 8]) }],
      ['corner-1', { lines: [new Float32Array([0, 0, 0, 1, 1, 1]), new Float32Array([2, 2, 2])] }],
      ['bare', {}],
    ]),
  };
  const folder = await mkdtemp(join(tmpdir(), 'coveline-'));
  writeOutcome(folder, outcome);
  expect(await readOutcome(folder)).toEqual(outcome);
  const some = await readDrawings(
    join(folder, outcomeFiles.drawings),
    (id, floats) => id !== 'pool-1' && floats > 0,
  );
  expect([...some]).toEqual([['corner-1', outcome.drawings.get('corner-1')]]);
  await rm(folder, { recursive: true });
});
