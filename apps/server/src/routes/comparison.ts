import { readFile } from 'node:fs/promises';
import { compareReviews, type Reviewed, type RevisionComparison } from '@coveline/review';
import type { SurveyResult } from '@coveline/survey';
import * as z from 'zod';
import type { App } from '../app-type.ts';
import type { Context } from '../context.ts';
import { readModelBlob } from '../model-blob.ts';
import { problems, RequestError } from '../problem.ts';
import { revisionParams } from './results.ts';

export function comparisonRoutes(app: App, { store, reviews }: Context): void {
  const reviewed = async (machine: string, revision: string): Promise<Reviewed> => {
    const { review, project, survey } = await reviews.current(machine, revision);
    return {
      model: await readModelBlob(store, survey),
      survey: JSON.parse(await readFile(store.blobs.path(survey.result), 'utf8')) as SurveyResult,
      result: review,
      decisions: project.decisions[revision] ?? {},
    };
  };
  app.get(
    '/api/machines/:machine/revisions/:revision/since/:before',
    {
      schema: {
        description: 'What became of the findings and places of another revision',
        params: revisionParams.extend({ before: z.string() }),
        response: { 200: z.unknown().describe('findings, places, parts, totals'), ...problems },
      },
    },
    async ({ params: { machine, revision, before } }): Promise<RevisionComparison> => {
      if (revision === before)
        throw new RequestError(400, 'same-revision', 'Choose two different revisions to compare.');
      const today = new Date().toISOString().slice(0, 10);
      return compareReviews(await reviewed(machine, before), await reviewed(machine, revision), today);
    },
  );
}
