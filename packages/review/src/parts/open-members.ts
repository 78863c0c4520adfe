/** Which parts are hollow members that are open: tubes with open ends or holes in their walls. */
import type { SurveyResult } from '@coveline/survey';
import { innerWalls } from '../geometry/inner-walls.ts';
import type { Known } from './known.ts';

/** Parts that carry, and parts that no name explains. Inside lines, drives and boxes air is meant to be. */
const carries = new Set(['frame', 'feet', 'hollow', 'hood', undefined]);
/** A socket or a bush is no hollow member. */
const leastInner_cm2 = 60;
const leastLength_mm = 100;

/**
 * Inner wall in cm2 by part index, for parts in which the survey found neither a closed hollow nor a blind channel:
 * their inside is joined with the outside.
 */
export function openMembersOf(known: Known, survey: SurveyResult): ReadonlyMap<number, number> {
  const { model, extents, is } = known;
  const { closed = [], blind = [] } = survey.measures.hollows ?? {};
  const told = new Set([...closed, ...blind].flatMap((place) => place.parts));
  const ofShape = new Map<number, number>();
  const out = new Map<number, number>();
  for (let p = 0; p < model.parts.length; p++) {
    const { low, high } = extents[p];
    const longest = Math.max(...[0, 1, 2].map((i) => high[i] - low[i]));
    if (known.isPack(p) || !carries.has(is[p]?.element) || longest < leastLength_mm) continue;
    if (told.has(model.parts[p].id)) continue;
    const { shape } = model.parts[p];
    const inner = ofShape.get(shape) ?? innerWalls(model, p);
    ofShape.set(shape, inner);
    if (inner >= leastInner_cm2) out.set(p, inner);
  }
  return out;
}
