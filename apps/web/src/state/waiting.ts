/**
 * Changes that could not reach the server wait here in the order in which they were made, also when the page is
 * closed. Every command sets something, so one that arrives twice, because only its answer was lost, does no harm.
 */
import type { Machine } from '@coveline/api';
import { applyCommand, type Command, command } from '@coveline/project';
import { createStore, useStore } from './store.ts';

export interface Waiting {
  readonly machine: string;
  readonly command: Command;
}

const key = 'coveline.waiting';
const store = createStore<{ list: readonly Waiting[] }>({ list: read() });

function read(): readonly Waiting[] {
  try {
    const found: unknown = JSON.parse(window.localStorage.getItem(key) ?? '[]');
    return Array.isArray(found) ? found.flatMap(sound) : [];
  } catch {
    // Storage is blocked or its content is not ours: nothing waits.
    return [];
  }
}

/** What an older version of the program left behind may no longer be a command. */
function sound(row: Partial<Waiting>): readonly Waiting[] {
  const read = command.safeParse(row.command);
  return read.success && typeof row.machine === 'string'
    ? [{ machine: row.machine, command: read.data }]
    : [];
}

function set(list: readonly Waiting[]): void {
  store.set({ list });
  try {
    window.localStorage.setItem(key, JSON.stringify(list));
  } catch {
    // Storage is blocked or full: the changes wait as long as the page is open.
  }
}

export const waiting = () => store.get().list;
export const useWaiting = () => useStore(store).list.length;
export const addWaiting = (machine: string, next: Command) => set([...waiting(), { machine, command: next }]);
export const removeFirstWaiting = () => set(waiting().slice(1));

/** Changes on their way, oldest first: an answer to an earlier one knows nothing of them. */
let onTheWay: readonly Waiting[] = [];

export function setOut(machine: string, next: Command): void {
  onTheWay = [...onTheWay, { machine, command: next }];
}

export function arrived(next: Command): void {
  onTheWay = onTheWay.filter((w) => w.command !== next);
}

/** A machine as the server holds it, with what is on the way and what waits for it. */
export function withWaiting(machine: Machine): Machine {
  const project = [...waiting(), ...onTheWay]
    .filter((w) => w.machine === machine.id)
    .reduce((now, w) => applied(now, w.command), machine.project);
  return { ...machine, project };
}

function applied(project: Machine['project'], next: Command): Machine['project'] {
  try {
    return applyCommand(project, next).project;
  } catch (error) {
    // It names a revision that is gone; the server says so when the change is sent.
    if (error instanceof RangeError) return project;
    throw error;
  }
}
