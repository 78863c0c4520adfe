/** What the coordinator of a survey and its threads say to each other. */
import type {
  MeasureOutcome,
  ModelHealth,
  Offered,
  SealedAir,
  SharedTree,
  SharedWork,
  SurveyRequest,
} from '@coveline/survey';

/** What is asked of a survey, as far as it can be passed between threads. */
export type PlainRequest = Omit<SurveyRequest, 'exact'>;

export interface Open {
  readonly type: 'open';
  /** A packed model. */
  readonly packed: SharedArrayBuffer;
  readonly request: PlainRequest;
  /** Number of the thread, from 1. */
  readonly thread: number;
}

/** `air`: flood the air space and tell what is sealed off. */
export type Job = 'air' | 'health' | Offered;

export type ToThread =
  | Open
  | { readonly type: 'tree'; readonly tree: SharedTree }
  | {
      readonly type: 'job';
      readonly job: Job;
      readonly sealed?: SealedAir;
      /** What later jobs will read: the memory of all else can go. */
      readonly keeps: readonly SharedWork[];
    };

export type FromThread =
  | { readonly type: 'progress'; readonly stage: string; readonly done: number }
  | { readonly type: 'air'; readonly sealed: SealedAir }
  | { readonly type: 'health'; readonly health: ModelHealth }
  | { readonly type: 'measure'; readonly name: Offered; readonly outcome: MeasureOutcome<Offered> };
