import { readFile } from 'node:fs/promises';
import { decodeModel, type Model } from '@coveline/model';
import type { Store, SurveyRow } from '@coveline/store';

/** The model as it was surveyed, +Z up. */
export async function readModelBlob(store: Store, survey: SurveyRow): Promise<Model> {
  return decodeModel(await readFile(store.blobs.path(survey.model)));
}
