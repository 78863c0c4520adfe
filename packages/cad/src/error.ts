/** Why a file could not be read. */
export type CadErrorCode =
  | 'empty'
  | 'unknownFormat'
  | 'truncated'
  | 'damaged'
  | 'noGeometry'
  | 'tooLarge'
  | 'hostile'
  | 'unsupported';

/** A file that cannot be read. `message` is one sentence for the person who chose the file: what, where, what to do. */
export class CadError extends Error {
  override readonly name = 'CadError';
  readonly code: CadErrorCode;

  constructor(code: CadErrorCode, message: string) {
    super(message);
    this.code = code;
  }
}
