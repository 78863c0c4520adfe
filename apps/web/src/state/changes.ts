import type { Machine } from '@coveline/api';
import { applyCommand, type Command } from '@coveline/project';
import { useIsMutating, useMutation } from '@tanstack/react-query';
import { api } from '../api/client.ts';
import { ApiError } from '../api/request.ts';
import { m } from '../messages/index.ts';
import { announce } from './announce.ts';
import { invalidateReviews, keys, queryClient } from './queries.ts';
import { createStore, useStore } from './store.ts';
import { addWaiting, arrived, setOut, waiting, withWaiting } from './waiting.ts';

/** The last change that was not kept, and why; null when all were. */
const failure = createStore<{ message: string | null }>({ message: null });

export const useChangeFailure = () => useStore(failure).message;
export const dismissChangeFailure = () => failure.set({ message: null });
export const useChangesUnderWay = () => useIsMutating({ mutationKey: ['change'] });

/** Takes over what the server holds now. What a review says may depend on it, so that is read again. */
export function accept(machine: Machine): void {
  const known = queryClient.getQueryData<Machine>(keys.machine(machine.id));
  if (known && known.version > machine.version) return;
  queryClient.setQueryData(keys.machine(machine.id), withWaiting(machine));
  void queryClient.invalidateQueries({ queryKey: keys.machines });
  void queryClient.invalidateQueries({ queryKey: keys.history(machine.id) });
  void invalidateReviews(machine.id);
}

/** Says why a change was not kept, and shows again what the server holds. */
export function refuse(machine: string, error: Error): void {
  failure.set({ message: error.message });
  announce(m.kept.failed(error.message));
  void queryClient.invalidateQueries({ queryKey: keys.machine(machine) });
}

/**
 * Sends a change. The screen shows it at once; when the server refuses, it goes back and the reason is shown.
 * Changes of one machine go one after the other; what cannot reach the server waits until it answers.
 */
export function useChange(machine: string) {
  return useMutation({
    mutationKey: ['change', machine],
    scope: { id: machine },
    networkMode: 'always',
    mutationFn: (command: Command) => sendOrKeep(machine, command),
    onMutate: async (command) => {
      setOut(machine, command);
      await queryClient.cancelQueries({ queryKey: keys.machine(machine) });
      failure.set({ message: null });
      queryClient.setQueryData<Machine>(keys.machine(machine), (before) =>
        before ? { ...before, project: applyCommand(before.project, command).project } : before,
      );
    },
    onSuccess: (kept) => kept && accept(kept),
    onError: (error) => refuse(machine, error),
  });
}

/** The machine after the change; null when the change waits. It waits behind those that wait already. */
async function sendOrKeep(machine: string, command: Command): Promise<Machine | null> {
  try {
    return await send(machine, command);
  } finally {
    arrived(command);
  }
}

async function send(machine: string, command: Command): Promise<Machine | null> {
  if (waiting().length === 0) {
    try {
      return await api.command(machine, command);
    } catch (error) {
      if (!(error instanceof ApiError) || error.status !== 0) throw error;
    }
  }
  addWaiting(machine, command);
  return null;
}

/** Undo and redo, which the server does from its log. */
export function useStepBack(machine: string, direction: 'undo' | 'redo') {
  return useMutation({
    mutationKey: ['change', machine],
    scope: { id: machine },
    mutationFn: () => (direction === 'undo' ? api.undo(machine) : api.redo(machine)),
    onSuccess: accept,
    onError: (error) => refuse(machine, error),
  });
}
