/**
 * Packs: requirements, materials, profiles and sources that a user or a company adds, as a JSON file of the schema
 * `coveline.pack/1` (docs/formats.md). A pack only adds; it never changes what is built in.
 */
import { readUnit } from '@coveline/quantity';
import * as z from 'zod';
import type { Catalogue } from './catalogue.ts';
import { elements } from './elements.ts';
import { strongest } from './row.ts';
import type { Limit, Material, Requirement, Source } from './types.ts';

const id = z.string().regex(/^[a-z0-9][a-z0-9.-]{1,60}$/, {
  error: 'small letters, digits, points and hyphens, such as "acme-radius"',
});
const sentence = z
  .string()
  .regex(/^[A-Z0-9].*\.$/s, { error: 'a sentence that begins with a capital and ends with a full stop' });
const areas = z.array(z.enum(['food', 'splash', 'nonFood'])).min(1);
const kind = z.enum(['law', 'standard', 'guidance', 'commonPractice']);
const measure = z.enum([
  'standingLiquid',
  'flatFaces',
  'insideCorners',
  'narrowGaps',
  'hollows',
  'fasteners',
  'handReach',
  'toolReach',
  'jetReach',
  'openSky',
  'overhead',
  'clearances',
]);
const day = z.iso.date();

const citation = z.object({
  source: z.string().min(1),
  clause: z.string().min(1).max(300),
  standing: z.enum(['seen', 'partlySeen', 'fromMemory']),
});

const limit = z
  .object({
    quantity: z.string().min(1).max(60),
    atLeast: z.number().optional(),
    atMost: z.number().optional(),
    unit: z.string().refine(isUnit, { error: 'a unit that can be read, such as "mm", "deg" or "1"' }),
    datum: z.string().min(1).max(200).describe('from where it is measured'),
    angle_deg: z.tuple([z.number(), z.number()]).optional(),
    areas,
    profiles: z.array(z.string()).default([]),
    citation,
  })
  .refine((l) => l.atLeast !== undefined || l.atMost !== undefined, { error: 'needs "atLeast" or "atMost"' });

const requirement = z.object({
  id,
  text: sentence,
  element: z.string().refine((e) => elements.some((x) => x.id === e), {
    error: `one of the machine elements: ${elements.map((e) => e.id).join(', ')}`,
  }),
  areas,
  hazards: z.array(z.enum(['biological', 'chemical', 'physical', 'allergen', 'operatorSafety'])).min(1),
  evidence: z
    .array(
      z.union([
        z.object({ by: z.literal('measure'), measure, strength: z.enum(['decides', 'findsCandidates']) }),
        z.object({ by: z.enum(['calculation', 'hand', 'inspection', 'documents']) }),
      ]),
    )
    .min(1),
  citations: z.array(citation).min(1),
  limits: z.array(limit).default([]),
  remedies: z.array(z.object({ text: sentence, cost: z.enum(['none', 'low', 'some', 'high']) })).min(1),
  conflict: z.object({ reason: sentence, control: sentence }).optional(),
  specialises: z.string().optional(),
  careLevels: z
    .array(z.enum(['basic', 'raised', 'high']))
    .min(1)
    .optional(),
});

export const pack = z.object({
  schema: z.literal('coveline.pack/1'),
  name: z.string().min(1).max(200),
  sources: z
    .array(
      z.object({
        key: z.string().regex(/^[A-Za-z0-9][A-Za-z0-9.-]{1,60}$/),
        title: z.string().min(1).max(300),
        edition: z.string().min(1).max(100),
        kind,
        seen: z.string().min(1).max(300),
        jurisdiction: z.enum(['eu', 'us']).optional(),
        from: day.optional(),
        until: day.optional(),
      }),
    )
    .default([]),
  profiles: z
    .array(
      z.object({
        id,
        name: z.string().min(1).max(100),
        summary: sentence,
        jurisdiction: z.enum(['eu', 'us']),
        basedOn: z.string().describe('the profile whose figures it takes beside its own'),
      }),
    )
    .default([]),
  requirements: z.array(requirement).default([]),
  materials: z
    .array(
      z.object({
        id,
        name: z.string().min(1).max(200),
        family: z.enum([
          'stainless steel',
          'other metal',
          'elastomer',
          'plastic',
          'cable jacket',
          'glass',
          'lubricant',
        ]),
        designations: z.array(z.string().min(1)).min(1),
        nameHints: z.array(z.string().regex(/^[^A-Z]+$/, { error: 'small letters' })).default([]),
        density_kg_m3: z.number().positive().optional(),
        foodContact: z.enum(['usual', 'withProof', 'unsuitable']),
        maxTemperature_degC: z.number().optional(),
        remarks: sentence,
        citation,
      }),
    )
    .default([]),
});

