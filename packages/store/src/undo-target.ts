import type { EntryKind } from './schema.ts';

/** What undo and redo need to know of an entry. Entries that cannot be taken back are left out by the caller. */
export interface LogStep {
  readonly seq: number;
  readonly kind: EntryKind;
  /** Of an undo or redo: the entry that it takes back or does again. */
  readonly target: number | null;
}

/**
 * The entries that undo and redo act on next, from the steps in ascending order. Redo is open only until something
 * new is done. Undo and redo are entries of the log themselves; nothing is ever removed from it.
 */
export function undoTargets(steps: readonly LogStep[]): { undo: number | null; redo: number | null } {
  const done: number[] = [];
  const undone: number[] = [];
  for (const { seq, kind, target } of steps) {
    if (kind === 'undo') {
      done.pop();
      undone.push(target!);
    } else if (kind === 'redo') {
      undone.pop();
      done.push(target!);
    } else {
      undone.length = 0;
      done.push(seq);
    }
  }
  return { undo: done.at(-1) ?? null, redo: undone.at(-1) ?? null };
}
