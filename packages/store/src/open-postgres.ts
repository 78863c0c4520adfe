import { drizzle } from 'drizzle-orm/node-postgres';
import { migrate } from 'drizzle-orm/node-postgres/migrator';
import pg from 'pg';
import { channel, type Database, type Listener, unnested } from './database.ts';
import { StoreError } from './errors.ts';
import { migrationsFolder } from './migrations-folder.ts';

const oldest = 15;
/** Any constant: servers that start together migrate one after the other. */
const migrationLock = 7_265_001;
const reconnect_ms = 1000;

/** A PostgreSQL server. Throws `StoreError` `database-unreachable` or `database-too-old`. */
export async function openPostgres(connectionString: string): Promise<Database> {
  const pool = new pg.Pool({ connectionString, max: 10 });
  // A connection that breaks while idle is replaced by the pool; the next query tells if the server is gone.
  pool.on('error', (error) => process.emitWarning(`PostgreSQL: ${error.message}`));
  try {
    await prepare(pool);
  } catch (error) {
    await pool.end();
    throw error;
  }
  const db = drizzle(pool);
  return {
    transaction: unnested((work) => db.transaction(work)),
    listen: (listener) => listenWithReconnect(connectionString, listener),
    engine: { connectionString },
    close: () => pool.end(),
  };
}

async function prepare(pool: pg.Pool): Promise<void> {
  const client = await pool.connect().catch((error: Error) => {
    throw new StoreError('database-unreachable', `The database cannot be reached: ${reason(error)}.`, {
      cause: error,
    });
  });
  try {
    const { rows } = await client.query<{ n: number }>(
      "select current_setting('server_version_num')::int / 10000 as n",
    );
    if (rows[0].n < oldest)
      throw new StoreError(
        'database-too-old',
        `The database is PostgreSQL ${rows[0].n}; version ${oldest} or later is needed.`,
      );
    await client.query('select pg_advisory_lock($1)', [migrationLock]);
    await migrate(drizzle(client), { migrationsFolder });
    await client.query('select pg_advisory_unlock($1)', [migrationLock]);
  } finally {
    client.release();
  }
}

/** A connection to "localhost" fails as an AggregateError without a message of its own. */
function reason(error: Error): string {
  return error.message || (error as NodeJS.ErrnoException).code || error.name;
}

async function listenWithReconnect(
  connectionString: string,
  listener: Listener,
): Promise<() => Promise<void>> {
  let stopped = false;
  let client = await connect();

  async function connect(): Promise<pg.Client> {
    const next = new pg.Client({ connectionString });
    next.on('notification', ({ payload }) => listener.onMessage(payload ?? ''));
    // The connection ends after an error too; the end is what starts the next one.
    next.on('error', (error) => process.emitWarning(`PostgreSQL: ${reason(error)}`));
    await next.connect();
    next.once('end', () => void again());
    await next.query(`listen ${channel}`);
    return next;
  }

  async function again(): Promise<void> {
    while (!stopped) {
      await new Promise((resolve) => setTimeout(resolve, reconnect_ms));
      try {
        client = await connect();
        return listener.onGap();
      } catch (error) {
        process.emitWarning(`PostgreSQL: ${reason(error as Error)}`);
      }
    }
  }

  return async () => {
    stopped = true;
    await client.end();
  };
}
