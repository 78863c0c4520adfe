import { type ChildProcess, fork } from 'node:child_process';
import { createRequire } from 'node:module';
import { totalmem } from 'node:os';
import { ChildFault, LimitError, TaskError } from './errors.ts';
import { type FromChild, memoryMark, memoryVariable, parentVariable, type Start } from './messages.ts';

export interface Limits {
  /** Wall clock. Default 600. */
  readonly time_s?: number;
  /** Resident memory of the child. Default 4096, or 60 % of the machine where that is less. */
  readonly memory_MB?: number;
}

export interface ChildControl {
  /**
   * Kills the child; the promise rejects with the signal's reason at once, while the system may need some tenths of a
   * second more to take back the memory of a large one.
   */
  readonly signal?: AbortSignal;
  readonly onProgress?: (stage: string, done: number) => void;
  readonly limits?: Limits;
}

export interface ChildResult<R> {
  readonly result: R;
  /** Largest resident set of the child. */
  readonly peakMemory_MB: number;
}

export const defaultLimits: Required<Limits> = {
  time_s: 600,
  memory_MB: Math.min(4096, Math.round((totalmem() / 1024 / 1024) * 0.6)),
};

const childEntry = createRequire(import.meta.url).resolve('@coveline/compute/child');
const keptStderr = 4000;

/**
 * Runs the default export of `module` (a file URL or path of built JavaScript) in a process of its own. An endless
 * loop, a crash or exhausted memory ends that process alone, and the process ends when this one does.
 * Throws `LimitError` (time or memory), `TaskError` (the task threw), `ChildFault` (it died without a word),
 * or the reason of the signal.
 */
export async function runInChild<R>(
  module: string,
  payload: unknown,
  folder: string,
  { signal, onProgress, limits = {} }: ChildControl = {},
): Promise<ChildResult<R>> {
  signal?.throwIfAborted();
  const { time_s, memory_MB } = { ...defaultLimits, ...limits };
  const child = start(memory_MB);
  const stages: string[] = [];
  let stderr = '';
  let timedOut = false;
  let answer: FromChild | undefined;

  const kill = () => child.kill('SIGKILL');
  let onAbort!: () => void;
  const aborted = new Promise<never>((_, reject) => {
    onAbort = () => {
      kill();
      reject(signal!.reason);
    };
  });
  const timer = setTimeout(() => {
    timedOut = true;
    kill();
  }, time_s * 1000);
  signal?.addEventListener('abort', onAbort, { once: true });
  child.stderr!.on('data', (chunk: Buffer) => {
    stderr = (stderr + chunk.toString()).slice(-keptStderr);
  });
  child.stdout!.resume();
  child.on('message', (message: FromChild) => {
    if (message.type !== 'progress') {
      answer = message;
    } else {
      if (stages.at(-1) !== message.stage) stages.push(message.stage);
      onProgress?.(message.stage, message.done);
    }
  });

  try {
    const ended = new Promise<string>((resolve, reject) => {
      child.once('error', reject);
      child.once('close', (code, by) => resolve(by ?? `exit code ${code}`));
    });
    child.send({ module, payload, folder } satisfies Start, () => {});
    const how = await Promise.race([ended, aborted]);
    signal?.throwIfAborted();
    if (answer?.type === 'done') return { result: answer.result as R, peakMemory_MB: answer.peakMemory_MB };
    if (timedOut) throw limitError('time', `${time_s} s`, stages);
    if (outOfMemory(stderr, answer)) throw limitError('memory', `${memory_MB} MB`, stages);
    if (answer?.type === 'failed') throw new TaskError(answer.message, answer);
    throw new ChildFault(
      `The worker process ended by ${how} during "${stages.at(-1) ?? 'start'}".\n${stderr}`,
    );
  } finally {
    clearTimeout(timer);
    signal?.removeEventListener('abort', onAbort);
  }
}

function start(memory_MB: number): ChildProcess {
  // Node options of this process (a test runner's loaders, say) are not for the child, which runs built files.
  const { NODE_OPTIONS: _, ...environment } = process.env;
  return fork(childEntry, [], {
    execArgv: [`--max-old-space-size=${memory_MB}`],
    env: { ...environment, [parentVariable]: String(process.pid), [memoryVariable]: String(memory_MB) },
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  });
}

/** V8 at its heap limit, the watchdog, and an allocation that the system refused. */
function outOfMemory(stderr: string, answer: FromChild | undefined): boolean {
  const said = answer?.type === 'failed' ? `${answer.name}: ${answer.message}` : stderr;
  return [
    memoryMark,
    'heap out of memory',
    'Array buffer allocation failed',
    'could not allocate memory',
  ].some((sign) => said.includes(sign));
}

function limitError(limit: 'time' | 'memory', value: string, stages: readonly string[]): LimitError {
  const during = stages.at(-1);
  const finished = stages.slice(0, -1);
  const where = during === undefined ? 'before the work began' : `during "${during}"`;
  return new LimitError(limit, `Stopped at the limit of ${value} of ${limit} ${where}.`, finished);
}
