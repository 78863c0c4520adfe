import multipart from '@fastify/multipart';
import { fastifySSE } from '@fastify/sse';
import swagger from '@fastify/swagger';
import fastify from 'fastify';
import {
  jsonSchemaTransform,
  serializerCompiler,
  validatorCompiler,
  type ZodTypeProvider,
} from 'fastify-type-provider-zod';
import type { App } from './app-type.ts';
import type { Context } from './context.ts';
import { problemOf, RequestError } from './problem.ts';
import { catalogueRoutes } from './routes/catalogue.ts';
import { commandRoutes } from './routes/commands.ts';
import { comparisonRoutes } from './routes/comparison.ts';
import { eventRoutes } from './routes/events.ts';
import { fileRoutes } from './routes/file.ts';
import { jobRoutes } from './routes/jobs.ts';
import { machineRoutes } from './routes/machines.ts';
import { optionRoutes } from './routes/options.ts';
import { photographRoutes } from './routes/photographs.ts';
import { resultRoutes } from './routes/results.ts';
import { uploadRoutes } from './routes/upload.ts';
import { guard } from './security.ts';
import { workbench } from './workbench.ts';

export interface AppOptions {
  /** Folder of the built workbench. */
  readonly webDir: string;
  /** Only requests to a loopback name are answered: the server listens on loopback. */
  readonly loopbackOnly: boolean;
}

/** The HTTP side, not yet listening. */
export async function createApp(context: Context, { webDir, loopbackOnly }: AppOptions): Promise<App> {
  const app: App = fastify({
    logger: { level: 'warn', stream: process.stderr },
    forceCloseConnections: true,
    routerOptions: { maxParamLength: 500 },
  }).withTypeProvider<ZodTypeProvider>();
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  app.setErrorHandler((error, request, reply) => {
    const { status, problem } = problemOf(error);
    if (status >= 500) request.log.error(error);
    return reply.status(status).type('application/json').send(problem);
  });

  app.addHook('preClose', async () => context.live.hangUp());

  await guard(app, loopbackOnly);
  await app.register(multipart, { throwFileSizeLimit: false });
  await app.register(fastifySSE, { heartbeatInterval: 15_000 });
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Coveline',
        version: '1',
        description: 'Review of the hygienic design of food machines. Decision support, never a certificate.',
      },
    },
    transform: jsonSchemaTransform,
  });
  await app.register(async (scope) => {
    const api = scope.withTypeProvider<ZodTypeProvider>();
    machineRoutes(api, context);
    uploadRoutes(api, context);
    commandRoutes(api, context);
    resultRoutes(api, context);
    comparisonRoutes(api, context);
    fileRoutes(api, context);
    optionRoutes(api, context);
    photographRoutes(api, context);
    jobRoutes(api, context);
    eventRoutes(api, context);
    catalogueRoutes(api, context);
    api.get('/api/openapi.json', { schema: { hide: true } }, async () => app.swagger());
    api.all('/api/*', { schema: { hide: true } }, async ({ method, url }) => {
      throw new RequestError(404, 'not-found', `There is no ${method} ${url}: see /api/openapi.json.`);
    });
  });
  await workbench(app, webDir);
  return app;
}
