/** Which of the open hollow members that were found carry something: in lines, drives and boxes air is meant to be. */
import type { OpenMember, Pool, SurveyResult } from '@coveline/survey';
import type { Known } from './known.ts';

/** Parts that carry, and parts that no name explains. */
const carries = new Set(['frame', 'feet', 'hollow', 'hood', undefined]);
/** Less inner wall is a sleeve or a bush. */
const leastInner_cm2 = 100;
/** A part that keeps liquid over this share of its height is a vessel. */
const vesselShare = 0.5;

/** By part index. */
export function openMembersOf(known: Known, survey: SurveyResult): ReadonlyMap<number, OpenMember> {
  const vessels = new Set(vesselsIn(known, survey).flatMap(({ parts }) => parts));
  const out = new Map<number, OpenMember>();
  for (const member of survey.measures.hollows?.openMembers ?? []) {
    const [id] = member.parts;
    const p = known.indexOf.get(id);
    if (p === undefined || known.isPack(p) || !carries.has(known.is[p]?.element) || vessels.has(id)) continue;
    if (member.inner_cm2 >= leastInner_cm2) out.set(p, member);
  }
  return out;
}

/** Pools that fill what they stand in. */
function vesselsIn({ indexOf, extents }: Known, survey: SurveyResult): readonly Pool[] {
  return (survey.measures.standingLiquid?.places ?? []).filter((pool) =>
    pool.parts.some((id) => {
      const p = indexOf.get(id);
      return p !== undefined && pool.depth_mm >= vesselShare * (extents[p].high[2] - extents[p].low[2]);
    }),
  );
}
