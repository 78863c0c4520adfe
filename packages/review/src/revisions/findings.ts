/** Findings of two revisions side by side, and which decisions still stand. */
import type { Decision } from '@coveline/project';
import type { CleaningReview } from '../cleaning/programme.ts';
import type { Finding, ReviewResult } from '../types.ts';
import { compareRevisions, type RevisionChange, type Surveyed } from './compare.ts';
import { identify, type PartIdentity } from './identity.ts';

export interface Reviewed extends Surveyed {
  readonly result: ReviewResult;
  /** By id of the finding. */
  readonly decisions: Readonly<Record<string, Decision>>;
}

export interface FindingChange {
  readonly change: 'mended' | 'new' | 'worse' | 'better' | 'unchanged';
  readonly before?: Finding;
  readonly after?: Finding;
  /** The decision of the revision before, and whether it holds for what is there now. */
  readonly carried?: { readonly decision: Decision; readonly stands: boolean; readonly because: string };
}

export interface Total {
  readonly label: string;
  readonly unit: string;
  readonly before: number | null;
  readonly after: number | null;
}

export interface RevisionComparison {
  readonly findings: readonly FindingChange[];
  readonly places: readonly RevisionChange[];
  readonly parts: PartIdentity;
  readonly totals: readonly Total[];
}

/** `today`: ISO date, for concessions that have ended. */
export function compareReviews(before: Reviewed, after: Reviewed, today: string): RevisionComparison {
  const places = compareRevisions(before, after);
  const parts = identify(before.model, after.model);
  return {
    findings: findingChanges(before, after, places, parts, today),
    places,
    parts,
    totals: totals(before, after),
  };
}

function findingChanges(
  before: Reviewed,
  after: Reviewed,
  places: readonly RevisionChange[],
  { was }: PartIdentity,
  today: string,
): FindingChange[] {
  const now = new Map(
    places.flatMap((c) => (c.before !== undefined && c.after !== undefined ? [[c.before, c] as const] : [])),
  );
  const taken = new Set<string>();
  const out = before.result.findings.map((old): FindingChange => {
    const match = after.result.findings.find((f) => !taken.has(f.id) && isSame(old, f, now, was));
    const decision = before.decisions[old.id];
    if (!match) return { change: 'mended', before: old };
    taken.add(match.id);
    const change = changeOf(old, match);
    return {
      change,
      before: old,
      after: match,
      ...(decision && after.decisions[match.id] === undefined
        ? { carried: { decision, ...holds(decision, change, today) } }
        : {}),
    };
  });
  const added = after.result.findings.filter((f) => !taken.has(f.id));
  return [...out, ...added.map((f): FindingChange => ({ change: 'new', after: f }))];
}

/** The same demand at a place that was matched, or, without places, on the same parts. */
function isSame(
  old: Finding,
  f: Finding,
  now: ReadonlyMap<string, RevisionChange>,
  was: ReadonlyMap<string, string>,
): boolean {
  if (old.requirement !== f.requirement) return false;
  if (old.id === f.id) return true;
  if (old.places.length > 0 && f.places.length > 0)
    return old.places.some((id) => {
      const after = now.get(id)?.after;
      return after !== undefined && f.places.includes(after);
    });
  return f.parts.some((id) => old.parts.includes(was.get(id) ?? ''));
}

/** A change of weight below this share is none. */
const same = 0.05;

function changeOf(old: Finding, f: Finding): 'worse' | 'better' | 'unchanged' {
  if (f.consequence.rank !== old.consequence.rank)
    return f.consequence.rank < old.consequence.rank ? 'worse' : 'better';
  const [a, b] = [old.consequence.weight, f.consequence.weight];
  if (Math.abs(b - a) <= same * Math.max(a, b)) return 'unchanged';
  return b > a ? 'worse' : 'better';
}

function holds(
  decision: Decision,
  change: 'worse' | 'better' | 'unchanged',
  today: string,
): { readonly stands: boolean; readonly because: string } {
  if (decision.kind === 'change')
    return { stands: false, because: 'It was to be changed, and it is still there.' };
  if (change === 'worse') return { stands: false, because: 'It got worse since it was decided.' };
  if (decision.kind === 'concession' && decision.until < today)
    return { stands: false, because: `The concession ended on ${decision.until}.` };
  return {
    stands: true,
    because: change === 'better' ? 'It got better since.' : 'Nothing about it has changed.',
  };
}

function totals(before: Reviewed, after: Reviewed): Total[] {
  const of = ({ survey: { measures: m }, result }: Reviewed) => ({
    liquid: m.standingLiquid?.total_mL ?? null,
    flat: m.flatFaces?.up_cm2 ?? null,
    sharp: m.insideCorners?.sharp_mm ?? null,
    joints: m.narrowGaps ? m.narrowGaps.joints.reduce((sum, j) => sum + j.length_mm, 0) : null,
    notMet: result.findings.filter((f) => f.status === 'notMet').length,
    gravest: result.findings.filter((f) => f.consequence.rank === 1).length,
    ...resources(result.cleaning),
  });
  const [a, b] = [of(before), of(after)];
  const rows: readonly (readonly [keyof typeof a, string, string])[] = [
    ['liquid', 'Standing liquid', 'mL'],
    ['flat', 'Flat faces up', 'cm2'],
    ['sharp', 'Sharp inside edges', 'mm'],
    ['joints', 'Open joint line', 'mm'],
    ['notMet', 'Findings not met', '1'],
    ['gravest', 'Findings of rank 1', '1'],
    ['water', 'Cleaning water a year', 'm3/yr'],
    ['work', 'Cleaning work of a run', 'min'],
    ['cost', 'Cleaning cost a year', 'money/yr'],
  ];
  return rows.map(([key, label, unit]) => ({ label, unit, before: a[key], after: b[key] }));
}

function resources({ resources: r }: CleaningReview) {
  const value = (label: string) => r?.numbers.find((n) => n.label === label)?.value ?? null;
  return { water: value('Water a year'), work: value('Work of a run'), cost: value('Cost a year') };
}
