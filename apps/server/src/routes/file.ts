import { job } from '@coveline/api';
import { getMachine, getRevision, orderJob } from '@coveline/store';
import * as z from 'zod';
import type { App } from '../app-type.ts';
import type { Context } from '../context.ts';
import { jobAnswer } from '../job-answer.ts';
import { problems, RequestError } from '../problem.ts';
import { slug } from '../slug.ts';
import { isSurveyed, revisionOf } from '../surveyed.ts';
import { revisionParams } from './results.ts';
import { sendBlob } from './send-blob.ts';

export function fileRoutes(app: App, { store }: Context): void {
  const base = '/api/machines/:machine/revisions/:revision';

  app.post(
    `${base}/file`,
    { schema: { params: revisionParams, response: { 200: job, ...problems } } },
    async ({ params: { machine, revision } }) => {
      if (!(await isSurveyed(store, machine, revision)))
        throw new RequestError(409, 'not-surveyed', 'Survey this revision before you make its file.');
      return jobAnswer(
        await store.transaction((tx) => orderJob(tx, store.engine, { kind: 'file', machine, revision })),
      );
    },
  );

  app.get(
    `${base}/file.pdf`,
    {
      schema: {
        params: revisionParams,
        response: { 200: z.unknown().describe('PDF'), ...problems },
      },
    },
    async (request, reply) => {
      const { machine, revision } = request.params;
      const { pdf, label } = await store.transaction(async (tx) => {
        const { project } = await getMachine(tx, machine);
        const { label } = revisionOf(project, revision);
        return { label, pdf: (await getRevision(tx, machine, revision)).pdf };
      });
      if (pdf === null)
        throw new RequestError(404, 'no-file', 'The file of this revision has not been made yet.');
      reply.header('content-disposition', `inline; filename="${machine}-${slug(label)}.pdf"`);
      return sendBlob(request, reply, store, pdf, 'application/pdf');
    },
  );
}
