/** Capped branches of product lines, with the ratio by every rule's own datum. */
import { formatQuantity } from '@coveline/quantity';
import type { Draft, RuleResult } from '../draft.ts';
import { type CappedBranch, cappedBranches } from '../geometry/capped-branches.ts';
import { TheName, theName } from '../names/display.ts';
import { derived, input, measured } from '../numbers/measured.ts';
import { areaBetween, elementOf, firstInForce, limitOf, type Scene } from '../scene.ts';

const lines = new Set(['pipe', 'tank', 'valve', 'pump', 'sensor']);

export function deadLegs(scene: Scene): RuleResult {
  const told = new Set((scene.survey.measures.hollows?.blind ?? []).flatMap((b) => b.parts));
  const isLine = (p: number) => lines.has(elementOf(scene, p) ?? '') && !told.has(scene.parts[p].partId);
  const branches = cappedBranches(scene.known.model, isLine);
  return {
    drafts: branches.flatMap((branch) => {
      const draft = draftOf(scene, branch);
      return draft ? [draft] : [];
    }),
    settles: [],
    basis: `${branches.length} capped branches found in lines`,
    notes: [],
  };
}

function draftOf(scene: Scene, branch: CappedBranch): Draft | null {
  const { tee, cap, fromAxis_mm, mainBore_mm, branchBore_mm, end_mm } = branch;
  const area = tee === cap ? scene.parts[tee].areaClass : areaBetween(scene, [tee, cap]);
  const demand = firstInForce(scene, ['pipe-dead'], area);
  const limit = demand && limitOf(demand, 'ratio', area);
  const fromWall = fromAxis_mm - mainBore_mm / 2;
  const ratio = fromWall / branchBore_mm;
  if (!demand || limit?.atMost === undefined || ratio <= limit.atMost) return null;
  const inputs = [
    input('La', 'axis of the main to the cap', fromAxis_mm, 'mm'),
    input('D', 'bore of the main', mainBore_mm, 'mm'),
    input('d', 'bore of the branch', branchBore_mm, 'mm'),
  ];
  const holds = 'straight branch whose axis crosses that of the main';
  const by = (label: string, value: number, formula: string) =>
    derived(label, value, '1', formula, inputs, holds);
  const name = theName(scene.known.model.parts[cap].name);
  return {
    demand,
    limit,
    status: 'notMet',
    measure: 'hollows',
    anchor: `branch|${scene.parts[tee].partId}|${end_mm.map((x) => Math.round(x / 5)).join()}`,
    places: [],
    parts: tee === cap ? [tee] : [tee, cap],
    area,
    title: `${TheName(scene.known.model.parts[tee].name)} has a dead end: ${formatQuantity(fromWall, 'mm', { digits: 3 })} from the wall of the main to ${name}, ${ratio.toFixed(1)} times its bore of ${formatQuantity(branchBore_mm, 'mm', { digits: 3 })}`,
    numbers: [
      by('From the wall of the main, over the bore of the branch', ratio, 'r = (La - D/2) / d'),
      by('From the axis of the main, over the bore of the branch', fromAxis_mm / branchBore_mm, 'r = La / d'),
      by(
        'From the wall of the main, over the bore of the main',
        fromWall / mainBore_mm,
        'r = (La - D/2) / D',
      ),
      measured('Length', fromWall, 'mm', 'inner wall of the main to the cap, along the axis of the branch'),
    ],
    why: 'Cleaning liquid does not turn over in it: soil stays, strength and temperature are not reached at its end, and what grows there seeds every batch.',
    harm: 'keeps',
    weight: ratio,
    weightLabel: 'bores from the wall of the main',
    caveats: [
      'Rules differ in where length starts and whose bore divides it: name the rule with the number.',
    ],
  };
}
