import { basename } from 'node:path';
import { uploadAnswer } from '@coveline/api';
import { lengthUnit, type Revision, upAxis } from '@coveline/project';
import { addRevision, getMachine, lockMachine, orderJob, type StoredFile } from '@coveline/store';
import type { MultipartFile } from '@fastify/multipart';
import type { FastifyRequest } from 'fastify';
import * as z from 'zod';
import type { App } from '../app-type.ts';
import type { Context } from '../context.ts';
import { jobAnswer } from '../job-answer.ts';
import { problems, RequestError } from '../problem.ts';
import { machineParams } from './machines.ts';

const uploadFields = z.object({
  label: z.string().max(100).optional(),
  up: upAxis.optional(),
  unit: lengthUnit.optional(),
});

interface Upload extends StoredFile {
  readonly name: string;
  readonly fields: z.infer<typeof uploadFields>;
}

export function uploadRoutes(app: App, context: Context): void {
  const { store, by } = context;

  app.post(
    '/api/machines/:machine/revisions',
    {
      schema: {
        description: 'multipart/form-data: file, and optionally label, up, unit',
        consumes: ['multipart/form-data'],
        params: machineParams,
        response: { 200: uploadAnswer, ...problems },
      },
    },
    async (request) => {
      const { machine } = request.params;
      await store.transaction((tx) => getMachine(tx, machine));
      const upload = await receive(request, context);
      return await store.transaction(async (tx) => {
        const { project } = await lockMachine(tx, machine);
        const revision = newRevision(project.revisions, upload);
        const what = `Added revision ${revision.label} from ${revision.file}`;
        await addRevision(tx, machine, revision, upload, { by, what });
        const job = await orderJob(tx, store.engine, { kind: 'survey', machine, revision: revision.id });
        return { revision: revision.id, job: jobAnswer(job) };
      });
    },
  );
}

/** The file goes to disk as it arrives; form fields may stand before or behind it. */
async function receive(request: FastifyRequest, { store, upload_MB }: Context): Promise<Upload> {
  if (!request.isMultipart())
    throw new RequestError(
      415,
      'not-multipart',
      'Send the model as multipart/form-data with the field "file".',
    );
  const limits = { fileSize: upload_MB * 1024 * 1024, files: 1, fields: 10 };
  const texts: Record<string, unknown> = {};
  let stored: (StoredFile & { name: string }) | undefined;
  for await (const part of request.parts({ limits })) {
    if (part.type === 'field') {
      if (part.value !== '') texts[part.fieldname] = part.value;
    } else {
      const { sha256, bytes } = await store.blobs.receive(whole(part, upload_MB));
      stored = { sha256, size_bytes: bytes, name: basename(part.filename).slice(0, 200) };
    }
  }
  if (!stored || stored.name === '')
    throw new RequestError(400, 'no-file', 'There is no model in the request: send it in the field "file".');
  if (stored.size_bytes === 0)
    throw new RequestError(400, 'empty-file', `${stored.name} is empty: choose a file with a model in it.`);
  const fields = uploadFields.safeParse(texts);
  if (!fields.success) {
    const [{ path, message }] = fields.error.issues;
    throw new RequestError(400, 'invalid', `"${path.join('.')}" is not as expected: ${message}.`);
  }
  return { ...stored, fields: fields.data };
}

async function* whole({ file, filename }: MultipartFile, limit_MB: number): AsyncGenerator<Buffer> {
  for await (const chunk of file) yield chunk as Buffer;
  if (file.truncated)
    throw new RequestError(413, 'too-large', `${filename} is larger than the ${limit_MB} MB that are taken.`);
}

function newRevision(existing: readonly Revision[], { name, fields }: Upload): Revision {
  const taken = new Set(existing.map((r) => r.id));
  let n = existing.length + 1;
  while (taken.has(`r${n}`)) n++;
  const { label, up = 'z', unit } = fields;
  return { id: `r${n}`, label: label ?? letter(existing.length), file: name, up, ...(unit && { unit }) };
}

/** Revisions are named by letters in drawings: A, B … Z, then by number. */
function letter(index: number): string {
  return index < 26 ? String.fromCharCode(65 + index) : String(index + 1);
}
