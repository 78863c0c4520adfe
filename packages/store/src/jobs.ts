import { randomUUID } from 'node:crypto';
import { and, desc, eq, inArray, sql } from 'drizzle-orm';
import type { Tx } from './database.ts';
import type { Engine } from './engine.ts';
import { StoreError } from './errors.ts';
import { notify } from './notify.ts';
import { type JobKind, job } from './schema.ts';

export type JobRow = typeof job.$inferSelect;

/** What a job works on. */
export interface JobOrder {
  readonly kind: JobKind;
  readonly machine: string;
  readonly revision: string;
}

const open = ['waiting', 'running'] as const;
const listed = 200;

/** Orders a job, or returns the one that is waiting to do the same. */
export async function orderJob(tx: Tx, engine: Engine, order: JobOrder): Promise<JobRow> {
  const { kind, machine, revision } = order;
  const [waiting] = await tx
    .select()
    .from(job)
    .where(
      and(eq(job.kind, kind), eq(job.machine, machine), eq(job.revision, revision), eq(job.state, 'waiting')),
    );
  if (waiting) return waiting;
  const [row] = await tx
    .insert(job)
    .values({ ...order, id: randomUUID(), state: 'waiting', stage: 'Waiting' })
    .returning();
  await engine.enqueue(tx, kind, row.id);
  await notify(tx, { job: row.id });
  return row;
}

/** Newest first, at most 200. */
export async function listJobs(tx: Tx, machine?: string): Promise<JobRow[]> {
  return await tx
    .select()
    .from(job)
    .where(machine === undefined ? undefined : eq(job.machine, machine))
    .orderBy(desc(job.createdAt), job.id)
    .limit(listed);
}

/** Throws `not-found`. */
export async function getJob(tx: Tx, id: string): Promise<JobRow> {
  const [row] = await tx.select().from(job).where(eq(job.id, id));
  if (!row) throw new StoreError('not-found', `There is no job "${id}".`);
  return row;
}

/** A worker begins, or begins again after another one died. Null when there is nothing left to do. */
export async function beginJob(tx: Tx, id: string): Promise<JobRow | null> {
  return await change(tx, id, { state: 'running', stage: 'Starting', startedAt: sql`now()`, done: 0 });
}

/** Says how far it is. Null when the job was cancelled meanwhile. */
export async function reportJob(tx: Tx, id: string, stage: string, done: number): Promise<JobRow | null> {
  return await change(tx, id, { stage, done });
}

/** The worker has to go before it finished; another one, or this one later, begins again. */
export async function returnJob(tx: Tx, id: string): Promise<JobRow | null> {
  return await change(tx, id, { state: 'waiting', stage: 'Waiting', done: 0 });
}

/** `notes`: what should be known about the result, one sentence each. */
export async function completeJob(tx: Tx, id: string, notes: readonly string[] = []): Promise<JobRow | null> {
  return await change(tx, id, { state: 'done', stage: 'Done', done: 1, endedAt: sql`now()`, notes });
}

/** `error`: one sentence for a person. */
export async function failJob(tx: Tx, id: string, error: string): Promise<JobRow | null> {
  return await change(tx, id, { state: 'failed', error, endedAt: sql`now()` });
}

/** Cancels a job that is not over; one that is over stays as it is. */
export async function cancelJob(tx: Tx, engine: Engine, id: string): Promise<JobRow> {
  const before = await getJob(tx, id);
  const row = await change(tx, id, { state: 'cancelled', endedAt: sql`now()` });
  if (row && before.state === 'waiting') await engine.withdraw(tx, row.kind, id);
  return row ?? before;
}

/** Only a job that is not over can change. */
async function change(
  tx: Tx,
  id: string,
  values: Parameters<ReturnType<typeof tx.update<typeof job>>['set']>[0],
): Promise<JobRow | null> {
  const [row] = await tx
    .update(job)
    .set(values)
    .where(and(eq(job.id, id), inArray(job.state, open)))
    .returning();
  if (!row) return null;
  await notify(tx, { job: id });
  return row;
}
