import { readFile } from 'node:fs/promises';
import type { SiteAnswer } from '@coveline/api';
import type { SiteSurveyResult } from '@coveline/compute';
import { proposeSite, type SiteProposals } from '@coveline/review';
import type { Store, SurveyRow } from '@coveline/store';
import { readModelBlob } from './model-blob.ts';

/** Proposals follow from the model alone, which is named by its hash. */
const kept = 8;
const proposed = new Map<string, Promise<SiteProposals>>();

/** What is proposed for a surveyed model, and the site that its survey went by. */
export async function siteAnswer(store: Store, survey: SurveyRow): Promise<SiteAnswer> {
  const { proposals, notes } = await proposalsFor(store, survey);
  const result = JSON.parse(await readFile(store.blobs.path(survey.result), 'utf8')) as SiteSurveyResult;
  return { proposals, notes, surveyed: result.site ?? null };
}

function proposalsFor(store: Store, survey: SurveyRow): Promise<SiteProposals> {
  const known = proposed.get(survey.model);
  if (known) return known;
  const found = readModelBlob(store, survey).then(proposeSite);
  proposed.set(survey.model, found);
  found.catch(() => proposed.delete(survey.model));
  if (proposed.size > kept) proposed.delete(proposed.keys().next().value!);
  return found;
}
