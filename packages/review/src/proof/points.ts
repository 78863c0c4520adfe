/**
 * Sampling points where survey and round say that cleaning is hardest, not where it is easiest. A finding with a
 * place becomes a point; its kind decides the method.
 */
import {
  type Measured,
  type SamplingLimit,
  samplingLimitById,
  samplingMethodById,
} from '@coveline/catalogue';
import { sampleSizeForRate } from '@coveline/engineering';
import type { Vec3 } from '@coveline/model';
import { hazardsOf } from '../hazards/hazards.ts';
import type { Scene } from '../scene.ts';
import type { Finding, FindingNumber } from '../types.ts';

export interface SamplingPoint {
  /** `point~` and the finding that it comes from. */
  readonly id: string;
  readonly finding: string;
  readonly name: string;
  readonly parts: readonly string[];
  readonly at_mm: Vec3;
  /** Why here, one or two sentences. */
  readonly reason: string;
  readonly tests: readonly PointTest[];
  /** Days between two routine samples; an agreed criterion. */
  readonly everyDays: number;
}

export interface PointTest {
  readonly method: string;
  readonly of: Measured;
  readonly limit: string;
  /** When in the programme the sample is taken. */
  readonly when: 'afterCleaning' | 'afterDisinfection' | 'beforeStart';
  readonly neutraliser: boolean;
}

export interface ProofPlan {
  /** Hardest first. */
  readonly points: readonly SamplingPoint[];
  /** Samples that show, without a positive, that fewer than a tenth are positive. */
  readonly validation: FindingNumber | null;
  /** In words: what validation, verification and routine are, and what repeats them. */
  readonly stages: readonly { readonly name: string; readonly text: string }[];
}

/** More points than this are not swabbed in earnest on a bench machine or on a line. Common practice. */
const mostPoints = 20;
/** Two points on one part tell little more than one. */
const mostPerPart = 2;

export function proofPlanOf(scene: Scene, findings: readonly Finding[]): ProofPlan {
  const perPart = new Map<string, number>();
  const points: SamplingPoint[] = [];
  for (const f of findings) {
    if (points.length === mostPoints) break;
    const tests = testsAt(scene, f);
    const part = f.parts[0] ?? '';
    const count = perPart.get(part) ?? 0;
    if (tests.length === 0 || count === mostPerPart) continue;
    perPart.set(part, count + 1);
    points.push({
      id: `point~${f.id}`,
      finding: f.id,
      name: f.title,
      parts: f.parts,
      at_mm: f.at_mm,
      reason: `${f.why} ${f.consequence.reason}`,
      tests,
      everyDays: interval(f),
    });
  }
  return { points, validation: validationSamples(), stages };
}

/** Where a finding has no place on the surface, a swab has none either. */
function testsAt(scene: Scene, f: Finding): PointTest[] {
  if (f.areaClass === 'nonFood' || f.measure === null) return [];
  const face = faceMethod(f);
  if (face === null) return [];
  const { hazards } = hazardsOf(scene.brief);
  const has = (id: string) => hazards.some((h) => h.id === id);
  const tests: PointTest[] = [test('visual', 'visual', 'visual-clean', 'afterCleaning')];
  if (hazards.some((h) => h.kind === 'allergen'))
    tests.push(test('allergen', 'allergen', 'allergen-detected', 'afterCleaning'));
  if (f.areaClass === 'food') tests.push(test(face, 'aerobic', 'aerobic-research', 'afterDisinfection'));
  else tests.push(test(face, 'enterobacteriaceae', 'enterobacteriaceae-repealed', 'afterDisinfection'));
  if (has('listeria-growth'))
    tests.push(test(face === 'contact' ? 'sponge' : 'swab', 'listeria', 'listeria-face', 'beforeStart'));
  return tests;
}

function faceMethod(f: Finding): 'contact' | 'swab' | null {
  switch (f.measure) {
    case 'standingLiquid':
    case 'flatFaces':
      return 'contact';
    case 'insideCorners':
    case 'narrowGaps':
    case 'hollows':
    case 'fasteners':
    case 'handReach':
    case 'toolReach':
    case 'jetReach':
      return 'swab';
    // What hangs above, and room below, are no faces to swab.
    default:
      return null;
  }
}

function test(method: string, of: Measured, limit: string, when: PointTest['when']): PointTest {
  const { neutraliser } = samplingMethodById.get(method)!;
  return { method, of, limit, when, neutraliser: neutraliser && when !== 'afterCleaning' };
}

/** By rank: a week, two weeks, a month, a quarter. Agreed criterion, common practice. */
const days = { 1: 7, 2: 14, 3: 30, 4: 90 } as const;
const interval = (f: Finding) => days[f.consequence.rank];

function validationSamples(): FindingNumber | null {
  const found = sampleSizeForRate.run(
    { rate: 0.1 },
    { rate: 'fewer than a tenth of the samples positive; an agreed criterion' },
  );
  if (found.kind === 'refused') return null;
  const [value] = Object.values(found.values);
  return { label: 'Samples without a positive', value, unit: '1', working: found.working };
}

const stages: ProofPlan['stages'] = [
  {
    name: 'Validation',
    text: 'Before first use and after each change of machine, product or programme: every point, three runs in a row, from the soiled state, after the longest run that is allowed.',
  },
  {
    name: 'Verification',
    text: 'Each quarter: every point once, and the records of cleaning and of the instruments.',
  },
  {
    name: 'Routine',
    text: 'At the interval of each point: looked at each time, sampled in turn, so that no place is left out.',
  },
  {
    name: 'Repeat',
    text: 'A result that asks for action, a change of part, product, agent or people, a longer run, and water found where there should be none start validation of that point again.',
  },
];

/** What a result means against its limit. `value` null: below the detection limit `lod`. */
export function verdictOn(
  limit: SamplingLimit,
  value: number | null,
  lod: number | null,
): { readonly verdict: 'pass' | 'alert' | 'act' | 'notShown'; readonly reason: string } {
  if (value === null) {
    if (lod === null) return { verdict: 'notShown', reason: 'Below a detection limit that is not given.' };
    // A search is passed when nothing is found; a count only when what cannot be seen lies below the limit.
    if (limit.actAbove > 0 && lod > limit.actAbove)
      return {
        verdict: 'notShown',
        reason: `The detection limit ${lod} lies above the limit ${limit.actAbove}.`,
      };
    return { verdict: 'pass', reason: `Below ${lod}, the detection limit.` };
  }
  if (value > limit.actAbove)
    return { verdict: 'act', reason: `${value} is above ${limit.actAbove} (${limit.standing}).` };
  if (limit.alertAbove !== undefined && value > limit.alertAbove)
    return { verdict: 'alert', reason: `${value} is above ${limit.alertAbove}, where somebody looks.` };
  return { verdict: 'pass', reason: `${value} is not above ${limit.actAbove}.` };
}

export const limitOfTest = ({ limit }: PointTest): SamplingLimit => samplingLimitById.get(limit)!;
