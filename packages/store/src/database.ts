import { AsyncLocalStorage } from 'node:async_hooks';
import type { PgDatabase, PgQueryResultHKT } from 'drizzle-orm/pg-core';
import type { ConstructorOptions } from 'pg-boss';

/** What both drivers return for a statement in plain SQL. */
interface PlainRows extends PgQueryResultHKT {
  type: { rows: Record<string, unknown>[] };
}

/**
 * An open transaction. Everything that reads or writes takes one as its first parameter: the connection outside
 * of a transaction is never handed out, because using it inside one deadlocks the embedded database.
 */
export type Tx = PgDatabase<PlainRows>;

export interface Listener {
  readonly onMessage: (text: string) => void;
  /** Messages may have been missed. */
  readonly onGap: () => void;
}

/** One of the two databases, opened and migrated. */
export interface Database {
  /** Commits when `work` resolves, rolls back when it rejects. Must not be nested; it says so. */
  readonly transaction: <T>(work: (tx: Tx) => Promise<T>) => Promise<T>;
  /** Hears what `notify` sent in transactions that were committed. Resolves to the way to stop listening. */
  readonly listen: (listener: Listener) => Promise<() => Promise<void>>;
  /** How the job engine reaches the same database. */
  readonly engine: Pick<ConstructorOptions, 'db' | 'backend' | 'connectionString'>;
  readonly close: () => Promise<void>;
}

export const channel = 'coveline';

const current = new AsyncLocalStorage<{ open: boolean } | undefined>();

/** Refuses a transaction within a transaction, which would wait for itself on a single connection. */
export function unnested(transaction: Database['transaction']): Database['transaction'] {
  return async (work) => {
    if (current.getStore()?.open)
      throw new Error('A transaction was begun inside a transaction: pass on its `tx`.');
    const mine = { open: true };
    try {
      return await current.run(mine, () => transaction(work));
    } finally {
      mine.open = false;
    }
  };
}

/** Messages arrive while the transaction that sent them commits; what they set off is not part of it. */
export function outside(listener: Listener): Listener {
  return {
    onMessage: (text) => current.run(undefined, () => listener.onMessage(text)),
    onGap: () => current.run(undefined, () => listener.onGap()),
  };
}
