/**
 * Every change to a project is a command. Applying one yields its inverse, so undo is a command too, and the
 * log of commands is the audit trail.
 */
import { pack } from '@coveline/catalogue';
import * as z from 'zod';
import { answer } from './answer.ts';
import { surfaceGroup } from './cleaning.ts';
import { keptCalculation } from './kept-calculation.ts';
import { sampleResult } from './sample-result.ts';
import { brief, decision, type Project, partChange, upAxis } from './schema.ts';
import { siteChange } from './site.ts';

export const command = z.discriminatedUnion('do', [
  z.object({ do: z.literal('rename'), name: z.string().min(1).max(200) }),
  z.object({ do: z.literal('setBrief'), brief }),
  z.object({
    do: z.literal('setPart'),
    revision: z.string(),
    part: z.string(),
    change: partChange.nullable().describe('null returns the part to its proposals'),
  }),
  z.object({
    do: z.literal('decide'),
    revision: z.string(),
    finding: z.string(),
    decision: decision.nullable().describe('null withdraws the decision'),
  }),
  z.object({
    do: z.literal('answer'),
    revision: z.string(),
    item: z.string().min(1).max(100).describe('id of a question or of a requirement'),
    answer: answer.nullable().describe('null: not looked at'),
  }),
  z.object({
    do: z.literal('setGroup'),
    revision: z.string(),
    group: z.string().min(1).max(100).describe('id of a group of surfaces, new or known'),
    set: surfaceGroup.omit({ id: true }).nullable().describe('null returns it to what is proposed'),
  }),
  z.object({
    do: z.literal('setResult'),
    revision: z.string(),
    result: z.string().min(1).max(100).describe('id of a result, new or known'),
    set: sampleResult.omit({ id: true }).nullable().describe('null removes it'),
  }),
  z.object({
    do: z.literal('setRevision'),
    revision: z.string(),
    label: z.string().min(1).max(100),
    up: upAxis,
  }),
  z.object({
    do: z.literal('setSite'),
    revision: z.string(),
    item: z.string().min(1).max(1000).describe('id of a thing that is proposed or added'),
    change: siteChange.nullable().describe('null returns it to the proposal, or drops what was added'),
  }),
  z.object({
    do: z.literal('setCalculation'),
    calculation: z.string().min(1).max(100).describe('id of a kept calculation, new or known'),
    kept: keptCalculation.omit({ id: true }).nullable().describe('null removes it'),
    at: z.int().min(0).optional().describe('its place in the order when it is new; the end without it'),
  }),
  z
    .object({
      do: z.literal('setPack'),
      name: z.string().min(1).max(200),
      pack: pack.nullable().describe('null removes it; a pack of this name is replaced'),
      at: z.int().min(0).optional().describe('its place in the order when it is new; the end without it'),
    })
    .refine((c) => c.pack === null || c.pack.name === c.name, {
      error: 'a pack is set under its own name',
      path: ['name'],
    }),
]);

export type Command = z.infer<typeof command>;

/** The project after a command, and the command that takes it back. Throws when the command names no revision of it. */
export function applyCommand(project: Project, c: Command): { project: Project; inverse: Command } {
  switch (c.do) {
    case 'rename':
      return { project: { ...project, name: c.name }, inverse: { do: 'rename', name: project.name } };
    case 'setBrief':
      return { project: { ...project, brief: c.brief }, inverse: { do: 'setBrief', brief: project.brief } };
    case 'setPart': {
      const before = project.parts[known(project, c.revision)]?.[c.part] ?? null;
      const parts = withEntry(project.parts, c.revision, c.part, c.change);
      return { project: { ...project, parts }, inverse: { ...c, change: before } };
    }
    case 'decide': {
      const before = project.decisions[known(project, c.revision)]?.[c.finding] ?? null;
      const decisions = withEntry(project.decisions, c.revision, c.finding, c.decision);
      return { project: { ...project, decisions }, inverse: { ...c, decision: before } };
    }
    case 'answer': {
      const before = project.answers[known(project, c.revision)]?.[c.item] ?? null;
      const answers = withEntry(project.answers, c.revision, c.item, c.answer);
      return { project: { ...project, answers }, inverse: { ...c, answer: before } };
    }
    case 'setGroup': {
      const before = project.cleaning[known(project, c.revision)]?.[c.group] ?? null;
      const cleaning = withEntry(project.cleaning, c.revision, c.group, c.set);
      return { project: { ...project, cleaning }, inverse: { ...c, set: before } };
    }
    case 'setResult': {
      const before = project.results[known(project, c.revision)]?.[c.result] ?? null;
      const results = withEntry(project.results, c.revision, c.result, c.set);
      return { project: { ...project, results }, inverse: { ...c, set: before } };
    }
    case 'setRevision': {
      const before = project.revisions.find((r) => r.id === known(project, c.revision))!;
      const revisions = project.revisions.map((r) => (r === before ? { ...r, label: c.label, up: c.up } : r));
      return { project: { ...project, revisions }, inverse: { ...c, label: before.label, up: before.up } };
    }
    case 'setSite': {
      const before = project.site[known(project, c.revision)]?.[c.item] ?? null;
      const site = withEntry(project.site, c.revision, c.item, c.change);
      return { project: { ...project, site }, inverse: { ...c, change: before } };
    }
    case 'setCalculation':
      return setCalculation(project, c);
    case 'setPack':
      return setPack(project, c);
  }
}

function known(project: Project, revision: string): string {
  if (project.revisions.some((r) => r.id === revision)) return revision;
  throw new RangeError(`The machine has no revision "${revision}".`);
}

function withEntry<T>(
  table: Record<string, Record<string, T>>,
  outer: string,
  inner: string,
  value: T | null,
): Record<string, Record<string, T>> {
  const { [inner]: _, ...rest } = table[outer] ?? {};
  return { ...table, [outer]: value === null ? rest : { ...rest, [inner]: value } };
}

type SetCalculation = Extract<Command, { do: 'setCalculation' }>;

function setCalculation(project: Project, c: SetCalculation): { project: Project; inverse: Command } {
  const { before, at, list } = replaced(
    project.calculations,
    (k) => k.id === c.calculation,
    c.kept && { id: c.calculation, ...c.kept },
    c.at,
  );
  const { id: _, ...kept } = before ?? { id: '' };
  const inverse = { ...c, kept: before === null ? null : (kept as SetCalculation['kept']), at };
  return { project: { ...project, calculations: list }, inverse };
}

type SetPack = Extract<Command, { do: 'setPack' }>;

function setPack(project: Project, c: SetPack): { project: Project; inverse: Command } {
  const { before, at, list } = replaced(project.packs, (p) => p.name === c.name, c.pack, c.at);
  return { project: { ...project, packs: list }, inverse: { ...c, pack: before, at } };
}

/**
 * A known row changes in its place, or goes for null; one that comes back after it was removed goes to where it was.
 */
function replaced<T>(
  rows: readonly T[],
  is: (row: T) => boolean,
  next: T | null,
  wanted: number | undefined,
): { before: T | null; at: number; list: T[] } {
  const known = rows.findIndex(is);
  const at = known >= 0 ? known : Math.min(wanted ?? rows.length, rows.length);
  const list = rows.toSpliced(at, known < 0 ? 0 : 1, ...(next === null ? [] : [next]));
  return { before: rows[known] ?? null, at, list };
}
