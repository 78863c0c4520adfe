import { type Command, describeCommand } from '@coveline/project';
import { type Change, doCommand, getMachine, orderJob, redo, type Tx, undo } from '@coveline/store';
import type { Context } from './context.ts';
import { isSurveyed } from './surveyed.ts';

/** Applies a command, with everything that follows from it, in one transaction. */
export async function performCommand(context: Context, machine: string, command: Command): Promise<void> {
  const what = await inWords(context, machine, command);
  await changeMachine(context, (tx) => doCommand(tx, machine, command, { by: context.by, what }));
}

/** A finding is called by its title, where the review that people look at has it. */
async function inWords({ store, reviews }: Context, machine: string, command: Command): Promise<string> {
  const { project } = await store.transaction((tx) => getMachine(tx, machine));
  if (command.do !== 'decide' || !(await isSurveyed(store, machine, command.revision)))
    return describeCommand(command, project);
  const { review } = await reviews.current(machine, command.revision);
  const title = review.findings.find((f) => f.id === command.finding)?.title;
  return describeCommand({ ...command, finding: title ? `“${title}”` : command.finding }, project);
}

export async function performUndo(context: Context, machine: string): Promise<void> {
  await changeMachine(context, (tx) => undo(tx, machine, context.by));
}

export async function performRedo(context: Context, machine: string): Promise<void> {
  await changeMachine(context, (tx) => redo(tx, machine, context.by));
}

/** A revision that was turned has to be surveyed as it stands now. */
async function changeMachine({ store }: Context, change: (tx: Tx) => Promise<Change>): Promise<void> {
  await store.transaction(async (tx) => {
    const { before, after } = await change(tx);
    for (const { id, up } of after.project.revisions) {
      const was = before.project.revisions.find((r) => r.id === id);
      if (was && was.up !== up)
        await orderJob(tx, store.engine, { kind: 'survey', machine: after.id, revision: id });
    }
  });
}
