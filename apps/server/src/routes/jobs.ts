import { job } from '@coveline/api';
import { cancelJob, getMachine, getRevision, listJobs, orderJob } from '@coveline/store';
import * as z from 'zod';
import type { App } from '../app-type.ts';
import type { Context } from '../context.ts';
import { jobAnswer } from '../job-answer.ts';
import { problems } from '../problem.ts';
import { revisionParams } from './results.ts';

export function jobRoutes(app: App, { store }: Context): void {
  app.get(
    '/api/jobs',
    {
      schema: {
        querystring: z.object({ machine: z.string().optional() }),
        response: { 200: z.array(job), ...problems },
      },
    },
    async ({ query }) => (await store.transaction((tx) => listJobs(tx, query.machine))).map(jobAnswer),
  );

  app.post(
    '/api/jobs/:job/cancel',
    { schema: { params: z.object({ job: z.string() }), response: { 200: job, ...problems } } },
    async ({ params }) => jobAnswer(await store.transaction((tx) => cancelJob(tx, store.engine, params.job))),
  );

  app.post(
    '/api/machines/:machine/revisions/:revision/survey',
    { schema: { params: revisionParams, response: { 200: job, ...problems } } },
    async ({ params }) =>
      jobAnswer(
        await store.transaction(async (tx) => {
          await getMachine(tx, params.machine);
          await getRevision(tx, params.machine, params.revision);
          return await orderJob(tx, store.engine, { kind: 'survey', ...params });
        }),
      ),
  );
}
