/** Which parts are hollow members that are open: tubes with open ends or holes in their walls. */
import type { Pool, SurveyResult } from '@coveline/survey';
import type { Extent } from '../geometry/extent.ts';
import { innerWalls } from '../geometry/inner-walls.ts';
import type { Known } from './known.ts';

/** Parts that carry, and parts that no name explains. Inside lines, drives and boxes air is meant to be. */
const carries = new Set(['frame', 'feet', 'hollow', 'hood', undefined]);
/** A socket or a bush is no hollow member. */
const leastInner_cm2 = 100;
const leastLength_mm = 100;
/** A member is at least this many times as long as wide; a cup or a box is none. */
const slender = 3;
/** A part that keeps liquid over this share of its height is a vessel. */
const vesselShare = 0.5;

/**
 * Inner wall in cm2 by part index, for parts in which the survey found neither a closed hollow nor a blind channel:
 * their inside is joined with the outside.
 */
export function openMembersOf(known: Known, survey: SurveyResult): ReadonlyMap<number, number> {
  const { model, extents, is } = known;
  const { closed = [], blind = [] } = survey.measures.hollows ?? {};
  const told = new Set([...closed, ...blind, ...vessels(known, survey)].flatMap((place) => place.parts));
  const ofShape = new Map<number, number>();
  const out = new Map<number, number>();
  for (let p = 0; p < model.parts.length; p++) {
    if (known.isPack(p) || !carries.has(is[p]?.element) || !isMember(extents[p])) continue;
    if (told.has(model.parts[p].id)) continue;
    const { shape } = model.parts[p];
    const inner = ofShape.get(shape) ?? innerWalls(model, p);
    ofShape.set(shape, inner);
    if (inner >= leastInner_cm2) out.set(p, inner);
  }
  return out;
}

function isMember({ low, high }: Extent): boolean {
  const [, wide, long] = [0, 1, 2].map((i) => high[i] - low[i]).sort((a, b) => a - b);
  return long >= leastLength_mm && long >= slender * wide;
}

/** Pools that fill what they stand in. */
function vessels({ indexOf, extents }: Known, survey: SurveyResult): readonly Pool[] {
  return (survey.measures.standingLiquid?.places ?? []).filter((pool) =>
    pool.parts.some((id) => {
      const p = indexOf.get(id);
      return p !== undefined && pool.depth_mm >= vesselShare * (extents[p].high[2] - extents[p].low[2]);
    }),
  );
}
