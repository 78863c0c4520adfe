import { sql } from 'drizzle-orm';
import { channel, type Tx } from './database.ts';

/** What changed. Ids only: a notification carries at most 8000 bytes. */
export type Message = { readonly job: string } | { readonly machine: string; readonly version: number };

/** Tells every listener, in this process and others, once the transaction is committed. */
export async function notify(tx: Tx, message: Message): Promise<void> {
  await tx.execute(sql`select pg_notify(${channel}, ${JSON.stringify(message)})`);
}
