import type { Model } from '@coveline/model';
import type { Decision, Project } from '@coveline/project';
import type { ReviewResult } from '@coveline/review';
import type { SurveyOutcome } from '@coveline/survey';

export interface FileRequest {
  readonly project: Project;
  readonly revisionId: string;
  /** The revision as it was surveyed, +Z up. */
  readonly model: Model;
  readonly outcome: SurveyOutcome;
  readonly review: ReviewResult;
  /** By finding id. */
  readonly decisions: Readonly<Record<string, Decision>>;
  /** ISO date that the cover carries. */
  readonly date: string;
}

/** For long work: progress from 0 to 1, and a signal that stops it between two pictures. */
export interface FileControl {
  readonly signal?: AbortSignal;
  readonly onProgress?: (stage: string, done: number) => void;
}

export interface MadeFile {
  readonly pdf: Uint8Array;
  /** What a reader of the file should know about how it came out; one sentence each. */
  readonly warnings: readonly string[];
}
