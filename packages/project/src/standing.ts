/** Whether a decision still stands on a day. */
import type { Decision } from './schema.ts';

export type Standing =
  /** Nobody has decided. */
  | 'open'
  | 'stands'
  /** A concession that nobody else has approved; it stands, and says so. */
  | 'awaitsApproval'
  /** Its review is due; it stands, and says so. */
  | 'reviewDue'
  /** A concession that has ended: the finding is open again. */
  | 'ended';

/** `today`: ISO date. */
export function standingOf(decision: Decision | undefined, today: string): Standing {
  if (!decision) return 'open';
  if (decision.kind !== 'concession') return 'stands';
  if (decision.until < today) return 'ended';
  if (decision.reviewOn !== undefined && decision.reviewOn < today) return 'reviewDue';
  return decision.approvedBy ? 'stands' : 'awaitsApproval';
}

/** Open and ended ones are to be decided. */
export const isDecided = (standing: Standing): boolean => standing !== 'open' && standing !== 'ended';
