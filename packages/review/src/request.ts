import type { Model } from '@coveline/model';
import type { Answer, Brief, PartChange } from '@coveline/project';
import type { SurveyResult } from '@coveline/survey';

export interface ReviewRequest {
  /** As surveyed, +Z up. */
  readonly model: Model;
  readonly survey: SurveyResult;
  readonly brief: Brief;
  /** What people set, by part id. */
  readonly partChanges: Readonly<Record<string, PartChange>>;
  /** What was found on the round, by id of the question or requirement. */
  readonly answers?: Readonly<Record<string, Answer>>;
  /** ISO date: which law is in force. */
  readonly today: string;
}
