import { machine, machineSummary } from '@coveline/api';
import { project } from '@coveline/project';
import { createMachine, StoreError, type Tx } from '@coveline/store';
import * as z from 'zod';
import type { App } from '../app-type.ts';
import type { Context } from '../context.ts';
import { currentMachine } from '../current-machine.ts';
import { machineAnswer, machineList } from '../machine-answer.ts';
import { problems } from '../problem.ts';
import { slug } from '../slug.ts';

export const machineParams = z.object({ machine: z.string() });

export function machineRoutes(app: App, context: Context): void {
  const { store, by } = context;

  app.get('/api/machines', { schema: { response: { 200: z.array(machineSummary), ...problems } } }, () =>
    store.transaction(machineList),
  );

  app.post(
    '/api/machines',
    {
      schema: {
        body: z.object({ name: project.shape.name }),
        response: { 200: machineSummary, ...problems },
      },
    },
    ({ body: { name } }) =>
      store.transaction(async (tx) => {
        const empty = project.parse({ schema: 'coveline.project/1', name });
        return await machineAnswer(tx, await createUnderFreeId(tx, empty, by));
      }),
  );

  app.get(
    '/api/machines/:machine',
    { schema: { params: machineParams, response: { 200: machine, ...problems } } },
    ({ params }) => currentMachine(context, params.machine),
  );
}

/** The name as an address, with a number behind it when it is taken. */
async function createUnderFreeId(tx: Tx, created: z.infer<typeof project>, by: string): Promise<string> {
  const stem = slug(created.name);
  for (let n = 1; ; n++) {
    const id = n === 1 ? stem : `${stem}-${n}`;
    try {
      await createMachine(tx, id, created, { by, what: `Created “${created.name}”` });
      return id;
    } catch (error) {
      if (!(error instanceof StoreError && error.code === 'exists')) throw error;
    }
  }
}
