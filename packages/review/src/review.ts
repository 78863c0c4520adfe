/** The review: each rule draws up what it finds, and the findings are put in order. */
import type { MeasureKey } from '@coveline/catalogue';
import { cleaningOf } from './cleaning/programme.ts';
import type { RuleResult } from './draft.ts';
import { findingOf, type Ranked } from './finding.ts';
import { proofPlanOf } from './proof/points.ts';
import type { ReviewRequest } from './request.ts';
import { roundOf } from './round/round.ts';
import { cableBundles } from './rules/cable-bundles.ts';
import { clearances } from './rules/clearances.ts';
import { deadLegs } from './rules/dead-legs.ts';
import { doorsAndWalls } from './rules/doors-and-walls.ts';
import { fasteners } from './rules/fasteners.ts';
import { firstAir } from './rules/first-air.ts';
import { flatFaces } from './rules/flat-faces.ts';
import { hollows } from './rules/hollows.ts';
import { insideCorners } from './rules/inside-corners.ts';
import { jets } from './rules/jets.ts';
import { joints } from './rules/joints.ts';
import { materials } from './rules/materials.ts';
import { narrowGaps } from './rules/narrow-gaps.ts';
import { overhead } from './rules/overhead.ts';
import { reach } from './rules/reach.ts';
import { roundFindings } from './rules/round.ts';
import { standingLiquid } from './rules/standing-liquid.ts';
import { isComputed, type Scene, sceneOf } from './scene.ts';
import { statusesOf } from './status.ts';
import type { Finding, ReviewResult } from './types.ts';

/** By the measure that each needs, in the order in which findings of equal rank are told. */
const rules: readonly (readonly [MeasureKey, (scene: Scene) => RuleResult])[] = [
  ['standingLiquid', standingLiquid],
  ['overhead', overhead],
  ['openSky', firstAir],
  ['hollows', hollows],
  ['hollows', deadLegs],
  ['narrowGaps', narrowGaps],
  ['narrowGaps', joints],
  ['narrowGaps', cableBundles],
  ['insideCorners', insideCorners],
  ['flatFaces', flatFaces],
  ['fasteners', fasteners],
  ['handReach', reach],
  ['jetReach', jets],
  ['clearances', clearances],
  ['clearances', doorsAndWalls],
];

/**
 * Judges a surveyed model by the brief and by what people set on its parts. Pure: the same request gives the same
 * result. Throws a RangeError on a profile that the catalogue does not have.
 */
export function review(request: ReviewRequest): ReviewResult {
  const scene = sceneOf(request);
  const results: RuleResult[] = [];
  const notes: string[] = [...healthNotes(scene), ...setOnMissing(scene, request)];
  for (const [measure, rule] of rules) {
    if (isComputed(scene, measure)) results.push(rule(scene));
    else {
      const note = `The survey has not computed "${measure}", so nothing is said about it.`;
      if (!notes.includes(note)) notes.push(note);
    }
  }
  results.push(materials(scene), roundFindings(scene));
  const findings = inOrder(results.flatMap((r) => r.drafts.map((draft) => findingOf(scene, draft))));
  return {
    schema: 'coveline.review/1',
    findings,
    requirements: statusesOf(scene, findings, results),
    parts: scene.parts,
    round: roundOf(scene),
    cleaning: cleaningOf(scene),
    proof: proofPlanOf(scene, findings),
    notes: [...notes, ...results.flatMap((r) => r.notes)],
  };
}

/** What people saw comes after what was measured. */
const kinds: readonly (MeasureKey | null)[] = [...new Set(rules.map(([measure]) => measure)), null];

/** Rank first; within it what is less slight, then by kind, as numbers of different kinds do not compare; then weight. */
function inOrder(ranked: readonly Ranked[]): readonly Finding[] {
  const kind = ({ finding }: Ranked) => kinds.indexOf(finding.measure);
  return [...ranked]
    .sort(
      (a, b) =>
        a.finding.consequence.rank - b.finding.consequence.rank ||
        a.beyond - b.beyond ||
        kind(a) - kind(b) ||
        b.finding.consequence.weight - a.finding.consequence.weight ||
        (a.finding.id < b.finding.id ? -1 : 1),
    )
    .map(({ finding }) => finding);
}

/** What is wrong with the model itself comes first: numbers that stand on it are no better. */
function healthNotes({ survey }: Scene): string[] {
  return (survey.health?.faults ?? []).map(({ text }) => `The model: ${text}`);
}

function setOnMissing(scene: Scene, { partChanges }: ReviewRequest): string[] {
  const missing = Object.keys(partChanges).filter((id) => !scene.known.indexOf.has(id));
  return missing.length === 0
    ? []
    : [
        `What was set on ${missing.length} parts is left aside, because this model does not have them: ${missing.join(', ')}.`,
      ];
}
