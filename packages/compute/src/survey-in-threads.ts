import { Worker } from 'node:worker_threads';
import { decodeModel, type Model } from '@coveline/model';
import {
  type Control,
  defaultSettings,
  loadManifoldUnion,
  type MeasureName,
  type MeasureOutcome,
  type ModelHealth,
  type Offered,
  offered,
  onSealedAir,
  outcomeOf,
  type SealedAir,
  type SharedWork,
  type SurveyOutcome,
  sharedWork,
  shareTree,
  survey,
  treeOf,
} from '@coveline/survey';
import type { FromThread, Job, PlainRequest, ToThread } from './worker-messages.ts';

/** Standing liquid alone asks no rays of the tree. */
const withoutTree: ReadonlySet<MeasureName> = new Set<MeasureName>(['standingLiquid']);

/**
 * Surveys a packed model (see `encodeModel`) with several threads on one copy of the model and of its tree. The outcome
 * is the same to the last bit for any number of threads: each measure is computed by one of them, and they are put
 * together in a fixed order. A thread that fails ends the survey with its error.
 */
export async function surveyInThreads(
  packed: SharedArrayBuffer,
  request: PlainRequest,
  threads: number,
  control: Control,
): Promise<SurveyOutcome> {
  const model = decodeModel(new Uint8Array(packed));
  if (threads <= 1) return survey(model, { ...request, exact: loadManifoldUnion }, control);
  const workers = Array.from(
    { length: threads },
    () => new Worker(new URL('./survey-thread.js', import.meta.url)),
  );
  try {
    return await run(model, packed, request, workers, control);
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

function run(
  model: Model,
  packed: SharedArrayBuffer,
  request: PlainRequest,
  workers: readonly Worker[],
  control: Control,
): Promise<SurveyOutcome> {
  const settings = { ...defaultSettings, ...request.settings };
  const asked = request.measures ?? offered;
  const names = offered.filter((name) => asked.includes(name));
  const finished = new Map<MeasureName, MeasureOutcome<Offered>>();
  const todo = new Set<Job>(jobsFor(names));
  const running = new Map<Worker, Job>();
  const done = new Map<Worker, number>();
  const owners = new Map<SharedWork, Worker>();
  let sealed: SealedAir | undefined;
  let health: ModelHealth | undefined;

  const post = (worker: Worker, message: ToThread): void => worker.postMessage(message);
  const give = (worker: Worker): void => {
    if (running.has(worker)) return;
    const job = jobOf(todo, worker, owners, sealed !== undefined);
    if (job === undefined) return;
    todo.delete(job);
    running.set(worker, job);
    const work = workOf(job);
    if (work) owners.set(work, worker);
    const keeps = [job, ...todo].flatMap((each) => workOf(each) ?? []);
    post(worker, { type: 'job', job, keeps, ...(sealed && { sealed }) });
  };

  return new Promise((resolve, reject) => {
    const take = (worker: Worker, message: FromThread): void => {
      if (message.type === 'progress') {
        const isMeasure = running.get(worker) !== 'air' && running.get(worker) !== 'health';
        done.set(worker, isMeasure ? message.done : 0);
        control.onProgress?.(
          message.stage,
          [...done.values()].reduce((sum, d) => sum + d, 0),
        );
        return;
      }
      running.delete(worker);
      done.delete(worker);
      if (message.type === 'air') sealed = message.sealed;
      else if (message.type === 'health') health = message.health;
      else {
        finished.set(message.name, message.outcome);
        control.onMeasure?.(outcomeOf(model, settings, health, offered, finished));
      }
      for (const each of workers) give(each);
      if (running.size === 0) resolve(outcomeOf(model, settings, health, offered, finished, asked));
    };
    for (const [i, worker] of workers.entries()) {
      worker.on('message', (message: FromThread) => take(worker, message));
      worker.once('error', reject);
      worker.once('exit', (code) =>
        reject(new Error(`A thread of the survey ended with exit code ${code}.`)),
      );
      post(worker, { type: 'open', packed, request, thread: i + 1 });
    }
    // The air space needs no tree: the first thread floods it while this one builds the tree.
    if (todo.has('air')) give(workers[0]);
    if (names.some((name) => !withoutTree.has(name)) || todo.has('health')) {
      const tree = shareTree(treeOf(model));
      for (const worker of workers) post(worker, { type: 'tree', tree });
    }
    for (const worker of workers) give(worker);
  });
}

function jobsFor(names: readonly Offered[]): Job[] {
  const needsAir = names.some((name) => sharedWork[name] === 'air' || onSealedAir.has(name));
  return [...(needsAir ? (['air'] as const) : []), ...names, 'health'];
}

/** The next job of a thread. Measures that share work follow it into its thread, and are done there first. */
function jobOf(
  todo: ReadonlySet<Job>,
  worker: Worker,
  owners: ReadonlyMap<SharedWork, Worker>,
  isSealedKnown: boolean,
): Job | undefined {
  const ownerOf = (job: Job): Worker | undefined => {
    const work = workOf(job);
    return work && owners.get(work);
  };
  const open = [...todo].filter(
    (job) => (ownerOf(job) ?? worker) === worker && (isSealedKnown || !onSealedAir.has(job as Offered)),
  );
  return open.find((job) => ownerOf(job) === worker) ?? open[0];
}

function workOf(job: Job): SharedWork | undefined {
  return job === 'air' ? 'air' : sharedWork[job as Offered];
}
