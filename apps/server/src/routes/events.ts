import * as z from 'zod';
import type { App } from '../app-type.ts';
import type { Context } from '../context.ts';
import { problems } from '../problem.ts';

export function eventRoutes(app: App, { live }: Context): void {
  app.get(
    '/api/events',
    {
      sse: 'only',
      config: { rateLimit: false },
      schema: {
        description: 'Server-sent events; on every reconnect read again what is shown',
        response: { 200: z.unknown().describe('text/event-stream of Event'), ...problems },
      },
    },
    async (_request, reply) => {
      reply.sse.keepAlive();
      const unsubscribe = live.subscribe({
        // A client that left is taken off the list by `onClose`.
        send: (data) => void reply.sse.send({ data }).catch(() => {}),
        close: () => reply.sse.close(),
      });
      reply.sse.onClose(unsubscribe);
      reply.sse.sendHeaders();
      reply.raw.flushHeaders();
    },
  );
}
