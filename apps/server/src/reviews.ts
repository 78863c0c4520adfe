import { createHash } from 'node:crypto';
import type { Project } from '@coveline/project';
import { type ReviewResult, review as reviewModel } from '@coveline/review';
import { type Store, type SurveyRow, storeReview } from '@coveline/store';
import { reviewRequest, today } from './review-request.ts';
import { surveyed } from './surveyed.ts';

/** A surveyed revision with the review of it and what it was made from. */
export interface Reviewed {
  readonly review: ReviewResult;
  readonly project: Project;
  readonly survey: SurveyRow;
}

export interface Reviews {
  /** The review of a revision as it stands now. Throws 404 while the revision is not surveyed. */
  readonly current: (machine: string, revision: string) => Promise<Reviewed>;
}

/** Reviews kept in memory; a review is computed again only when something that it is made from has changed. */
const kept = 16;

export function openReviews(store: Store): Reviews {
  const cache = new Map<string, { inputs: string; review: Promise<ReviewResult> }>();

  function remembered(
    place: string,
    inputs: string,
    compute: () => Promise<ReviewResult>,
  ): Promise<ReviewResult> {
    const last = cache.get(place);
    cache.delete(place);
    const entry = last?.inputs === inputs ? last : { inputs, review: compute() };
    cache.set(place, entry);
    entry.review.catch(() => cache.delete(place));
    if (cache.size > kept) cache.delete(cache.keys().next().value!);
    return entry.review;
  }

  return {
    current: async (machine, revision) => {
      const { project, survey } = await store.transaction((tx) => surveyed(tx, machine, revision));
      const { brief, parts, packs } = project;
      const partChanges = parts[revision] ?? {};
      const answers = project.answers[revision] ?? {};
      const groups = project.cleaning[revision] ?? {};
      const made = [survey.model, survey.result, brief, packs, partChanges, answers, groups, today()];
      const text = JSON.stringify(made);
      const inputs = createHash('sha256').update(text).digest('hex');
      const review = await remembered(`${machine}/${revision}`, inputs, async () => {
        const { request, notes } = await reviewRequest(store, project, revision, survey);
        const found = reviewModel(request);
        const findings = found.findings.map((finding) => finding.id);
        await store.transaction((tx) => storeReview(tx, { machine, revision, findings }));
        return { ...found, notes: [...notes, ...found.notes] };
      });
      return { review, project, survey };
    },
  };
}
