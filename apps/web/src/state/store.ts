import { useSyncExternalStore } from 'react';

export interface Store<T> {
  get(): T;
  set(change: Partial<T>): void;
  subscribe(listener: () => void): () => void;
}

/** A small piece of state outside React. */
export function createStore<T extends object>(start: T): Store<T> {
  let state = start;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    set(change) {
      state = { ...state, ...change };
      for (const listener of listeners) listener();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

export function useStore<T extends object>(store: Store<T>): T {
  return useSyncExternalStore(store.subscribe, store.get);
}