export type Pack = z.infer<typeof pack>;

function isUnit(text: string): boolean {
  return readUnit(text).kind !== 'error';
}

export type ReadPack = { readonly pack: Pack } | { readonly problems: readonly string[] };

/** Reads a pack and holds it against the catalogue that it is added to; every problem is one sentence with its place. */
export function readPack(input: unknown, catalogue: Catalogue): ReadPack {
  const read = pack.safeParse(input);
  if (!read.success) {
    return {
      problems: read.error.issues.map((i) => `${placeOf(i.path) || 'The pack'}: ${i.message}.`),
    };
  }
  const problems = clashes(read.data, catalogue);
  return problems.length > 0 ? { problems } : { pack: read.data };
}

const placeOf = (path: readonly PropertyKey[]) =>
  path
    .map((p) => (typeof p === 'number' ? `[${p + 1}]` : `.${String(p)}`))
    .join('')
    .replace(/^\./, '');

/** What is there twice, and what is named but nowhere to be found. */
function clashes(p: Pack, catalogue: Catalogue): string[] {
  const out: string[] = [];
  const unique = (what: string, ids: readonly string[], known: ReadonlyMap<string, unknown>) => {
    ids.forEach((x, i) => {
      if (known.has(x)) out.push(`The catalogue has the ${what} "${x}" already: choose another name.`);
      else if (ids.indexOf(x) < i) out.push(`The pack has the ${what} "${x}" twice.`);
    });
  };
  unique(
    'source',
    p.sources.map((s) => s.key),
    catalogue.sources,
  );
  unique(
    'profile',
    p.profiles.map((x) => x.id),
    catalogue.profiles,
  );
  unique(
    'requirement',
    p.requirements.map((r) => r.id),
    catalogue.requirements,
  );
  unique(
    'material',
    p.materials.map((m) => m.id),
    catalogue.materials,
  );
  const sourceKeys = new Set([...catalogue.sources.keys(), ...p.sources.map((s) => s.key)]);
  const profileIds = new Set([...catalogue.profiles.keys(), ...p.profiles.map((x) => x.id)]);
  const requirementIds = new Set([...catalogue.requirements.keys(), ...p.requirements.map((r) => r.id)]);
  for (const x of p.profiles)
    if (x.basedOn === x.id || !profileIds.has(x.basedOn))
      out.push(`Profile "${x.id}" is based on "${x.basedOn}", which is not there.`);
  for (const r of p.requirements) {
    const here = `Requirement "${r.id}"`;
    for (const c of [...r.citations, ...r.limits.map((l) => l.citation)])
      if (!sourceKeys.has(c.source))
        out.push(`${here} cites "${c.source}", which is no source: add it to "sources".`);
    for (const l of r.limits) {
      for (const x of l.profiles)
        if (!profileIds.has(x)) out.push(`${here} has a limit for the profile "${x}", which is not there.`);
      for (const a of l.areas)
        if (!r.areas.includes(a))
          out.push(`${here} has a limit for the area "${a}", to which it does not apply.`);
    }
    if (r.specialises === r.id) out.push(`${here} cannot be a case of itself.`);
    else if (r.specialises !== undefined && !requirementIds.has(r.specialises))
      out.push(`${here} is a case of "${r.specialises}", which is not there.`);
  }
  for (const m of p.materials)
    if (!sourceKeys.has(m.citation.source))
      out.push(`Material "${m.id}" cites "${m.citation.source}", which is no source.`);
  return out;
}

/** The catalogue with a pack that `readPack` has taken. */
export function withPack(catalogue: Catalogue, p: Pack): Catalogue {
  const sources = new Map(catalogue.sources);
  for (const s of p.sources) sources.set(s.key, defined(s) as Source);
  const kindOf = (c: { readonly source: string }) => sources.get(c.source)!.kind;
  const requirements = new Map(catalogue.requirements);
  for (const r of p.requirements) {
    requirements.set(r.id, {
      ...(defined(r) as Omit<Requirement, 'kind' | 'limits'>),
      kind: strongest(r.citations.map(kindOf)),
      limits: r.limits.map((l) => ({
        ...(defined(l) as Omit<Limit, 'kind'>),
        kind: kindOf(l.citation),
      })),
    });
  }
  const materials = new Map(catalogue.materials);
  for (const m of p.materials) materials.set(m.id, defined(m) as Material);
  const profiles = new Map(catalogue.profiles);
  for (const x of p.profiles) profiles.set(x.id, x);
  return { sources, requirements, materials, profiles };
}

/** Without keys that are there but undefined, as exact optional properties want it. */
function defined<T extends object>(value: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as never;
}
