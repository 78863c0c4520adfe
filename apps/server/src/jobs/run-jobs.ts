import { availableParallelism } from 'node:os';
import { InputError, LimitError } from '@coveline/compute';
import {
  beginJob,
  failJob,
  type JobKind,
  type JobRow,
  reportJob,
  returnJob,
  type Store,
} from '@coveline/store';
import type { FastifyBaseLogger } from 'fastify';
import type { Context } from '../context.ts';
import { makeFileJob } from './file-job.ts';
import { surveyJob } from './survey-job.ts';

/** Says what is being done, in words, and how much of it is done, 0 to 1. */
export type Report = (stage: string, done: number) => void;

/** Does the work of a job and stores its result together with the job's end; does the same when run again. */
export type JobWork = (context: Context, job: JobRow, signal: AbortSignal, report: Report) => Promise<void>;

const work: Record<JobKind, JobWork> = { survey: surveyJob, file: makeFileJob };

/** A survey keeps one core busy; leave one for everything else. */
const concurrency: Record<JobKind, number> = { survey: Math.max(1, availableParallelism() - 1), file: 1 };

const reportInterval_ms = 250;

/** Runs jobs in this process until `closing`; what runs then goes back to the queue. */
export async function runJobs(context: Context, closing: AbortSignal, log: FastifyBaseLogger): Promise<void> {
  const { store } = context;
  for (const kind of ['survey', 'file'] as const) {
    await store.engine.work(
      kind,
      concurrency[kind],
      (id, lost) => run(context, kind, id, { closing, lost }, log),
      async (id) => {
        await store.transaction((tx) =>
          failJob(tx, id, 'The server ended each time it worked on this: start it again, or see its log.'),
        );
      },
    );
  }
}

async function run(
  context: Context,
  kind: JobKind,
  id: string,
  leave: { closing: AbortSignal; lost: AbortSignal },
  log: FastifyBaseLogger,
): Promise<void> {
  const { store, live } = context;
  const job = await store.transaction((tx) => beginJob(tx, id));
  if (!job) return;
  const cancelled = live.cancellation(id);
  const { report, settled } = reporter(store, id);
  const { closing, lost } = leave;
  try {
    await work[kind](context, job, AbortSignal.any([closing, lost, cancelled]), report).finally(settled);
  } catch (error) {
    // Given up because it showed no sign of life: another worker has it by now.
    if (lost.aborted) throw error;
    if (closing.aborted) {
      await store.transaction((tx) => returnJob(tx, id));
      throw error;
    }
    if (cancelled.aborted) return;
    if (!isExpected(error)) log.error(error);
    await store.transaction((tx) => failJob(tx, id, sentence(error, kind)));
  }
}

function isExpected(error: unknown): error is InputError | LimitError {
  return error instanceof InputError || error instanceof LimitError;
}

function sentence(error: unknown, kind: JobKind): string {
  if (isExpected(error)) return error.message;
  const doing = kind === 'survey' ? 'the survey' : 'the file';
  return `A fault of ours ended ${doing}; the log of the server has the details.`;
}

/** Progress that could not be written is missed by people, not by the work. */
function warn(error: Error): void {
  process.emitWarning(`Progress: ${error.message}`);
}

/** Writes progress to the database at most once an interval, always the latest, one write at a time. */
function reporter(store: Store, id: string): { report: Report; settled: () => Promise<void> } {
  let latest: { stage: string; done: number } | undefined;
  let writing: Promise<void> | undefined;

  async function write(): Promise<void> {
    while (latest) {
      const { stage, done } = latest;
      latest = undefined;
      await store.transaction((tx) => reportJob(tx, id, stage, done)).catch(warn);
      await new Promise((resolve) => setTimeout(resolve, reportInterval_ms));
    }
    writing = undefined;
  }

  return {
    report: (stage, done) => {
      latest = { stage, done };
      writing ??= write();
    },
    settled: async () => {
      latest = undefined;
      await writing;
    },
  };
}
