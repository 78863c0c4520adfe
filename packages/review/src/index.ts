export { compareRevisions, type RevisionChange, type Surveyed } from './compare.ts';
export { limitInWords } from './finding.ts';
export { asksForLess, type Hazard, type HazardReview, hazardsOf } from './hazards/hazards.ts';
export { proposeParts } from './parts/propose.ts';
export type { ReviewRequest } from './request.ts';
export { review } from './review.ts';
export type { Round, RoundItem, RoundStop } from './round/round.ts';
export type * from './types.ts';
