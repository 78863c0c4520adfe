import { applyCommand, type Command, type Project } from '@coveline/project';
import type { Tx } from './database.ts';
import { StoreError } from './errors.ts';
import { appendEntry, nextUndoRedo } from './log.ts';
import { lockMachine, type MachineRow, touchMachine } from './machines.ts';

/** The machine on both sides of a change. */
export interface Change {
  readonly before: MachineRow;
  readonly after: MachineRow;
}

/** Applies a command and writes it to the log. Throws `not-found` for an unknown machine or revision. */
export async function doCommand(
  tx: Tx,
  machine: string,
  command: Command,
  { by, what }: { by: string; what: string },
): Promise<Change> {
  const before = await lockMachine(tx, machine);
  const { project, inverse } = apply(before.project, command);
  await appendEntry(tx, machine, { by, what, kind: 'do', command, inverse });
  return { before, after: await touchMachine(tx, machine, project) };
}

/** Takes back the last command that was not taken back yet. Throws `nothing-to-undo`. */
export async function undo(tx: Tx, machine: string, by: string): Promise<Change> {
  const before = await lockMachine(tx, machine);
  const { undo: entry } = await nextUndoRedo(tx, machine);
  if (!entry) throw new StoreError('nothing-to-undo', 'There is nothing to undo on this machine.');
  const command = entry.inverse!;
  const { project, inverse } = apply(before.project, command);
  const what = `Took back: ${entry.what}`;
  await appendEntry(tx, machine, { by, what, kind: 'undo', command, inverse, target: entry.seq });
  return { before, after: await touchMachine(tx, machine, project) };
}

/** Does again what was taken back last. Throws `nothing-to-redo`. */
export async function redo(tx: Tx, machine: string, by: string): Promise<Change> {
  const before = await lockMachine(tx, machine);
  const { redo: entry } = await nextUndoRedo(tx, machine);
  if (!entry) throw new StoreError('nothing-to-redo', 'There is nothing to do again on this machine.');
  const { project, inverse } = apply(before.project, entry.command);
  const what = `Did again: ${entry.what}`;
  const again = { by, what, kind: 'redo', command: entry.command, inverse, target: entry.seq } as const;
  await appendEntry(tx, machine, again);
  return { before, after: await touchMachine(tx, machine, project) };
}

function apply(project: Project, command: Command): ReturnType<typeof applyCommand> {
  try {
    return applyCommand(project, command);
  } catch (error) {
    // The one thing that applying refuses: a revision that the machine has not.
    if (error instanceof RangeError) throw new StoreError('not-found', error.message);
    throw error;
  }
}
