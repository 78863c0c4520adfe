import { changed, historyEntry } from '@coveline/api';
import { command } from '@coveline/project';
import { getMachine, history } from '@coveline/store';
import * as z from 'zod';
import type { App } from '../app-type.ts';
import { performCommand, performRedo, performUndo } from '../change.ts';
import type { Context } from '../context.ts';
import { currentMachine } from '../current-machine.ts';
import { problems } from '../problem.ts';
import { machineParams } from './machines.ts';

export function commandRoutes(app: App, context: Context): void {
  const response = { 200: changed, ...problems };

  app.post(
    '/api/machines/:machine/commands',
    { schema: { params: machineParams, body: command, response } },
    async ({ params, body }) => {
      await performCommand(context, params.machine, body);
      return await currentMachine(context, params.machine);
    },
  );

  app.post(
    '/api/machines/:machine/undo',
    { schema: { params: machineParams, response } },
    async ({ params }) => {
      await performUndo(context, params.machine);
      return await currentMachine(context, params.machine);
    },
  );

  app.post(
    '/api/machines/:machine/redo',
    { schema: { params: machineParams, response } },
    async ({ params }) => {
      await performRedo(context, params.machine);
      return await currentMachine(context, params.machine);
    },
  );

  app.get(
    '/api/machines/:machine/history',
    { schema: { params: machineParams, response: { 200: z.array(historyEntry), ...problems } } },
    async ({ params }) => {
      const entries = await context.store.transaction(async (tx) => {
        await getMachine(tx, params.machine);
        return await history(tx, params.machine);
      });
      return entries.map(({ seq, at, by, what, command, kind }) => ({
        seq,
        at: at.toISOString(),
        by,
        what,
        command,
        kind,
      }));
    },
  );
}
