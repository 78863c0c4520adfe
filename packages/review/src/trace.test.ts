import { type Answer, brief, type Decision } from '@coveline/project';
import { defaultSettings } from '@coveline/survey';
import { expect, test } from 'vitest';
import { boxModel } from './geometry/box-model.fixture.ts';
import { review } from './review.ts';
import { traceOf } from './trace.ts';

const at = [100, 100, 705] as const;
const result = review({
  model: boxModel([{ name: 'plate', low: [0, 0, 700], high: [300, 300, 705] }]),
  survey: {
    settings: defaultSettings,
    notes: [],
    measures: {
      standingLiquid: {
        total_mL: 8,
        places: [
          {
            id: 'p',
            parts: ['plate'],
            at_mm: at,
            bounds_mm: [at, at],
            volume_mL: 8,
            depth_mm: 2,
            area_cm2: 40,
            deepest_mm: at,
            spill_mm: at,
          },
        ],
      },
    },
  },
  brief: brief.parse({}),
  partChanges: { plate: { areaClass: 'food' } },
  answers: {
    'gen-no-coat': {
      state: 'asItShould',
      words: '',
      reading: '',
      by: 'R. Example',
      on: '2026-11-25',
      photographs: [],
    } satisfies Answer,
  },
  today: '2026-11-25',
});
const [finding] = result.findings;
const concession: Decision = {
  kind: 'concession',
  reason: 'The guide needs it.',
  because: 'function',
  controlMeasures: [{ what: 'Wipe it at each change of shift.', interval: '8 h', owner: 'operator' }],
  grantedBy: 'R. Example',
  until: '2027-01-01',
};

test('a requirement leads to place, decision, control measure, sample and cleaning, and back', () => {
  const { rows } = traceOf(result, { [finding.id]: concession });
  const row = rows.find((r) => r.requirement === 'gen-drain')!;
  expect(row.findings).toEqual([
    {
      id: finding.id,
      places: ['p'],
      decision: concession,
      controls: concession.controlMeasures,
      points: [`point~${finding.id}`],
      groups: [expect.any(String)],
    },
  ]);
  const back = rows.filter((r) => r.findings.some((f) => f.points.includes(result.proof.points[0].id)));
  expect(back.map((r) => r.requirement)).toContain('gen-drain');
});

test('every requirement in force counts once in the coverage', () => {
  const { rows, coverage } = traceOf(result, {});
  expect(Object.values(coverage).reduce((a, b) => a + b, 0)).toBe(rows.length);
  expect(coverage.looked).toBe(1);
  expect(coverage.computed).toBeGreaterThan(0);
});
