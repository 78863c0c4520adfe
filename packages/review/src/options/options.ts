/**
 * The options for a finding side by side: what could be tried or told by definition comes first, then the remedies of
 * the requirement, of which nothing can be told before they are drawn.
 */
import type { Pool, Proposals } from '@coveline/survey';
import type { ReviewRequest } from '../request.ts';
import { limitOf, type Scene, sceneOf } from '../scene.ts';
import type { Finding } from '../types.ts';
import { drainOptions } from './drain-options.ts';
import { closeJoints, cutBranch, roundEdges } from './limit-options.ts';
import type { Option } from './option.ts';

/** The pool of a finding that is worth a trial: its largest; undefined for findings of another kind. */
export function poolOf(finding: Finding, { survey }: Pick<ReviewRequest, 'survey'>): Pool | undefined {
  const pools = survey.measures.standingLiquid?.places ?? [];
  return finding.measure === 'standingLiquid' ? pools.find((p) => p.id === finding.places[0]) : undefined;
}

/** `proposals`: of the survey for `poolOf` this finding; null where it has none. */
export function optionsFor(
  request: ReviewRequest,
  finding: Finding,
  proposals: Proposals | null,
): readonly Option[] {
  const scene = sceneOf(request);
  const remedies = finding.remedies.map((r): Option => ({ ...r, effects: [], caveats: [] }));
  return [...computed(scene, request, finding, proposals), ...remedies];
}

function computed(
  scene: Scene,
  request: ReviewRequest,
  finding: Finding,
  proposals: Proposals | null,
): readonly Option[] {
  const pool = poolOf(finding, request);
  if (pool && proposals) {
    const names = new Map(request.model.parts.map((p) => [p.id, p.name]));
    return drainOptions(proposals, pool, request.brief, (id) => names.get(id) ?? id);
  }
  const demand = scene.demands.get(finding.requirement);
  if (!demand) return [];
  const { hollows, insideCorners, narrowGaps } = request.survey.measures;
  const joints = narrowGaps?.joints.filter((j) => finding.places.includes(j.id)) ?? [];
  if (finding.measure === 'narrowGaps' && joints.length > 0) return closeJoints(joints);
  if (finding.measure === 'hollows') {
    const leg = hollows?.deadLegs?.find((l) => finding.places.includes(l.id));
    const most = limitOf(demand, 'ratio', finding.areaClass)?.atMost;
    return leg && most !== undefined ? [cutBranch(leg, most)] : [];
  }
  if (finding.measure === 'insideCorners') {
    const corners = insideCorners?.places.filter((c) => finding.places.includes(c.id)) ?? [];
    const radii = corners.map((c) => limitOf(demand, 'radius', finding.areaClass, c.angle_deg)?.atLeast ?? 0);
    const least_mm = Math.max(0, ...radii);
    return least_mm > 0 ? [roundEdges(corners, least_mm)] : [];
  }
  return [];
}
