import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { LimitError, type Limits, runInChild, TaskError } from '@coveline/compute';
import type { Store, SurveyRow } from '@coveline/store';
import type { Proposals } from '@coveline/survey';
import { inTemporaryFolder } from './jobs/temporary-folder.ts';
import type { TrialOrder } from './jobs/trial-order.ts';
import { RequestError } from './problem.ts';

const task = pathToFileURL(createRequire(import.meta.url).resolve('@coveline/server/trial-task')).href;
/** Trials kept in memory. */
const kept = 64;
/** A person waits beside it. */
const time_s = 120;

export interface Trials {
  /** What would empty a pool. Throws 503 when it takes too much time or memory. */
  readonly proposals: (survey: SurveyRow, pool: string) => Promise<Proposals>;
}

/** Trials run one after the other, each in a process of its own; `signal` ends the one under way. */
export function openTrials(store: Store, limits: Limits, signal: AbortSignal): Trials {
  const cache = new Map<string, Promise<Proposals>>();
  let last: Promise<unknown> = Promise.resolve();

  const run = (order: TrialOrder): Promise<Proposals> =>
    inTemporaryFolder(async (folder) => {
      try {
        const control = { signal, limits: { ...limits, time_s: Math.min(time_s, limits.time_s ?? time_s) } };
        return (await runInChild<Proposals>(task, order, folder, control)).result;
      } catch (error) {
        if (error instanceof LimitError || error instanceof TaskError)
          throw new RequestError(
            503,
            'trial-failed',
            `What would empty it could not be tried. ${error.message}`,
          );
        throw error;
      }
    });

  return {
    proposals: (survey, pool) => {
      const key = `${survey.model}/${survey.result}/${pool}`;
      const known = cache.get(key);
      if (known) return known;
      const order = { model: store.blobs.path(survey.model), survey: store.blobs.path(survey.result), pool };
      const trial = last.then(() => run(order));
      last = trial.catch(() => undefined);
      cache.set(key, trial);
      trial.catch(() => cache.delete(key));
      if (cache.size > kept) cache.delete(cache.keys().next().value!);
      return trial;
    },
  };
}
