import { userInfo } from 'node:os';
import { fileURLToPath } from 'node:url';
import { InputError, type Limits } from '@coveline/compute';
import { openStore, type Store, StoreError } from '@coveline/store';
import { createApp } from './app.ts';
import type { App } from './app-type.ts';
import type { Context } from './context.ts';
import { runJobs } from './jobs/run-jobs.ts';
import { startLive } from './live.ts';
import { openReviews } from './reviews.ts';
import { seedProject } from './seed.ts';
import { openTrials } from './trials.ts';

export interface ServeOptions {
  /** Holds model files, results, and the embedded database. */
  readonly dataDir: string;
  /** A PostgreSQL server in place of the embedded database. */
  readonly databaseUrl?: string;
  /** Default 127.0.0.1. There are no accounts: whoever reaches the port may change everything. */
  readonly host?: string;
  /** Default 4180; 0 takes any free one. */
  readonly port?: number;
  /** Folder of the built workbench. Default: the one of this repository. */
  readonly webDir?: string;
  /** A project folder that is taken in once. */
  readonly seed?: string;
  /** Name in the audit trail. Default: the user's login name. */
  readonly by?: string;
  /** Of each survey and each file that is made. Default 600 s, 4096 MB. */
  readonly limits?: Limits;
  /** Largest model file that is taken. Default 512. */
  readonly upload_MB?: number;
}

export interface Running {
  readonly url: string;
  /** Stops taking requests, puts running jobs back into the queue, and closes everything. */
  readonly close: () => Promise<void>;
}

const builtWorkbench = fileURLToPath(new URL('../../web/dist', import.meta.url));
const loopback = new Set(['127.0.0.1', 'localhost', '::1']);

/**
 * Opens the store, starts the jobs and serves the API and the workbench. Throws `InputError` with one sentence when the
 * data folder, the database, the address or the seed cannot be used.
 */
export async function serve(options: ServeOptions): Promise<Running> {
  const { host = '127.0.0.1', port = 4180 } = options;
  const store = await openStore(options).catch((error: unknown) => {
    throw error instanceof StoreError ? new InputError(error.code, error.message) : error;
  });
  const { app, close } = await start(store, options, loopback.has(host));
  try {
    return { url: await app.listen({ host, port }), close };
  } catch (error) {
    await close();
    throw notListening(error as NodeJS.ErrnoException, host, port);
  }
}

function notListening(error: NodeJS.ErrnoException, host: string, port: number): Error {
  switch (error.code) {
    case 'EADDRINUSE':
      return new InputError('port-in-use', `Port ${port} on ${host} is taken: choose another one.`);
    case 'EACCES':
      return new InputError(
        'port-denied',
        `Port ${port} on ${host} is not permitted: choose one above 1023.`,
      );
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return new InputError(
        'no-host',
        `"${host}" is no address of this machine: choose 127.0.0.1 or one of its own.`,
      );
    default:
      return error;
  }
}

/** Everything but listening, on a store that is open; closes the store when it fails. */
export async function start(
  store: Store,
  options: Omit<ServeOptions, 'dataDir'>,
  loopbackOnly: boolean,
): Promise<{ app: App; close: () => Promise<void> }> {
  const closing = new AbortController();
  const steps: (() => Promise<void>)[] = [store.close];
  let closed: Promise<void> | undefined;
  const close = () => {
    closed ??= (async () => {
      closing.abort();
      for (const step of steps.toReversed()) await step();
    })();
    return closed;
  };
  try {
    const live = await startLive(store);
    steps.push(live.close);
    const limits = options.limits ?? {};
    const context: Context = {
      store,
      live,
      reviews: openReviews(store),
      trials: openTrials(store, limits, closing.signal),
      by: options.by ?? userInfo().username,
      limits,
      upload_MB: options.upload_MB ?? 512,
    };
    const app = await createApp(context, { webDir: options.webDir ?? builtWorkbench, loopbackOnly });
    steps.push(async () => app.close());
    if (options.seed !== undefined) await seedProject(context, options.seed);
    await runJobs(context, closing.signal, app.log);
    return { app, close };
  } catch (error) {
    await close();
    throw error;
  }
}
