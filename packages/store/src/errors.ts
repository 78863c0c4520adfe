export type StoreErrorCode =
  | 'not-found'
  | 'nothing-to-undo'
  | 'nothing-to-redo'
  | 'exists'
  | 'data-in-use'
  | 'database-unreachable'
  | 'database-too-old';

/** The store cannot do what was asked; one sentence for a person, a code for a program. */
export class StoreError extends Error {
  override readonly name = 'StoreError';
  readonly code: StoreErrorCode;

  constructor(code: StoreErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.code = code;
  }
}
