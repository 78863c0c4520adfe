import { type Problem, problem } from '@coveline/api';
import { InputError } from '@coveline/compute';
import { StoreError, type StoreErrorCode } from '@coveline/store';
import type { FastifyError } from 'fastify';

/** What every route may answer instead of its result. */
export const problems = { '4xx': problem, '5xx': problem };

/** A request that cannot be answered: an HTTP status, a code for a program, one sentence for a person. */
export class RequestError extends Error {
  override readonly name = 'RequestError';
  readonly statusCode: number;
  readonly code: string;

  constructor(statusCode: number, code: string, message: string) {
    super(message);
    this.statusCode = statusCode;
    this.code = code;
  }
}

const statusOf: Record<StoreErrorCode, number> = {
  'not-found': 404,
  exists: 409,
  'nothing-to-undo': 409,
  'nothing-to-redo': 409,
  'data-in-use': 503,
  'database-unreachable': 503,
  'database-too-old': 503,
};

/** The answer to an error. Status 500 means a fault of ours, whose details are for the log alone. */
export function problemOf(error: unknown): { status: number; problem: Problem } {
  if (error instanceof StoreError) return answer(statusOf[error.code], error.code, error.message);
  if (error instanceof RequestError) return answer(error.statusCode, error.code, error.message);
  if (error instanceof InputError) return answer(422, error.code, error.message);
  const { validation, statusCode = 500, code = 'request', message } = error as FastifyError;
  if (validation?.length) {
    const [{ instancePath, message: what }] = validation;
    const where = instancePath === '' ? 'The request' : `"${instancePath.slice(1).replaceAll('/', '.')}"`;
    return answer(
      400,
      'invalid',
      `${where} is not as expected: ${what ?? 'see the description of the API'}.`,
    );
  }
  if (statusCode < 500) return answer(statusCode, code.toLowerCase(), message);
  return answer(500, 'fault', 'Something went wrong on our side; the log of the server has the details.');
}

function answer(status: number, code: string, message: string): { status: number; problem: Problem } {
  return { status, problem: { code, message } };
}
