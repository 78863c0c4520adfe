/** Dead legs of product lines, with the ratio by every rule's own datum. */
import { formatQuantity } from '@coveline/quantity';
import type { DeadLeg } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { TheName, theName } from '../names/display.ts';
import { derived, input, measured } from '../numbers/measured.ts';
import { areaBetween, elementOf, firstInForce, limitOf, type Scene } from '../scene.ts';

const lines = new Set(['pipe', 'tank', 'valve', 'pump', 'sensor']);
/** What is longer is a line of its own. */
const longest = 10;

export function deadLegs(scene: Scene): RuleResult {
  const legs = scene.survey.measures.hollows?.deadLegs ?? [];
  return {
    drafts: legs.flatMap((leg) => {
      const draft = draftOf(scene, leg);
      return draft ? [draft] : [];
    }),
    settles: [],
    basis: `${legs.length} closed branches found off tubes that lead on`,
    notes: [],
  };
}

function draftOf(scene: Scene, leg: DeadLeg): Draft | null {
  const { indexOf, model } = scene.known;
  const [branch, end] = [indexOf.get(leg.branchPart), indexOf.get(leg.endPart)];
  if (branch === undefined || end === undefined) return null;
  if (!lines.has(elementOf(scene, branch) ?? '') || leg.ratioFromWall > longest) return null;
  const area = branch === end ? scene.parts[branch].areaClass : areaBetween(scene, [branch, end]);
  const demand = firstInForce(scene, ['pipe-dead'], area);
  const limit = demand && limitOf(demand, 'ratio', area);
  const { fromAxis_mm, fromWall_mm: fromWall, main_mm, bore_mm, ratioFromWall: ratio } = leg;
  if (!demand || limit?.atMost === undefined || ratio <= limit.atMost) return null;
  const inputs = [
    input('La', 'axis of the main to the closed end', fromAxis_mm, 'mm'),
    input('L', 'inner wall of the main to the closed end', fromWall, 'mm'),
    input('D', 'bore of the main', main_mm, 'mm'),
    input('d', 'bore of the branch', bore_mm, 'mm'),
  ];
  const holds = 'straight bores, from the model as it is drawn';
  const by = (label: string, value: number, formula: string) =>
    derived(label, value, '1', formula, inputs, holds);
  return {
    demand,
    limit,
    status: 'notMet',
    measure: 'hollows',
    anchor: `branch|${leg.branchPart}|${leg.at_mm.map((x) => Math.round(x / 5)).join()}`,
    places: [leg],
    parts: branch === end ? [branch] : [branch, end],
    area,
    title: `${TheName(model.parts[branch].name)} has a dead end: ${formatQuantity(fromWall, 'mm', { digits: 3 })} from the wall of the main to ${theName(model.parts[end].name)}, ${ratio.toFixed(1)} times its bore of ${formatQuantity(bore_mm, 'mm', { digits: 3 })}`,
    numbers: [
      by('From the wall of the main, over the bore of the branch', ratio, 'r = L / d'),
      by('From the axis of the main, over the bore of the branch', leg.ratioFromAxis, 'r = La / d'),
      by('From the wall of the main, over the bore of the main', fromWall / main_mm, 'r = L / D'),
      measured(
        'Length',
        fromWall,
        'mm',
        'inner wall of the main to the closed end, along the axis of the branch',
      ),
    ],
    why: 'Cleaning liquid does not turn over in it: soil stays, strength and temperature are not reached at its end, and what grows there seeds every batch.',
    harm: 'keeps',
    weight: ratio,
    weightLabel: 'bores from the wall of the main',
    caveats: [
      ...(leg.caveats ?? []),
      'Rules differ in where length starts and whose bore divides it: name the rule with the number.',
    ],
  };
}
