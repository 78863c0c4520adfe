import { expect, test } from 'vitest';
import { hollowBox, tray } from '../../../validation/shapes/box.ts';
import { modelOf, placed } from '../../../validation/shapes/mesh.ts';
import type { SurveyOutcome } from './result.ts';
import { defaultSettings } from './settings.ts';
import { SurveyStopped } from './stopped.ts';
import { survey } from './survey.ts';

const model = modelOf([
  { id: 'tray', mesh: tray(300, 200, 20, 2) },
  { id: 'tube', mesh: hollowBox(400, 30, 30, 2), placement: placed({ move: [0, 400, 0] }) },
]);

test('all measures of the package when none is named', async () => {
  const { result, fields, drawings } = await survey(model);
  expect(Object.keys(result.measures).sort()).toEqual(Object.keys(fields).sort());
  expect(result.measures.standingLiquid?.places).toHaveLength(1);
  expect(result.measures.hollows?.closed).toHaveLength(1);
  expect(result.settings).toEqual(defaultSettings);
  for (const place of result.measures.standingLiquid?.places ?? []) expect(drawings.has(place.id)).toBe(true);
  const triangles = model.shapes.reduce((n, s) => n + s.triangles.length / 3, 0);
  for (const field of Object.values(fields)) expect(field).toHaveLength(triangles);
});

test('only the asked measures', async () => {
  const { result } = await survey(model, { measures: ['hollows'], settings: { pitch_mm: 3 } });
  expect(Object.keys(result.measures)).toEqual(['hollows']);
  expect(result.settings.pitch_mm).toBe(3);
});

test('warnings of the reader are handed on', async () => {
  const notes = [
    { level: 'warning', text: 'One face was lost.' },
    { level: 'info', text: 'Read in inches.' },
  ] as const;
  const { result } = await survey({ ...model, notes }, { measures: ['hollows'] });
  expect(result.notes).toContain('One face was lost.');
  expect(result.notes).not.toContain('Read in inches.');
});

test.each([
  ['x', 'y', 1],
  ['y', 'x', -1],
] as const)(
  'tilted about %s the tray keeps a wedge, told on the level machine',
  async (axis, across, sense) => {
    const deg = 3;
    const { result, drawings } = await survey(model, { measures: ['standingLiquid'], tilt: { axis, deg } });
    const [pool] = result.measures.standingLiquid?.places ?? [];
    const fall = Math.tan((deg * Math.PI) / 180);
    const [length, width] = axis === 'x' ? [200, 300] : [300, 200];
    const expected =
      width * (20 / fall <= length ? 400 / (2 * fall) : length * 20 - (length ** 2 * fall) / 2);
    expect(Math.abs((pool.volume_mL * 1000) / expected - 1)).toBeLessThan(0.005);
    // A positive turn lifts the far end in y, or sinks the far end in x: the wedge lies at the other.
    const k = across === 'y' ? 1 : 0;
    expect(pool.deepest_mm[k]).toBeCloseTo(sense > 0 ? 0 : 300, 0);
    expect(pool.deepest_mm[2]).toBeCloseTo(0, 1);
    expect(pool.spill_mm[2]).toBeCloseTo(20, 1);
    const drawn = drawings.get(pool.id)?.triangles as Float32Array;
    for (let i = 0; i < drawn.length; i += 3) {
      const along = sense > 0 ? drawn[i + k] : length - drawn[i + k];
      expect(drawn[i + 2]).toBeCloseTo(20 - along * fall, 0);
    }
  },
);

test('progress, what is finished so far, and a stop between two steps', async () => {
  const stages: string[] = [];
  const kept: SurveyOutcome[] = [];
  const signal = { aborted: false };
  const run = survey(
    model,
    { measures: ['standingLiquid', 'hollows'] },
    {
      signal,
      onProgress: (stage) => stages.push(stage),
      onMeasure: (soFar) => {
        kept.push(soFar);
        signal.aborted = true;
      },
    },
  );
  await expect(run).rejects.toThrow(SurveyStopped);
  expect(stages).toContain('standing liquid');
  expect(kept).toHaveLength(1);
  expect(kept[0].result.measures.standingLiquid?.places).toHaveLength(1);
});
