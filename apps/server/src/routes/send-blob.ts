import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import type { Store } from '@coveline/store';
import type { FastifyReply, FastifyRequest } from 'fastify';

/** Sends a blob; its hash is the ETag, so a client that holds the bytes gets 304. */
export async function sendBlob(
  request: FastifyRequest,
  reply: FastifyReply,
  { blobs }: Store,
  sha256: string,
  type: string,
): Promise<FastifyReply> {
  const etag = `"${sha256}"`;
  reply.header('etag', etag).header('cache-control', 'private, no-cache');
  if (request.headers['if-none-match'] === etag) return reply.status(304).send();
  const path = blobs.path(sha256);
  const { size } = await stat(path);
  return reply.type(type).header('content-length', size).send(createReadStream(path));
}
