import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { drizzle } from 'drizzle-orm/pglite';
import { migrate } from 'drizzle-orm/pglite/migrator';
import { fromPglite } from 'pg-boss';
import { lockFolder } from './data-lock.ts';
import { channel, type Database, unnested } from './database.ts';
import { migrationsFolder } from './migrations-folder.ts';

/**
 * PostgreSQL inside this process, its files in `folder`, which nobody else may use meanwhile. It writes through the
 * system's cache and never calls fsync: it survives the end of the process, not a power cut.
 * Throws `StoreError` `data-in-use`.
 */
export async function openEmbedded(folder: string): Promise<Database> {
  await mkdir(folder, { recursive: true });
  const unlock = await lockFolder(folder);
  try {
    const database = await openPglite(join(folder, 'postgres'));
    return { ...database, close: () => database.close().finally(unlock) };
  } catch (error) {
    await unlock();
    throw error;
  }
}

/** The same in memory, for tests. */
export async function openInMemory(): Promise<Database> {
  return openPglite('memory://');
}

async function openPglite(dataDir: string): Promise<Database> {
  const pglite = await PGlite.create(dataDir);
  const db = drizzle(pglite);
  await migrate(db, { migrationsFolder });
  return {
    transaction: unnested((work) => db.transaction(work)),
    listen: ({ onMessage }) => pglite.listen(channel, onMessage),
    engine: { db: fromPglite(pglite), backend: 'pglite' },
    close: () => pglite.close(),
  };
}
