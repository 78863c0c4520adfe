/** Exit codes of the command, and how an error becomes one line on standard error. */
import { InputError, LimitError } from '@coveline/compute';

export const exitCodes = { done: 0, fault: 1, usage: 2, unreadable: 3, limit: 4 } as const;

/** Wrong use of the command: one sentence, exit code 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/** Writes what went wrong and returns the exit code. */
export function report(error: unknown, write: (line: string) => void): number {
  if (error instanceof UsageError) {
    write(`coveline: ${error.message}`);
    return exitCodes.usage;
  }
  if (error instanceof InputError) {
    write(`coveline: ${error.message}`);
    return exitCodes.unreadable;
  }
  if (error instanceof LimitError) {
    const finished = error.finished.length > 0 ? ` Finished before: ${error.finished.join(', ')}.` : '';
    write(`coveline: ${error.message}${finished}`);
    return exitCodes.limit;
  }
  write('coveline: this is a fault of ours, not of your input. Please report it with the lines below.');
  write(error instanceof Error ? (error.stack ?? error.message) : String(error));
  return exitCodes.fault;
}
