import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyReply } from 'fastify';
import type { App } from './app-type.ts';
import { RequestError } from './problem.ts';

/** Serves the built workbench; its own addresses all lead to the one page. */
export async function workbench(app: App, webDir: string): Promise<void> {
  const built = existsSync(join(webDir, 'index.html'));
  if (built) await app.register(fastifyStatic, { root: webDir, wildcard: false, setHeaders: cacheHashed });
  app.setNotFoundHandler(async ({ method, url }, reply) => {
    if (!built && method === 'GET')
      throw new RequestError(404, 'not-built', 'The workbench is not built: run "npm run build".');
    const isFile = /\.\w+$/.test(url.split('?')[0]);
    if (method !== 'GET' || isFile) throw new RequestError(404, 'not-found', `There is no ${method} ${url}.`);
    return reply.sendFile('index.html', { cacheControl: false });
  });
}

/** Names of assets carry a hash of their content; the page itself is asked for anew. */
function cacheHashed(reply: FastifyReply, path: string): void {
  const hashed = /[\\/]assets[\\/]/.test(path);
  reply.header('cache-control', hashed ? 'public, max-age=31536000, immutable' : 'no-cache');
}
