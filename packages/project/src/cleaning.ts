/** How each surface is cleaned: groups of parts, each with a way and a programme of steps. */
import * as z from 'zod';

export const cleaningWay = z.enum(['inPlace', 'outOfPlace', 'foamAndRinse', 'byHand', 'dry']);

export const stepKind = z.enum([
  'clear',
  'dismantle',
  'dryClean',
  'preRinse',
  'detergent',
  'rinse',
  'acid',
  'inspect',
  'disinfect',
  'finalRinse',
  'drain',
  'dry',
  'reassemble',
]);

export const soil = z.enum([
  'fat',
  'proteinCold',
  'proteinHeated',
  'starch',
  'sugar',
  'fruit',
  'mineral',
  'biofilm',
  'allergen',
  'powder',
  'fatDry',
  'rust',
]);

export const cleaningStep = z.object({
  kind: stepKind,
  medium: z.string().min(1).max(100).describe('id of a medium of the catalogue'),
  action: z.enum(['none', 'flow', 'spray', 'foam', 'soak', 'brush', 'wipe', 'vacuum', 'scrape']),
  concentration_pct: z.number().min(0).max(100).optional(),
  temperature_degC: z.number().min(-20).max(200).optional(),
  time_min: z.number().min(0).max(10_000).optional(),
  /** At the nozzle. */
  pressure_bar: z.number().min(0).max(1000).optional(),
  water_L: z.number().min(0).max(1e6).optional(),
  how: z.string().max(1000).default(''),
});

export const surfaceGroup = z.object({
  id: z.string().min(1).max(100),
  name: z.string().min(1).max(200),
  way: cleaningWay,
  soil,
  parts: z.array(z.string().min(1)),
  steps: z.array(cleaningStep).max(60),
  /** Why the parts are in it, one sentence each; empty where a person made it. */
  reasons: z.array(z.string()).default([]),
});

export type CleaningWay = z.infer<typeof cleaningWay>;
export type SoilName = z.infer<typeof soil>;
export type CleaningStep = z.infer<typeof cleaningStep>;
export type SurfaceGroup = z.infer<typeof surfaceGroup>;
