import type { Limits } from '@coveline/compute';
import type { Store } from '@coveline/store';
import type { Live } from './live.ts';
import type { Reviews } from './reviews.ts';
import type { Trials } from './trials.ts';

/** What routes and jobs work with. */
export interface Context {
  readonly store: Store;
  readonly live: Live;
  readonly reviews: Reviews;
  readonly trials: Trials;
  /** Name that the audit trail gives for changes. */
  readonly by: string;
  /** Of a survey and of making a file. */
  readonly limits: Limits;
  /** Largest model file that is taken. */
  readonly upload_MB: number;
}
