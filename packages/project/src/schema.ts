/**
 * What people decide about a machine, as one schema: it validates input, gives the types, and describes the
 * HTTP API. A project on disk is a folder with `project.json` of this shape beside its model files.
 */
import { pack } from '@coveline/catalogue';
import * as z from 'zod';
import { answer } from './answer.ts';
import { cleaningWay, surfaceGroup } from './cleaning.ts';
import { keptCalculation } from './kept-calculation.ts';
import { sampleResult } from './sample-result.ts';
import { siteChange } from './site.ts';

export const areaClass = z.enum(['food', 'splash', 'nonFood']).describe('EN 1672-2');
export const upAxis = z.enum(['x', 'y', 'z', '-x', '-y', '-z']);
export const lengthUnit = z.enum(['mm', 'cm', 'm', 'in']);

export const careLevel = z
  .enum(['basic', 'raised', 'high'])
  .describe(
    'basic: the food is cooked or stable afterwards; raised: chilled ready food; high: vulnerable consumers or sterile filling',
  );

export const product = z.object({
  name: z.string().min(1).max(200),
  ph: z.number().min(0).max(14).optional(),
  waterActivity: z.number().min(0).max(1).optional(),
  fat_percent: z.number().min(0).max(100).optional(),
  protein_percent: z.number().min(0).max(100).optional(),
  storage_degC: z.number().min(-60).max(150).optional(),
  shelfLife_days: z.number().min(0).max(5000).optional(),
  allergens: z.array(z.string().min(1)).default([]),
  particles: z.boolean().default(false),
  kind: z
    .enum(['general', 'rawAnimal', 'freshCut', 'fermented', 'dryForInfants', 'fatAndDry', 'scombroidFish'])
    .optional()
    .describe('foods with hazards of their own'),
  heating: z
    .enum(['none', 'beforeFilling', 'inPack'])
    .optional()
    .describe('the last step that kills, as seen from this machine; not known without it'),
  eaten: z.enum(['asIs', 'cooked']).optional().describe('as it leaves the pack, or cooked by who eats it'),
  lowOxygen: z.boolean().optional().describe('packed under vacuum or protective gas'),
});

export const brief = z.object({
  purpose: z.string().max(2000).default(''),
  products: z.array(product).default([]),
  consumers: z.enum(['general', 'vulnerable']).default('general'),
  environment: z
    .object({
      description: z.string().max(2000).default(''),
      room_degC: z.number().min(-40).max(60).default(20),
      relativeHumidity_percent: z.number().min(0).max(100).default(60),
    })
    .prefault({}),
  cleaning: z
    .object({
      ways: z.array(cleaningWay).default(['byHand']),
      interval_h: z.number().positive().max(10_000).default(24),
      rinse_degC: z.number().min(0).max(100).default(50),
      agents: z.array(z.string().min(1)).default([]),
    })
    .prefault({}),
  careLevel: careLevel.default('raised'),
  profile: z
    .string()
    .default('eu')
    .describe('which sources apply where they disagree: a profile of the catalogue'),
  /** Pools below this count as drained; an agreed criterion, not a demand of the law. */
  acceptedPool_mL: z.number().min(0).default(1),
});

export const jointKind = z.enum([
  'welded',
  'bolted',
  'clamped',
  'bonded',
  'pressed',
  'loose',
  'gasketed',
  'oneBody',
  'unknown',
]);

/** What is known of a part. `proposed` values come from names, colours and position until somebody sets them. */
export const partData = z.object({
  partId: z.string().min(1),
  areaClass,
  material: z.string().describe('id of a material of the catalogue, or "unknown"'),
  finish_Ra_um: z.number().positive().max(1000).nullable(),
  joint: jointKind,
  /** Fields that a person has set; all others are proposals. */
  setByUser: z.array(z.enum(['areaClass', 'material', 'finish_Ra_um', 'joint'])).default([]),
  /** Why the proposals are what they are, one sentence each. */
  reasons: z.array(z.string()).default([]),
});

