import { brief } from '@coveline/project';
import { defaultSettings, type SurveyMeasures } from '@coveline/survey';
import { expect, test } from 'vitest';
import { boxModel } from '../geometry/box-model.fixture.ts';
import { review } from '../review.ts';
import type { Finding } from '../types.ts';
import { optionsFor, poolOf } from './options.ts';

const at = [100, 100, 705] as const;
const place = { id: 'p', parts: ['plate'], at_mm: at, bounds_mm: [at, at] as const };
const pool = { ...place, volume_mL: 40, depth_mm: 2, area_cm2: 200, deepest_mm: at, spill_mm: at };
const edge = { ...place, length_mm: 250, radius_mm: 0.5, angle_deg: 90, from: 'cad' as const };

function optionsOn(measures: SurveyMeasures, proposals: Parameters<typeof optionsFor>[2] = null) {
  const request = {
    model: boxModel([{ name: 'plate', low: [0, 0, 700], high: [300, 300, 705] }]),
    survey: { settings: defaultSettings, notes: [], measures },
    brief: brief.parse({ cleaning: { interval_h: 8 } }),
    partChanges: { plate: { areaClass: 'food' as const } },
    today: '2026-11-25',
  };
  const finding: Finding = review(request).findings.find((f) => f.measure !== null)!;
  return { finding, pool: poolOf(finding, request), options: optionsFor(request, finding, proposals) };
}

const trialPool = { volume_mL: 40, depth_mm: 2, deepest_mm: at };
const trial = {
  before: [trialPool],
  after: [],
  before_mL: 40,
  after_mL: 1,
  saved_mL: 39,
  caveats: [],
};
const drain = {
  hole: { at_mm: at, diameter_mm: 10 },
  trial: { ...trial, parts: ['plate'], exit_mm: at, length_mm: 5, heldHead_mm: 0.1 },
  left_mL: 3,
};
const standingLiquid = { total_mL: 40, places: [pool] };

test('a drain hole tells what it leaves, with what surface tension holds, and the litres of a year', () => {
  const { options, pool: found } = optionsOn({ standingLiquid }, { part: 'plate', drain });
  expect(found?.id).toBe('p');
  const [hole] = options;
  expect(hole.text).toBe('Drill a drain hole of 10 mm through the plate, at (100, 100, 705) mm.');
  const [stays, year] = hole.effects;
  expect(stays).toMatchObject({ before: 40, after: 3, unit: 'mL' });
  // 8760 h / 8 h = 1095 cleanings.
  expect(year.before).toBeCloseTo((40 * 1095) / 1000, 9);
  expect(year.after).toBeCloseTo((3 * 1095) / 1000, 9);
  expect(stays.working.inputs.find((i) => i.symbol === 'Vh')?.value).toBe(2);
});

test('a trial on other pools than the survey measured says so', () => {
  const { options } = optionsOn(
    { standingLiquid: { total_mL: 20, places: [{ ...pool, volume_mL: 20 }] } },
    { part: 'plate', drain },
  );
  expect(options[0].caveats.join()).toMatch(/take the difference, not the figure/);
});

test('without a trial, and for what cannot be told, only the remedies are listed', () => {
  const { options, finding } = optionsOn({ standingLiquid });
  expect(options.map((o) => o.text)).toEqual(finding.remedies.map((r) => r.text));
  expect(options.every((o) => o.effects.length === 0)).toBe(true);
});

test('rounded edges get the radius that the profile asks for', () => {
  const { options } = optionsOn({ insideCorners: { sharp_mm: 250, places: [edge] } });
  expect(options[0].text).toBe('Round these edges with 3 mm.');
  expect(options[0].effects.map((e) => [e.before, e.after])).toEqual([
    [0.5, 3],
    [250, 0],
  ]);
});
