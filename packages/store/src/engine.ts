/** The job engine: pg-boss on the same database. It decides who runs what; what people see is in the `job` table. */
import { sql } from 'drizzle-orm';
import { fromDrizzle, type JobPollingOptions, PgBoss, type WorkConcurrencyOptions } from 'pg-boss';
import type { Database, Tx } from './database.ts';
import type { JobKind } from './schema.ts';

/** Runs one job. Resolves when it is settled in the `job` table; rejects to have it run again. */
export type Handler = (job: string, signal: AbortSignal) => Promise<void>;

export interface Engine {
  /** The job starts when the transaction is committed. */
  readonly enqueue: (tx: Tx, kind: JobKind, job: string) => Promise<void>;
  /** Takes a job that has not begun out of the queue. */
  readonly withdraw: (tx: Tx, kind: JobKind, job: string) => Promise<void>;
  /** Runs jobs of a kind in this process. `onLost` gets those that ended the process too often. */
  readonly work: (kind: JobKind, concurrency: number, handler: Handler, onLost: Handler) => Promise<void>;
  /** Looks for work at once instead of at the next poll. */
  readonly wake: () => void;
  /** Takes no new jobs; resolves when the handlers have returned. */
  readonly stop: () => Promise<void>;
}

const kinds: readonly JobKind[] = ['survey', 'file'];
const lost = (kind: JobKind) => `${kind}-lost`;

/** A worker that does not refresh within this time counts as dead, and its job runs elsewhere. */
const heartbeatSeconds = 10;
const watchSeconds = 4;
const pollSeconds = 0.5;
const pollLostSeconds = 5;
/** Longer than any job may take: the compute limits end a job, not the engine. */
const expireInSeconds = 6 * 3600;
const deleteAfterSeconds = 24 * 3600;
/** A job that nobody could run for a year is given up. */
const retentionSeconds = 365 * 24 * 3600;
const retryLimit = 5;
const stopTimeout_ms = 10_000;

export async function startEngine(database: Database): Promise<Engine> {
  const boss = new PgBoss({
    ...database.engine,
    schedule: false,
    superviseIntervalSeconds: watchSeconds,
    monitorIntervalSeconds: watchSeconds,
    max: 4,
  });
  boss.on('error', (error) => process.emitWarning(`Job engine: ${error.message}`));
  await boss.start();
  const retention = { expireInSeconds, deleteAfterSeconds, retentionSeconds };
  for (const kind of kinds) {
    await boss.createQueue(lost(kind), retention);
    await boss.createQueue(kind, {
      ...retention,
      heartbeatSeconds,
      retryLimit,
      retryDelay: 0,
      deadLetter: lost(kind),
    });
  }
  const workers: string[] = [];

  async function serve(queue: string, options: JobPollingOptions & WorkConcurrencyOptions, handler: Handler) {
    const worker = await boss.work<{ job: string }>(queue, options, async ([{ data, signal }]) => {
      await handler(data.job, signal);
    });
    workers.push(worker);
  }

  return {
    enqueue: async (tx, kind, job) => {
      await boss.send(kind, { job }, { id: job, db: fromDrizzle(tx, sql) });
    },
    withdraw: async (tx, kind, job) => {
      await boss.cancel(kind, job, { db: fromDrizzle(tx, sql) });
    },
    work: async (kind, concurrency, handler, onLost) => {
      await serve(kind, { pollingIntervalSeconds: pollSeconds, localConcurrency: concurrency }, handler);
      await serve(lost(kind), { pollingIntervalSeconds: pollLostSeconds }, onLost);
    },
    wake: () => {
      for (const worker of workers) boss.notifyWorker(worker);
    },
    stop: () => boss.stop({ graceful: true, timeout: stopTimeout_ms }),
  };
}
