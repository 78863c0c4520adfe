import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { decodeModel, type Model } from '@coveline/model';
import type { SurveyOutcome } from '@coveline/survey';
import { InputError, LimitError, TaskError } from './errors.ts';
import { readOutcome } from './outcome-files.ts';
import { type FileSurveyRequest, type FileSurveySummary, modelFile } from './request.ts';
import { type ChildControl, type Limits, runInChild } from './run-in-child.ts';

const task = pathToFileURL(createRequire(import.meta.url).resolve('@coveline/compute/survey-task')).href;

export interface SurveyControl extends Omit<ChildControl, 'limits'> {
  readonly limits?: Limits & {
    /** Size of the file. Default 512. */
    readonly size_MB?: number;
  };
}

export interface FileSurvey extends FileSurveySummary {
  /** +Z up, tilted as asked: the frame of the outcome. */
  readonly model: Model;
  readonly outcome: SurveyOutcome;
  readonly peakMemory_MB: number;
}

/**
 * Reads and surveys a model file in a child process.
 * Throws `InputError` (cannot be read), `LimitError` (time, memory or size), the signal's reason when aborted;
 * anything else is a fault of ours.
 */
export async function surveyFile(
  request: FileSurveyRequest,
  control: SurveyControl = {},
): Promise<FileSurvey> {
  const folder = await mkdtemp(join(tmpdir(), 'coveline-'));
  try {
    const summary = await surveyFileInto(folder, request, control);
    const [bytes, outcome] = await Promise.all([readFile(join(folder, modelFile)), readOutcome(folder)]);
    return { ...summary, model: decodeModel(bytes), outcome };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The same, but model and outcome stay as files in `folder`: see `modelFile` and `outcomeFiles`. */
export async function surveyFileInto(
  folder: string,
  request: FileSurveyRequest,
  { limits = {}, ...control }: SurveyControl = {},
): Promise<FileSurveySummary & { readonly peakMemory_MB: number }> {
  const { size_MB, ...ofChild } = limits;
  const payload = { ...request, path: resolve(request.path), ...(size_MB !== undefined && { size_MB }) };
  try {
    const child = { ...control, limits: ofChild };
    const { result, peakMemory_MB } = await runInChild<FileSurveySummary>(task, payload, folder, child);
    return { ...result, peakMemory_MB };
  } catch (error) {
    throw error instanceof TaskError ? named(error) : error;
  }
}

/** The error that the task meant, as far as it is not a fault of ours. */
function named(error: TaskError): Error {
  const { name, code } = error.thrown;
  if (name === 'CadError' || name === 'InputError') return new InputError(code, error.message);
  if (name === 'LimitError') return new LimitError('size', error.message);
  return error;
}
