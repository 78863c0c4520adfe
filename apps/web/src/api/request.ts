import type { Problem } from '@coveline/api';
import { m } from '../messages/index.ts';

/** The server said no, or could not be reached. The message is a sentence for a person. */
export class ApiError extends Error {
  readonly status: number;
  readonly code: string;

  constructor(status: number, problem: Problem) {
    super(problem.message);
    this.status = status;
    this.code = problem.code;
  }
}

/** Fetches; resolves only with a good answer. */
export async function request(path: string, init?: RequestInit): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(path, init);
  } catch {
    throw new ApiError(0, { message: m.problem.unreachable, code: 'unreachable' });
  }
  if (response.ok) return response;
  throw problemOf(response.status, await response.text());
}

/** The JSON of a good answer, or the problem that it tells. */
export async function answerOf<T>(status: number, text: string): Promise<T> {
  if (status >= 200 && status < 300) return JSON.parse(text) as T;
  throw problemOf(status, text);
}

function problemOf(status: number, text: string): ApiError {
  if (status === 0) return new ApiError(0, { message: m.problem.unreachable, code: 'unreachable' });
  try {
    const said = JSON.parse(text) as Partial<Problem>;
    if (typeof said.message === 'string')
      return new ApiError(status, { message: said.message, code: said.code ?? String(status) });
  } catch {
    // Not from our server: a proxy's page, say. The status is all there is to tell.
  }
  return new ApiError(status, { message: m.problem.strange(status), code: String(status) });
}
