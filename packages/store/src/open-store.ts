import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { type Blobs, openBlobs } from './blobs.ts';
import { type Database, type Listener, outside } from './database.ts';
import { type Engine, startEngine } from './engine.ts';
import type { Message } from './notify.ts';
import { openEmbedded } from './open-embedded.ts';
import { openPostgres } from './open-postgres.ts';

export interface StoreOptions {
  /** Holds the blobs, and the embedded database where no other is named. Servers on one database share it. */
  readonly dataDir: string;
  readonly databaseUrl?: string;
}

export interface Store {
  readonly transaction: Database['transaction'];
  readonly blobs: Blobs;
  readonly engine: Engine;
  /** Hears of committed changes. `onGap`: some may have been missed. */
  readonly listen: (
    onMessage: (message: Message) => void,
    onGap: Listener['onGap'],
  ) => Promise<() => Promise<void>>;
  readonly close: () => Promise<void>;
}

/** Opens blobs, database and job engine. Throws `StoreError` with one sentence where that is impossible. */
export async function openStore({ dataDir, databaseUrl }: StoreOptions): Promise<Store> {
  await mkdir(dataDir, { recursive: true, mode: 0o700 });
  const database = await (databaseUrl === undefined ? openEmbedded(dataDir) : openPostgres(databaseUrl));
  return await assemble(dataDir, database);
}

/** A store on a database that is open already. */
export async function assemble(dataDir: string, database: Database): Promise<Store> {
  try {
    const blobs = await openBlobs(join(dataDir, 'blobs'));
    const engine = await startEngine(database);
    return {
      transaction: database.transaction,
      blobs,
      engine,
      listen: (onMessage, onGap) =>
        database.listen(outside({ onMessage: (text) => onMessage(JSON.parse(text) as Message), onGap })),
      close: async () => {
        await engine.stop();
        await database.close();
      },
    };
  } catch (error) {
    await database.close();
    throw error;
  }
}
