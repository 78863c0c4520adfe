/** Proposes how a part is joined to its neighbours. */
import type { JointKind } from '@coveline/project';
import type { SurveyResult } from '@coveline/survey';
import { overlap } from '../geometry/extent.ts';
import { theName } from '../names/display.ts';
import type { Proposal } from './area.ts';
import type { Known } from './known.ts';

const words: readonly (readonly [RegExp, JointKind, string])[] = [
  [
    /\b(welded|weldment|geschweisst|geschweißt|schweissteil|soude|soudé|soldad[oa]|saldat[oa]|gelast)\b/i,
    'welded',
    'welded',
  ],
  [/\b(clamp|clamped|schelle|collier)\b/i, 'clamped', 'a clamp'],
  [/\b(bonded|glued|geklebt|collé|incollat[oa])\b/i, 'bonded', 'bonded'],
  [/\b(pressed|press-?in|push-?in|eingepresst)\b/i, 'pressed', 'pressed in'],
];

export function proposeJoint(
  known: Known,
  part: number,
  touching: ReadonlyMap<number, readonly number[]>,
): Proposal<JointKind> {
  const { name } = known.model.parts[part];
  for (const [pattern, value, said] of words) {
    if (pattern.test(name)) return { value, reason: `Joint: its name says that it is ${said}.` };
  }
  const is = known.is[part];
  if (is?.noun === 'fastener' && is.from === 'name')
    return { value: 'bolted', reason: `Joint: its name says "${is.word}".` };
  const neighbours = touching.get(part) ?? [];
  const bolt = neighbours.find((p) => known.is[p]?.noun === 'fastener');
  if (bolt !== undefined)
    return {
      value: 'bolted',
      reason: `Joint: ${theName(known.model.parts[bolt].name)} touches it.`,
    };
  const seal = neighbours.find((p) => known.is[p]?.noun === 'gasket');
  if (seal !== undefined)
    return { value: 'gasketed', reason: `Joint: ${theName(known.model.parts[seal].name)} lies against it.` };
  if (known.isPack(part)) return { value: 'loose', reason: 'Joint: it passes through the machine.' };
  return {
    value: 'unknown',
    reason: 'Joint not known: neither its name nor a screw beside it tells how it is held.',
  };
}

/** Neighbours by part index: from the joints that the survey found, and fasteners whose box meets the part's. */
export function neighboursOf(
  known: Known,
  survey: SurveyResult | undefined,
): ReadonlyMap<number, readonly number[]> {
  const out = new Map<number, number[]>();
  const add = (a: number, b: number) => {
    const list = out.get(a);
    if (!list) out.set(a, [b]);
    else if (!list.includes(b)) list.push(b);
  };
  const gaps = survey?.measures.narrowGaps;
  for (const place of [...(gaps?.joints ?? []), ...(gaps?.places ?? [])]) {
    const parts = place.parts.map((id) => known.indexOf.get(id)).filter((p) => p !== undefined);
    for (const a of parts) for (const b of parts) if (a !== b) add(a, b);
  }
  if (!gaps) {
    const screws = known.is.flatMap((is, p) => (is?.noun === 'fastener' && is.from === 'name' ? [p] : []));
    for (const s of screws) {
      for (let p = 0; p < known.extents.length; p++) {
        if (p === s || !overlap(known.extents[s], known.extents[p])) continue;
        add(s, p);
        add(p, s);
      }
    }
  }
  return out;
}
