export type { MaterialVerdict } from './cleaning/compatibility.ts';
export { stepsFor, templateFor } from './cleaning/groups.ts';
export { type Breach, breachesOf } from './cleaning/order.ts';
export type { CleaningReview, GroupReview } from './cleaning/programme.ts';
export type { Resources } from './cleaning/resources.ts';
export { limitInWords } from './finding.ts';
export { asksForLess, type Hazard, type HazardReview, hazardsOf } from './hazards/hazards.ts';
export type { Effect, Option } from './options/option.ts';
export { optionsFor, poolOf } from './options/options.ts';
export { proposeParts } from './parts/propose.ts';
export {
  limitOfTest,
  type PointTest,
  type ProofPlan,
  type SamplingPoint,
  verdictOn,
} from './proof/points.ts';
export { type ReadResults, readResults, type Targets } from './proof/read-results.ts';
export { baseline, type JudgedResult, type Trend, type TrendChart, trendsOf } from './proof/results.ts';
export type { ReviewRequest } from './request.ts';
export { review } from './review.ts';
export { compareRevisions, type RevisionChange, type Surveyed } from './revisions/compare.ts';
export {
  compareReviews,
  type FindingChange,
  type Reviewed,
  type RevisionComparison,
  type Total,
} from './revisions/findings.ts';
export { inWords } from './round/evidence.ts';
export type { Round, RoundItem, RoundStop } from './round/round.ts';
export { proposeSite, type SiteProposals } from './site/propose-site.ts';
export { type Coverage, type Trace, type TracedFinding, type TraceRow, traceOf } from './trace.ts';
export type * from './types.ts';
