/** Entry of a thread of a survey: does one job after the other. Whatever it throws ends the thread and the survey. */
import { parentPort } from 'node:worker_threads';
import { decodeModel, type Model } from '@coveline/model';
import {
  adoptTree,
  healthOf,
  loadManifoldUnion,
  measureOne,
  type Prepared,
  prepareSealed,
  type SurveyRequest,
  sealedFrom,
} from '@coveline/survey';
import type { FromThread, Job, ToThread } from './worker-messages.ts';

const port = parentPort!;
const progressInterval_ms = 50;

let model: Model | undefined;
let thread = 0;
let request: SurveyRequest = {};
const prepared: Prepared = {};

port.on('message', async (message: ToThread) => {
  if (message.type === 'open') {
    model = decodeModel(new Uint8Array(message.packed));
    thread = message.thread;
    request = { ...message.request, exact: loadManifoldUnion };
  } else if (message.type === 'tree') {
    adoptTree(model!, message.tree, thread);
  } else {
    if (message.sealed) prepared.sealed ??= sealedFrom(message.sealed);
    for (const work of ['air', 'reach'] as const) if (!message.keeps.includes(work)) delete prepared[work];
    tell(await work(model!, message.job));
  }
});

async function work(on: Model, job: Job): Promise<FromThread> {
  const control = { onProgress: throttled() };
  if (job === 'air') return { type: 'air', sealed: prepareSealed(on, request, prepared, control) };
  if (job === 'health') return { type: 'health', health: healthOf(on, control) };
  return { type: 'measure', name: job, outcome: await measureOne(job, on, request, prepared, control) };
}

function tell(message: FromThread): void {
  port.postMessage(message);
}

function throttled(): (stage: string, done: number) => void {
  let last = 0;
  return (stage, done) => {
    const now = performance.now();
    if (now - last < progressInterval_ms) return;
    last = now;
    tell({ type: 'progress', stage, done });
  };
}
