import type { TypedRun } from '@coveline/engineering';
import type { Given } from './given.ts';

/** What the worker is asked. */
export interface Question {
  readonly name: string;
  readonly given: Given;
  /** BCP 47, of the numbers in the texts and in the echo. */
  readonly locale: string;
}

/** What the worker answers. */
export type Reply =
  | { readonly kind: 'run'; readonly run: TypedRun }
  | { readonly kind: 'unreadable'; readonly file: string }
  | { readonly kind: 'fault'; readonly message: string };

/** The worker that waits for the next question. */
let idle: Worker | null = null;

/**
 * Runs a calculation beside the page. When `signal` aborts, the work is dropped at once and the promise never settles:
 * whoever asked has moved on. A worker that cannot start or breaks down is a fault as well.
 */
export function calculate(question: Question, signal: AbortSignal): Promise<Reply> {
  const worker = idle ?? new Worker(new URL('./calculate.worker.ts', import.meta.url), { type: 'module' });
  idle = null;
  return new Promise((resolve) => {
    const drop = () => worker.terminate();
    signal.addEventListener('abort', drop, { once: true });
    worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      signal.removeEventListener('abort', drop);
      idle = worker;
      resolve(data);
    };
    worker.onerror = (event) => {
      signal.removeEventListener('abort', drop);
      worker.terminate();
      resolve({ kind: 'fault', message: event.message || 'the worker did not start' });
    };
    worker.postMessage(question);
  });
}
