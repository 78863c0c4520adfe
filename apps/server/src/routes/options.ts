import type { OptionsAnswer } from '@coveline/api';
import { optionsFor, poolOf } from '@coveline/review';
import * as z from 'zod';
import type { App } from '../app-type.ts';
import type { Context } from '../context.ts';
import { problems, RequestError } from '../problem.ts';
import { reviewRequest } from '../review-request.ts';
import { revisionParams } from './results.ts';

export function optionRoutes(app: App, { store, reviews, trials }: Context): void {
  app.get(
    '/api/machines/:machine/revisions/:revision/options/:finding',
    {
      schema: {
        description: 'The options for a finding with their computed effect; may take seconds for a pool',
        params: revisionParams.extend({ finding: z.string() }),
        response: { 200: z.unknown().describe('options, best known first'), ...problems },
      },
    },
    async ({ params: { machine, revision, finding: id } }): Promise<OptionsAnswer> => {
      const { review, project, survey } = await reviews.current(machine, revision);
      const finding = review.findings.find((f) => f.id === id);
      if (!finding)
        throw new RequestError(404, 'not-found', `The review of this revision has no finding "${id}".`);
      const { request } = await reviewRequest(store, project, revision, survey);
      const pool = poolOf(finding, request);
      const proposals = pool ? await trials.proposals(survey, pool.id) : null;
      return { options: optionsFor(request, finding, proposals) };
    },
  );
}
