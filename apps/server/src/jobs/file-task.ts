/** Task: make the PDF of a surveyed revision, in a process of its own. */
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { decodeDrawings, decodeFields, type TaskContext } from '@coveline/compute';
import { makeFile } from '@coveline/file';
import { decodeModel } from '@coveline/model';
import type { ReviewResult } from '@coveline/review';
import type { SurveyResult } from '@coveline/survey';
import { type FileOrder, type FileSummary, filePdf, fileReview } from './file-order.ts';

export default async function fileTask(
  order: FileOrder,
  { folder, onProgress }: TaskContext,
): Promise<FileSummary> {
  const { project, revision, today } = order;
  onProgress('Making the file', 0);
  const [model, result, fields, drawings, review] = await Promise.all([
    readFile(order.model).then(decodeModel),
    readJson<SurveyResult>(order.survey),
    readFile(order.fields).then(decodeFields),
    readFile(order.drawings).then(decodeDrawings),
    readJson<ReviewResult>(join(folder, fileReview)),
  ]);
  const { pdf, warnings } = await makeFile({
    project,
    revisionId: revision,
    model,
    outcome: { result, fields, drawings },
    review,
    decisions: project.decisions[revision] ?? {},
    date: today,
  });
  await writeFile(join(folder, filePdf), pdf);
  return { warnings };
}

async function readJson<T>(path: string): Promise<T> {
  return JSON.parse(await readFile(path, 'utf8')) as T;
}
