import { readFile } from 'node:fs/promises';
import { type Project, yardstickOf } from '@coveline/project';
import type { ReviewRequest } from '@coveline/review';
import type { Store, SurveyRow } from '@coveline/store';
import type { SurveyResult } from '@coveline/survey';
import { readModelBlob } from './model-blob.ts';

/** What a review of a surveyed revision is made from, and what of it is to be told beside the findings. */
export async function reviewRequest(
  store: Store,
  project: Project,
  revision: string,
  survey: SurveyRow,
): Promise<{ readonly request: ReviewRequest; readonly notes: readonly string[] }> {
  const { notes, ...yardstick } = yardstickOf(project);
  const request = {
    ...yardstick,
    model: await readModelBlob(store, survey),
    survey: JSON.parse(await readFile(store.blobs.path(survey.result), 'utf8')) as SurveyResult,
    partChanges: project.parts[revision] ?? {},
    answers: project.answers[revision] ?? {},
    groups: project.cleaning[revision] ?? {},
    today: today(),
  };
  return { request, notes };
}

export const today = (): string => new Date().toISOString().slice(0, 10);
