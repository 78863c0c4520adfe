/** What parent and child say to each other. Small JSON only; results of any size travel as files. */

/** What a task module exports as default. It resolves to small JSON; larger results it writes into `folder`. */
export type Task<P, R> = (payload: P, context: TaskContext) => Promise<R> | R;

export interface TaskContext {
  /** A folder of this run; the caller owns it. */
  readonly folder: string;
  /** What is being done, in words, and how much of the whole is done, 0 to 1. */
  readonly onProgress: (stage: string, done: number) => void;
}

export interface Start {
  readonly module: string;
  readonly folder: string;
  readonly payload: unknown;
}

export type FromChild =
  | { readonly type: 'progress'; readonly stage: string; readonly done: number }
  | { readonly type: 'done'; readonly result: unknown; readonly peakMemory_MB: number }
  | {
      readonly type: 'failed';
      readonly name: string;
      readonly code: string;
      readonly message: string;
      readonly stack: string;
    };

/** Environment of the child: what its watchdog needs to know before the first message can arrive. */
export const parentVariable = 'COVELINE_PARENT_PID';
export const memoryVariable = 'COVELINE_MEMORY_MB';

/** What the watchdog writes to standard error before it ends the process for its memory. */
export const memoryMark = 'coveline: memory limit reached';
