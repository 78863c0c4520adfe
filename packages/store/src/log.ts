import { and, asc, desc, eq, max } from 'drizzle-orm';
import type { Tx } from './database.ts';
import { logEntry } from './schema.ts';
import { type LogStep, undoTargets } from './undo-target.ts';

export type LogEntry = typeof logEntry.$inferSelect;
export type NewEntry = Omit<typeof logEntry.$inferInsert, 'machine' | 'seq' | 'at'>;

/** The caller holds the machine's lock, so that numbers are dense and in order of the changes. */
export async function appendEntry(tx: Tx, machine: string, entry: NewEntry): Promise<void> {
  const [{ last }] = await tx
    .select({ last: max(logEntry.seq) })
    .from(logEntry)
    .where(eq(logEntry.machine, machine));
  await tx.insert(logEntry).values({ ...entry, machine, seq: (last ?? 0) + 1 });
}

/** Newest first. */
export async function history(tx: Tx, machine: string): Promise<LogEntry[]> {
  return await tx.select().from(logEntry).where(eq(logEntry.machine, machine)).orderBy(desc(logEntry.seq));
}

/** The entries that undo and redo act on next. */
export async function nextUndoRedo(
  tx: Tx,
  machine: string,
): Promise<{ undo: LogEntry | null; redo: LogEntry | null }> {
  const all = await tx
    .select({ seq: logEntry.seq, kind: logEntry.kind, target: logEntry.target, inverse: logEntry.inverse })
    .from(logEntry)
    .where(eq(logEntry.machine, machine))
    .orderBy(asc(logEntry.seq));
  const steps: LogStep[] = all.filter((entry) => entry.inverse !== null);
  const { undo, redo } = undoTargets(steps);
  return { undo: await entryAt(tx, machine, undo), redo: await entryAt(tx, machine, redo) };
}

async function entryAt(tx: Tx, machine: string, seq: number | null): Promise<LogEntry | null> {
  if (seq === null) return null;
  const [row] = await tx
    .select()
    .from(logEntry)
    .where(and(eq(logEntry.machine, machine), eq(logEntry.seq, seq)));
  return row;
}
