import type { Revision } from '@coveline/project';
import { and, eq } from 'drizzle-orm';
import type { Tx } from './database.ts';
import { StoreError } from './errors.ts';
import { appendEntry } from './log.ts';
import { lockMachine, type MachineRow, touchMachine } from './machines.ts';
import { revision } from './schema.ts';

export type RevisionRow = typeof revision.$inferSelect;

/** The model file of a revision, already among the blobs. */
export interface StoredFile {
  readonly sha256: string;
  readonly size_bytes: number;
}

/** Adds a revision to the project. It stands in the log, but cannot be taken back: the file was handed in. */
export async function addRevision(
  tx: Tx,
  machine: string,
  added: Revision,
  file: StoredFile,
  { by, what }: { by: string; what: string },
): Promise<MachineRow> {
  const { project } = await lockMachine(tx, machine);
  if (project.revisions.some((r) => r.id === added.id))
    throw new StoreError('exists', `The machine has a revision "${added.id}" already.`);
  await storeRevisionFile(tx, machine, added.id, file);
  const { id, label, up } = added;
  const command = { do: 'setRevision', revision: id, label, up } as const;
  await appendEntry(tx, machine, { by, what, kind: 'do', command, adds: added });
  return await touchMachine(tx, machine, { ...project, revisions: [...project.revisions, added] });
}

/** The file of a revision that its project names already. */
export async function storeRevisionFile(
  tx: Tx,
  machine: string,
  id: string,
  file: StoredFile,
): Promise<void> {
  await tx.insert(revision).values({ machine, id, ...file });
}

/** All revisions of a machine, or of all machines. */
export async function listRevisions(tx: Tx, machine?: string): Promise<RevisionRow[]> {
  const all = tx.select().from(revision);
  return await (machine === undefined ? all : all.where(eq(revision.machine, machine)));
}

/** Throws `not-found`. */
export async function getRevision(tx: Tx, machine: string, id: string): Promise<RevisionRow> {
  const [row] = await tx
    .select()
    .from(revision)
    .where(and(eq(revision.machine, machine), eq(revision.id, id)));
  if (!row) throw new StoreError('not-found', `The machine "${machine}" has no revision "${id}".`);
  return row;
}

/** Notes what reading the file, or making the PDF, brought. */
export async function updateRevision(
  tx: Tx,
  machine: string,
  id: string,
  found: Partial<Pick<RevisionRow, 'notes' | 'parts' | 'triangles' | 'pdf'>>,
): Promise<void> {
  await tx
    .update(revision)
    .set(found)
    .where(and(eq(revision.machine, machine), eq(revision.id, id)));
  await touchMachine(tx, machine);
}
