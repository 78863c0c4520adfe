import { materials, requirements, sources } from '@coveline/catalogue';
import * as z from 'zod';
import type { App } from '../app-type.ts';
import { problems } from '../problem.ts';

const rows = { 200: z.array(z.unknown()), ...problems };

export function catalogueRoutes(app: App): void {
  app.get('/api/materials', { schema: { response: rows } }, async () => [...materials]);
  app.get('/api/requirements', { schema: { response: rows } }, async () => [...requirements]);
  app.get('/api/sources', { schema: { response: rows } }, async () => [...sources]);
}
