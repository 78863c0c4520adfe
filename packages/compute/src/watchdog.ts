/**
 * Runs in a thread of the child, so that it acts even while the child's main thread is stuck in a loop: ends the
 * process when its parent is gone or when it holds more memory than allowed. V8's own heap limit does not count
 * typed arrays and WebAssembly memory; the resident set does.
 */
import { writeSync } from 'node:fs';
import { memoryMark, memoryVariable, parentVariable } from './messages.ts';

const interval_ms = 50;
const parent = Number(process.env[parentVariable]);
const limit_bytes = Number(process.env[memoryVariable]) * 1024 * 1024;

setInterval(() => {
  if (process.ppid !== parent) process.kill(process.pid, 'SIGKILL');
  if (process.memoryUsage.rss() > limit_bytes) {
    writeSync(2, `\n${memoryMark}\n`);
    process.kill(process.pid, 'SIGKILL');
  }
}, interval_ms);
