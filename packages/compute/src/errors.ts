/** The input cannot be read or used: one sentence for a person, and a code for a program. */
export class InputError extends Error {
  override readonly name = 'InputError';
  readonly code: string;

  constructor(code: string, message: string) {
    super(message);
    this.code = code;
  }
}

export type LimitKind = 'time' | 'memory' | 'size';

/** A limit ended the work; the input may be good. */
export class LimitError extends Error {
  override readonly name = 'LimitError';
  readonly code: string;
  readonly limit: LimitKind;
  /** Stages that were complete, in order, in the words of the progress messages. */
  readonly finished: readonly string[];

  constructor(limit: LimitKind, message: string, finished: readonly string[] = []) {
    super(message);
    this.limit = limit;
    this.code = `limit-${limit}`;
    this.finished = finished;
  }
}

/** A task threw: name, code and message of its error. The caller decides whether the input or we are to blame. */
export class TaskError extends Error {
  override readonly name = 'TaskError';
  readonly thrown: { readonly name: string; readonly code: string; readonly stack: string };

  constructor(message: string, thrown: TaskError['thrown']) {
    super(message);
    this.thrown = thrown;
  }
}

/** The child ended without an answer and without having hit a limit. Always our fault. */
export class ChildFault extends Error {
  override readonly name = 'ChildFault';
}
