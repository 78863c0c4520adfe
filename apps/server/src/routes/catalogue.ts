import { builtIn, type Catalogue } from '@coveline/catalogue';
import { yardstickOf } from '@coveline/project';
import { getMachine } from '@coveline/store';
import * as z from 'zod';
import type { App } from '../app-type.ts';
import type { Context } from '../context.ts';
import { problems } from '../problem.ts';

const rows = { 200: z.array(z.unknown()), ...problems };
const query = z.object({ machine: z.string().optional().describe('with the packs of this machine') });

export function catalogueRoutes(app: App, { store }: Context): void {
  const catalogueFor = async (machine: string | undefined): Promise<Catalogue> => {
    if (machine === undefined) return builtIn;
    const { project } = await store.transaction((tx) => getMachine(tx, machine));
    return yardstickOf(project).catalogue;
  };
  for (const list of ['materials', 'requirements', 'sources', 'profiles'] as const)
    app.get(`/api/${list}`, { schema: { querystring: query, response: rows } }, async (request) => [
      ...(await catalogueFor(request.query.machine))[list].values(),
    ]);
}
