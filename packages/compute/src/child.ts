/** Entry of a child process: runs one task and ends. */
import { Worker } from 'node:worker_threads';
import type { FromChild, Start, Task } from './messages.ts';

const progressInterval_ms = 50;

// The memory of a thread counts towards the limit: a small heap is enough for a watchdog.
new Worker(new URL('./watchdog.js', import.meta.url), { resourceLimits: { maxOldGenerationSizeMb: 16 } });
process.on('disconnect', () => process.exit(1));
process.once('message', (start: Start) => void run(start));

async function run({ module, folder, payload }: Start): Promise<void> {
  try {
    const task = ((await import(module)) as { default: Task<unknown, unknown> }).default;
    const result = await task(payload, { folder, onProgress: throttled() });
    end({ type: 'done', result, peakMemory_MB: process.resourceUsage().maxRSS / 1024 });
  } catch (thrown) {
    const error = thrown instanceof Error ? thrown : new Error(String(thrown));
    const code = 'code' in error ? String(error.code) : '';
    end({ type: 'failed', name: error.name, code, message: error.message, stack: error.stack ?? '' });
  }
}

function end(message: FromChild): void {
  process.send!(message, () => process.exit(0));
}

/** Every new stage is told; within a stage at most one message per interval. What is done never shrinks. */
function throttled(): (stage: string, done: number) => void {
  let lastStage = '';
  let last = 0;
  let most = 0;
  return (stage, done) => {
    const now = performance.now();
    most = Math.max(most, done);
    if (stage === lastStage && now - last < progressInterval_ms) return;
    lastStage = stage;
    last = now;
    process.send!({ type: 'progress', stage, done: most } satisfies FromChild);
  };
}
