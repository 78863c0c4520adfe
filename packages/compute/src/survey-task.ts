/** Task: read a model file, survey it, leave everything in the folder, measure by measure. */
import { createHash } from 'node:crypto';
import { readFile, stat, writeFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { basename, join } from 'node:path';
import { readModel } from '@coveline/cad';
import { encodeModel, type Model, orient, triangleCount } from '@coveline/model';
import { siteOf } from '@coveline/project';
import { proposeSite } from '@coveline/review';
import type { SurveyOutcome } from '@coveline/survey';
import { InputError, LimitError } from './errors.ts';
import type { TaskContext } from './messages.ts';
import { writeOutcome } from './outcome-files.ts';
import { replaceFile } from './replace-file.ts';
import { type FileSurveyRequest, type FileSurveySummary, modelFile, summaryFile } from './request.ts';
import { surveyInThreads } from './survey-in-threads.ts';

const defaultSize_MB = 512;
const smallModel = 20_000;
const mostThreads = 4;
/** Share of the progress bar that reading takes, and how many measures there are: guesses that only move the bar. */
const readShare = 0.5;
const allMeasures = 5;

export default async function surveyTask(
  request: FileSurveyRequest,
  { folder, onProgress }: TaskContext,
): Promise<FileSurveySummary> {
  const { path, fileName = basename(path), up = 'z', unit, deviation_mm, tilt, tiltRange } = request;
  const { measures, settings } = request;
  const begun = performance.now();
  onProgress(`Reading ${fileName}`, 0);
  const bytes = await load(path, fileName, request.size_MB ?? defaultSize_MB);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const fromFile = await readModel(bytes, fileName, {
    ...(unit && { unit }),
    ...(deviation_mm !== undefined && { deviation_mm }),
    onProgress: (stage, done) => onProgress(stage, done * readShare),
  });
  const model = orient(fromFile, up);
  const threads = request.threads ?? threadsFor(model);
  const packed = shared(encodeModel(model));
  await writeFile(join(folder, modelFile), new Uint8Array(packed));
  const read = performance.now();
  onProgress('Looking at what stands around it', readShare);
  const proposed = proposeSite(model);
  const site = siteOf(request.site ?? {}, proposed.proposals);
  const keep = (outcome: SurveyOutcome): FileSurveySummary => {
    const seconds = { read: (read - begun) / 1000, survey: (performance.now() - read) / 1000 };
    const peakMemory_MB = process.resourceUsage().maxRSS / 1024;
    const summary = { sha256, fileBytes: bytes.length, seconds, peakMemory_MB };
    replaceFile(join(folder, summaryFile), JSON.stringify(summary));
    const notes = [...new Set([...outcome.result.notes, ...proposed.notes])];
    writeOutcome(folder, { ...outcome, result: { ...outcome.result, notes, site } });
    return summary;
  };
  const count = measures?.length || allMeasures;
  let finished = 0;
  const outcome = await surveyInThreads(
    packed,
    {
      ...(settings && { settings }),
      ...(measures && { measures }),
      ...(tilt && { tilt }),
      ...(tiltRange && { tiltRange }),
      site,
    },
    threads,
    {
      onProgress: (stage, done) =>
        onProgress(stage, readShare + (1 - readShare) * Math.min(1, (finished + done) / count)),
      onMeasure: (soFar) => {
        finished += 1;
        keep(soFar);
      },
    },
  );
  return keep(outcome);
}

/** Small models are done before a second thread has started. */
function threadsFor(model: Model): number {
  return triangleCount(model) < smallModel ? 1 : Math.min(mostThreads, availableParallelism());
}

function shared(bytes: Uint8Array): SharedArrayBuffer {
  const buffer = new SharedArrayBuffer(bytes.length);
  new Uint8Array(buffer).set(bytes);
  return buffer;
}

async function load(path: string, fileName: string, size_MB: number): Promise<Uint8Array> {
  const found = await stat(path).catch((error: NodeJS.ErrnoException) => {
    throw new InputError(
      'no-file',
      `"${path}" cannot be opened (${error.code}): check the path and its rights.`,
    );
  });
  if (!found.isFile()) throw new InputError('no-file', `"${path}" is not a file: name one model file.`);
  if (found.size > size_MB * 1024 * 1024)
    throw new LimitError(
      'size',
      `${fileName} has ${Math.ceil(found.size / 1024 / 1024)} MB, the limit is ${size_MB} MB: split it or raise the limit.`,
    );
  return await readFile(path).catch((error: NodeJS.ErrnoException) => {
    throw new InputError('no-file', `"${path}" cannot be read (${error.code}): check its rights.`);
  });
}
