import type { Catalogue } from '@coveline/catalogue';
import type { Model } from '@coveline/model';
import type { Answer, Brief, PartChange, SurfaceGroup } from '@coveline/project';
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
  /** Groups of surfaces that people set, by id; the others are proposed. */
  readonly groups?: Readonly<Record<string, Omit<SurfaceGroup, 'id'>>>;
  /** What is built in, with packs; without them when absent. */
  readonly catalogue?: Catalogue;
  /** ISO date: which law is in force. */
  readonly today: string;
}
