import { type Project, project as projectShape } from '@coveline/project';
import { desc, eq, sql } from 'drizzle-orm';
import type { Tx } from './database.ts';
import { StoreError } from './errors.ts';
import { appendEntry } from './log.ts';
import { notify } from './notify.ts';
import { machine } from './schema.ts';

export type MachineRow = typeof machine.$inferSelect;

/** What the schema of projects gained since a machine was stored comes in with its defaults. */
const upToDate = (row: MachineRow): MachineRow => ({ ...row, project: projectShape.parse(row.project) });

/** A new machine with its project. Throws `exists` when the id is taken. */
export async function createMachine(
  tx: Tx,
  id: string,
  project: Project,
  { by, what }: { by: string; what: string },
): Promise<MachineRow> {
  const [row] = await tx
    .insert(machine)
    .values({ id, initial: project, project, version: 0 })
    .onConflictDoNothing()
    .returning();
  if (!row) throw new StoreError('exists', `There is a machine "${id}" already.`);
  await appendEntry(tx, row.id, { by, what, kind: 'do', command: { do: 'rename', name: project.name } });
  return await touchMachine(tx, id);
}

/** Latest change first. */
export async function listMachines(tx: Tx): Promise<MachineRow[]> {
  const rows = await tx.select().from(machine).orderBy(desc(machine.changedAt), machine.id);
  return rows.map(upToDate);
}

/** Throws `not-found`. */
export async function getMachine(tx: Tx, id: string): Promise<MachineRow> {
  const [row] = await tx.select().from(machine).where(eq(machine.id, id));
  return row ? upToDate(row) : missing(id);
}

/** The same, and nobody else changes it until the transaction ends. */
export async function lockMachine(tx: Tx, id: string): Promise<MachineRow> {
  const [row] = await tx.select().from(machine).where(eq(machine.id, id)).for('update');
  return row ? upToDate(row) : missing(id);
}

/** Counts a change that readers of the machine could see, and tells them. */
export async function touchMachine(tx: Tx, id: string, project?: Project): Promise<MachineRow> {
  const [row] = await tx
    .update(machine)
    .set({ version: sql`${machine.version} + 1`, changedAt: sql`now()`, ...(project && { project }) })
    .where(eq(machine.id, id))
    .returning();
  if (!row) return missing(id);
  await notify(tx, { machine: id, version: row.version });
  return upToDate(row);
}

function missing(id: string): never {
  throw new StoreError('not-found', `There is no machine "${id}".`);
}