export const partChange = partData
  .pick({ areaClass: true, material: true, finish_Ra_um: true, joint: true })
  .partial();

export const controlMeasure = z.object({
  what: z.string().min(1).max(1000),
  interval: z.string().max(200).default(''),
  owner: z.string().max(200).default(''),
});

const samePerson = (a: string, b: string) => a.trim().toLowerCase() === b.trim().toLowerCase();

/** What is done about a finding. A concession is a nonconformity kept on purpose (ISO 9000). */
export const decision = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('change'),
    note: z.string().max(4000).default(''),
    option: z.string().max(1000).default(''),
  }),
  z
    .object({
      kind: z.literal('concession'),
      reason: z.string().min(1).max(4000),
      because: z.enum(['function', 'safety', 'cost', 'availability']),
      controlMeasures: z.array(controlMeasure).min(1),
      /** What else was weighed, and why not. */
      alternatives: z.string().max(4000).optional(),
      /** Where it is shown that the control measures work. */
      evidence: z.string().max(4000).optional(),
      grantedBy: z.string().min(1).max(200),
      /** A second person. */
      approvedBy: z.string().max(200).optional(),
      until: z.iso.date(),
      /** When it is looked at again before it ends. */
      reviewOn: z.iso.date().optional(),
    })
    .refine((c) => !c.approvedBy || !samePerson(c.approvedBy, c.grantedBy), {
      error: 'a concession is approved by somebody else than who grants it',
      path: ['approvedBy'],
    }),
  z.object({ kind: z.literal('doesNotApply'), reason: z.string().min(1).max(4000) }),
]);

export const revision = z.object({
  id: z.string().min(1),
  label: z.string().min(1).max(100),
  file: z.string().min(1).describe('name of the model file'),
  up: upAxis.default('z'),
  unit: lengthUnit.optional().describe('for files that carry no unit'),
});

export const project = z.object({
  schema: z.literal('coveline.project/1'),
  name: z.string().min(1).max(200),
  /** Demo data says so itself. */
  invented: z.boolean().default(false),
  brief: brief.prefault({}),
  revisions: z.array(revision).default([]),
  /** Per revision id: what people set on parts, by part id. */
  parts: z.record(z.string(), z.record(z.string(), partChange)).default({}),
  /** Per revision id: decisions by finding id. */
  decisions: z.record(z.string(), z.record(z.string(), decision)).default({}),
  /** Per revision id: what was found on the round, by id of the question or requirement. */
  answers: z.record(z.string(), z.record(z.string(), answer)).default({}),
  /** Per revision id: groups of surfaces that people set, by id; the others are as proposed. */
  cleaning: z.record(z.string(), z.record(z.string(), surfaceGroup.omit({ id: true }))).default({}),
  /** Per revision id: what people said of the site, by id of the thing that is proposed or added. */
  site: z.record(z.string(), z.record(z.string(), siteChange)).default({}),
  /** Per revision id: results of samples, by id. */
  results: z.record(z.string(), z.record(z.string(), sampleResult.omit({ id: true }))).default({}),
  /** In the order in which they were kept. */
  calculations: z.array(keptCalculation).default([]),
  /** What is added to the catalogue for this machine, by name, in the order in which it is added. */
  packs: z.array(pack).default([]),
});

export type AreaClassName = z.infer<typeof areaClass>;
export type CareLevel = z.infer<typeof careLevel>;
export type Product = z.infer<typeof product>;
export type Brief = z.infer<typeof brief>;
export type JointKind = z.infer<typeof jointKind>;
export type PartData = z.infer<typeof partData>;
export type PartChange = z.infer<typeof partChange>;
export type ControlMeasure = z.infer<typeof controlMeasure>;
export type Decision = z.infer<typeof decision>;
export type Revision = z.infer<typeof revision>;
export type Project = z.infer<typeof project>;
