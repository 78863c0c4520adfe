import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { assemble, openInMemory, openStore, type Store } from '../src/index.ts';

/** A database that the store is held to its contract on. */
export interface TestDatabase {
  readonly name: string;
  /** Ends every connection to the database from the server's side, where there is such a thing. */
  readonly cutConnections?: () => Promise<void>;
  readonly open: (dataDir: string) => Promise<Store>;
  readonly drop: () => Promise<void>;
}

/** A PostgreSQL server to test on; see scripts/with-postgres.sh. */
export const serverUrl = process.env.COVELINE_TEST_DATABASE_URL;

export const databases: readonly TestDatabase[] = [
  {
    name: 'embedded, in memory',
    open: async (dataDir) => assemble(dataDir, await openInMemory()),
    drop: async () => {},
  },
  ...(serverUrl === undefined ? [] : [onServer(serverUrl)]),
];

/** A database of its own on the server, so that suites do not take each other's jobs. */
function onServer(url: string): TestDatabase {
  const name = `coveline_${randomUUID().replaceAll('-', '')}`;
  const own = new URL(url);
  own.pathname = `/${name}`;
  const admin = async (statement: string) => {
    const client = new pg.Client({ connectionString: url });
    await client.connect();
    await client.query(statement).finally(() => client.end());
  };
  return {
    name: 'PostgreSQL server',
    open: async (dataDir) => {
      await admin(`create database ${name}`);
      return await openStore({ dataDir, databaseUrl: own.href });
    },
    cutConnections: () =>
      admin(`select pg_terminate_backend(pid) from pg_stat_activity where datname = '${name}'`),
    drop: () => admin(`drop database ${name} with (force)`),
  };
}
