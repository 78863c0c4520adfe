import type { Control } from './result.ts';

/** Thrown between two steps once the signal is aborted. */
export class SurveyStopped extends Error {
  readonly stage: string;

  constructor(stage: string) {
    super(`The survey was stopped at: ${stage}.`);
    this.name = 'SurveyStopped';
    this.stage = stage;
  }
}

/** Reports progress, and throws `SurveyStopped` when the signal is aborted. `done` from 0 to 1. */
export function step({ signal, onProgress }: Control, stage: string, done: number): void {
  if (signal?.aborted) throw new SurveyStopped(stage);
  onProgress?.(stage, done);
}
