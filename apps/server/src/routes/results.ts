import { readFile } from 'node:fs/promises';
import type { ReviewAnswer, SiteAnswer } from '@coveline/api';
import { decodeFields } from '@coveline/compute';
import type { SurveyRow } from '@coveline/store';
import type { MeasureName } from '@coveline/survey';
import * as z from 'zod';
import type { App } from '../app-type.ts';
import type { Context } from '../context.ts';
import { drawingsNamed, drawingsOf } from '../drawings.ts';
import { problems, RequestError } from '../problem.ts';
import { siteAnswer } from '../site-answer.ts';
import { surveyed } from '../surveyed.ts';
import { sendBlob } from './send-blob.ts';

export const revisionParams = z.object({ machine: z.string(), revision: z.string() });
const bytes = { 200: z.unknown().describe('bytes'), ...problems };
const base = '/api/machines/:machine/revisions/:revision';

export function resultRoutes(app: App, context: Context): void {
  const { store } = context;

  const surveyOf = async ({ machine, revision }: z.infer<typeof revisionParams>): Promise<SurveyRow> =>
    (await store.transaction((tx) => surveyed(tx, machine, revision))).survey;

  app.get(
    `${base}/model`,
    { schema: { description: 'The packed model, +Z up', params: revisionParams, response: bytes } },
    async (request, reply) => {
      const { model } = await surveyOf(request.params);
      return sendBlob(request, reply, store, model, 'application/octet-stream');
    },
  );

  app.get(
    `${base}/survey`,
    {
      schema: {
        params: revisionParams,
        response: { 200: z.unknown().describe('measures of coveline.survey/1'), ...problems },
      },
    },
    async (request, reply) => {
      const { result } = await surveyOf(request.params);
      return sendBlob(request, reply, store, result, 'application/json; charset=utf-8');
    },
  );

  app.get(
    `${base}/fields/:measure`,
    {
      schema: {
        description: 'Float32, little-endian, one number per triangle in the order of the model',
        params: revisionParams.extend({ measure: z.string() }),
        response: bytes,
      },
    },
    async ({ params }, reply) => {
      const { fields } = await surveyOf(params);
      const field = decodeFields(await readFile(store.blobs.path(fields)))[params.measure as MeasureName];
      if (!field)
        throw new RequestError(
          404,
          'no-field',
          `The measure "${params.measure}" has no field on this revision.`,
        );
      const { buffer, byteOffset, byteLength } = field;
      return reply.type('application/octet-stream').send(Buffer.from(buffer, byteOffset, byteLength));
    },
  );

  app.get(
    `${base}/drawings`,
    {
      schema: {
        description:
          'Packed numbers: by place id triangles and lines, flat xyz, mm. Without `places`: of those that findings name, large ones left out',
        params: revisionParams,
        querystring: z.object({ places: z.string().optional() }),
        response: bytes,
      },
    },
    async ({ params, query: { places } }, reply) => {
      const packed =
        places === undefined
          ? await drawingsNamed(store, await context.reviews.current(params.machine, params.revision))
          : await drawingsOf(store, await surveyOf(params), places.split(','));
      return reply.type('application/octet-stream').send(Buffer.from(packed.buffer));
    },
  );

  app.get(
    `${base}/review`,
    {
      schema: {
        params: revisionParams,
        response: { 200: z.unknown().describe('coveline.review/1 with the decisions taken'), ...problems },
      },
    },
    async ({ params: { machine, revision } }): Promise<ReviewAnswer> => {
      const { review, project } = await context.reviews.current(machine, revision);
      return { ...review, decisions: project.decisions[revision] ?? {} };
    },
  );

  app.get(
    `${base}/site`,
    {
      schema: {
        description: 'What geometry and names tell of the site, and the site that the survey went by',
        params: revisionParams,
        response: { 200: z.unknown().describe('proposals, notes, surveyed'), ...problems },
      },
    },
    async ({ params }): Promise<SiteAnswer> => await siteAnswer(store, await surveyOf(params)),
  );
}
