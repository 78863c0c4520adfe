import { open } from 'node:fs/promises';
import { basename } from 'node:path';
import { photograph } from '@coveline/project';
import { getMachine, type Store } from '@coveline/store';
import type { MultipartFile } from '@fastify/multipart';
import * as z from 'zod';
import type { App } from '../app-type.ts';
import type { Context } from '../context.ts';
import { type ImageType, imageType } from '../image-kind.ts';
import { problems, RequestError } from '../problem.ts';
import { machineParams } from './machines.ts';
import { sendBlob } from './send-blob.ts';

/** Larger than what a tablet's camera makes, MB. */
const most_MB = 12;
const kept = photograph.pick({ sha256: true, name: true });

export function photographRoutes(app: App, { store }: Context): void {
  app.post(
    '/api/machines/:machine/photographs',
    {
      schema: {
        description: `multipart/form-data with a JPEG or PNG of at most ${most_MB} MB in the field "file"; an answer then names it`,
        consumes: ['multipart/form-data'],
        params: machineParams,
        response: { 200: kept, ...problems },
      },
    },
    async (request) => {
      await store.transaction((tx) => getMachine(tx, request.params.machine));
      if (!request.isMultipart()) throw noPicture();
      const file = await request.file({ limits: { fileSize: most_MB * 1024 * 1024, files: 1, fields: 0 } });
      if (!file) throw noPicture();
      const { sha256 } = await store.blobs.receive(picture(file));
      return { sha256, name: basename(file.filename).slice(0, 200) || 'photograph' };
    },
  );

  app.get(
    '/api/machines/:machine/photographs/:sha256',
    {
      schema: {
        params: machineParams.extend({ sha256: kept.shape.sha256 }),
        response: { 200: z.unknown().describe('the picture'), ...problems },
      },
    },
    async (request, reply) => {
      const { machine, sha256 } = request.params;
      await store.transaction((tx) => getMachine(tx, machine));
      const type = await storedType(store, sha256);
      if (!type) throw new RequestError(404, 'not-found', 'There is no such photograph.');
      return await sendBlob(request, reply, store, sha256, type);
    },
  );
}

const noPicture = () =>
  new RequestError(400, 'no-file', 'Send one JPEG or PNG as multipart/form-data in the field "file".');

/** Stops at the first bytes of what is no picture, and at the limit. */
async function* picture({ file, filename }: MultipartFile): AsyncGenerator<Buffer> {
  let first = true;
  for await (const chunk of file) {
    if (first && !imageType(chunk as Buffer))
      throw new RequestError(415, 'no-picture', `${filename} is not taken: a photograph is a JPEG or a PNG.`);
    first = false;
    yield chunk as Buffer;
  }
  if (first) throw new RequestError(400, 'empty-file', `${filename} is empty.`);
  if (file.truncated)
    throw new RequestError(413, 'too-large', `${filename} is larger than the ${most_MB} MB that are taken.`);
}

/** Undefined where there is no such blob, or where it is no picture: models and results are not handed out here. */
async function storedType({ blobs }: Store, sha256: string): Promise<ImageType | undefined> {
  const file = await open(blobs.path(sha256)).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null;
    throw error;
  });
  if (!file) return undefined;
  const { buffer } = await file.read(Buffer.alloc(16), 0, 16, 0).finally(() => file.close());
  return imageType(buffer);
}
