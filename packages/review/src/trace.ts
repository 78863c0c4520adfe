/** From every requirement to its places, evidence, decision, control measures, cleaning and samples, and back. */
import type { ControlMeasure, Decision } from '@coveline/project';
import type { RequirementStatus, ReviewResult } from './types.ts';

export interface TracedFinding {
  readonly id: string;
  readonly places: readonly string[];
  readonly decision: Decision | null;
  readonly controls: readonly ControlMeasure[];
  /** Ids of the sampling points that come from it. */
  readonly points: readonly string[];
  /** Ids of the groups that clean its parts. */
  readonly groups: readonly string[];
}

export interface TraceRow {
  readonly requirement: string;
  readonly status: RequirementStatus['status'];
  /** Questions and requirements of the round that tell on it, with whether they were answered. */
  readonly round: readonly { readonly id: string; readonly answered: boolean }[];
  readonly findings: readonly TracedFinding[];
}

export interface Coverage {
  /** Settled by a measure of the survey. */
  readonly computed: number;
  /** Settled by answers of the round. */
  readonly looked: number;
  readonly notLookedAt: number;
  readonly noSuchElement: number;
}

export interface Trace {
  readonly rows: readonly TraceRow[];
  readonly coverage: Coverage;
}

/** `decisions`: by id of the finding. */
export function traceOf(result: ReviewResult, decisions: Readonly<Record<string, Decision>>): Trace {
  const findings = new Map(result.findings.map((f) => [f.id, f]));
  const items = result.round.stops.flatMap((s) => s.items);
  const rows = result.requirements.map(
    (line): TraceRow => ({
      requirement: line.requirement,
      status: line.status,
      round: items
        .filter((i) => i.shows.includes(line.requirement))
        .map((i) => ({ id: i.id, answered: i.answer !== null })),
      findings: line.findings.map((id): TracedFinding => {
        const f = findings.get(id)!;
        const decision = decisions[id] ?? null;
        return {
          id,
          places: f.places,
          decision,
          controls: decision?.kind === 'concession' ? decision.controlMeasures : [],
          points: result.proof.points.filter((p) => p.finding === id).map((p) => p.id),
          groups: result.cleaning.groups
            .filter((g) => g.group.parts.some((part) => f.parts.includes(part)))
            .map((g) => g.group.id),
        };
      }),
    }),
  );
  return { rows, coverage: coverageOf(rows) };
}

/** Every requirement counts once. What a finding settles was computed, unless somebody saw it on the round. */
function coverageOf(rows: readonly TraceRow[]): Coverage {
  const seen = (r: TraceRow) => r.round.some((i) => i.answered);
  const settled = (r: TraceRow) => r.status === 'met' || r.status === 'notMet';
  return {
    computed: rows.filter((r) => settled(r) && !seen(r)).length,
    looked: rows.filter((r) => settled(r) && seen(r)).length,
    notLookedAt: rows.filter((r) => r.status === 'notShown').length,
    noSuchElement: rows.filter((r) => r.status === 'noSuchElement').length,
  };
}
