import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defaultSettings, type SurveyOutcome } from '@coveline/survey';
import { expect, test } from 'vitest';
import { readOutcome, writeOutcome } from './outcome-files.ts';
import { packFloats, unpackFloats } from './pack-floats.ts';

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
  await rm(folder, { recursive: true });
});

test('packed numbers read the same from any alignment', () => {
  const value = { a: new Float32Array([1, 2, 3]), b: 'ü' };
  const bytes = packFloats(value);
  for (let shift = 0; shift < 4; shift++) {
    const moved = new Uint8Array(bytes.length + shift);
    moved.set(bytes, shift);
    expect(unpackFloats(moved.subarray(shift))).toEqual(value);
  }
});

test('other bytes are refused with what they begin with', () => {
  expect(() => unpackFloats(Buffer.from('PNG and more, not ours at all'))).toThrow('starts with "PNG and "');
});
