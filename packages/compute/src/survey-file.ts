import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { decodeModel, type Model } from '@coveline/model';
import { InputError, LimitError, TaskError } from './errors.ts';
import { outcomeFiles, readOutcome, type SiteSurveyOutcome } from './outcome-files.ts';
import { type FileSurveyRequest, type FileSurveySummary, modelFile, summaryFile } from './request.ts';
import { type ChildControl, type Limits, runInChild } from './run-in-child.ts';

const task = pathToFileURL(createRequire(import.meta.url).resolve('@coveline/compute/survey-task')).href;

export interface SurveyControl extends Omit<ChildControl, 'limits'> {
  readonly limits?: Limits & {
    /** Size of the file. Default 512. */
    readonly size_MB?: number;
  };
}

export interface FileSurvey extends FileSurveySummary {
  /** +Z up: the frame of the outcome. */
  readonly model: Model;
  readonly outcome: SiteSurveyOutcome;
}

/** A limit ended the survey when some of its measures were finished. */
export class SurveyLimitError extends LimitError {
  readonly partial: FileSurvey;

  constructor(error: LimitError, partial: FileSurvey) {
    super(error.limit, error.message, error.finished);
    this.partial = partial;
  }
}

/**
 * Reads and surveys a model file in a child process.
 * Throws `InputError` (cannot be read), `LimitError` (time, memory or size; `SurveyLimitError` when there is
 * something finished to show), the signal's reason when aborted; anything else is a fault of ours.
 */
export async function surveyFile(
  request: FileSurveyRequest,
  control: SurveyControl = {},
): Promise<FileSurvey> {
  const folder = await mkdtemp(join(tmpdir(), 'coveline-'));
  try {
    await surveyFileInto(folder, request, control);
    return await readSurvey(folder);
  } catch (error) {
    const hasPart = error instanceof LimitError && existsSync(join(folder, outcomeFiles.survey));
    throw hasPart ? new SurveyLimitError(error, await readSurvey(folder)) : error;
  } finally {
    // A child that was just killed may finish one last write.
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function readSurvey(folder: string): Promise<FileSurvey> {
  const [summary, model, outcome] = await Promise.all([
    readFile(join(folder, summaryFile), 'utf8'),
    readFile(join(folder, modelFile)),
    readOutcome(folder),
  ]);
  return { ...(JSON.parse(summary) as FileSurveySummary), model: decodeModel(model), outcome };
}

/** The same, but model and outcome stay as files in `folder`: see `modelFile` and `outcomeFiles`. */
export async function surveyFileInto(
  folder: string,
  request: FileSurveyRequest,
  { limits = {}, ...control }: SurveyControl = {},
): Promise<FileSurveySummary> {
  const { size_MB, ...ofChild } = limits;
  const payload = { ...request, path: resolve(request.path), ...(size_MB !== undefined && { size_MB }) };
  try {
    const child = { ...control, limits: ofChild };
    return (await runInChild<FileSurveySummary>(task, payload, folder, child)).result;
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
