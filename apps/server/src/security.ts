import type { IncomingHttpHeaders } from 'node:http';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import type { App } from './app-type.ts';
import { RequestError } from './problem.ts';

/** Generous for one person at a workbench, tight for a loop gone wild. */
const requestsPerMinute = 3000;
const reading = new Set(['GET', 'HEAD', 'OPTIONS']);
const loopbackNames = new Set(['localhost', '127.0.0.1', '[::1]']);

/** Headers, rate limit, and no requests that another web site makes the browser send. */
export async function guard(app: App, loopbackOnly: boolean): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        // The kernels of the view and of the reader are WebAssembly.
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        workerSrc: ["'self'", 'blob:'],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        fontSrc: ["'self'", 'data:'],
        connectSrc: ["'self'", 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'self'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    // Plain HTTP on loopback; a proxy in front that speaks TLS sets this itself.
    strictTransportSecurity: false,
  });
  await app.register(rateLimit, {
    max: requestsPerMinute,
    timeWindow: '1 minute',
    errorResponseBuilder: (_request, { after }) =>
      new RequestError(429, 'too-many', `Too many requests: try again in ${after}.`),
  });
  app.addHook('onRequest', async (request) => {
    const { host = '' } = request.headers;
    // A name that was made to point at this machine would pass the check of the origin.
    if (loopbackOnly && !loopbackNames.has(hostName(host)))
      throw new RequestError(403, 'host', `This server answers on localhost only, not as "${host}".`);
    if (!reading.has(request.method) && isForeign(request.headers, host))
      throw new RequestError(403, 'origin', 'Changes are taken from the workbench of this server only.');
  });
}

function hostName(host: string): string {
  return host.replace(/:\d*$/, '').toLowerCase();
}

/** Browsers name the origin of every request that changes something; other programs need not. */
function isForeign(headers: IncomingHttpHeaders, host: string): boolean {
  if (headers.origin !== undefined)
    return !URL.canParse(headers.origin) || new URL(headers.origin).host !== host;
  const site = headers['sec-fetch-site'];
  return site !== undefined && site !== 'same-origin' && site !== 'none';
}
