/** Reads a project from JSON and says in one sentence per fault what is wrong with it. */
import type * as z from 'zod';
import { type Project, project } from './schema.ts';

export type ParsedProject =
  | { readonly ok: true; readonly project: Project }
  | { readonly ok: false; readonly errors: readonly string[] };

/**
 * `json` is what `JSON.parse` gave. Defaults are filled in. Every fault becomes one sentence that names the field,
 * the value and what was expected, in the order of the file. Keys that the schema does not know are dropped.
 */
export function parseProject(json: unknown): ParsedProject {
  const result = project.safeParse(json, { reportInput: true });
  if (!result.success) return { ok: false, errors: result.error.issues.map(sentence) };
  const errors = references(result.data);
  return errors.length > 0 ? { ok: false, errors } : { ok: true, project: result.data };
}

/** The parts, decisions and calculations of a revision need that revision; ids are given once. */
function references({ revisions, parts, decisions, site, calculations, packs }: Project): string[] {
  const known = new Set(revisions.map((r) => r.id));
  const errors = [...givenTwice('revisions', revisions), ...givenTwice('calculations', calculations)];
  const twice = packs.find(({ name }, i) => packs.findIndex((p) => p.name === name) < i);
  if (twice) errors.push(`packs: the name "${twice.name}" is used twice, expected each name once.`);
  for (const [i, { about }] of calculations.entries()) {
    if (about && !known.has(about.revision))
      errors.push(
        `calculations[${i}].about.revision: "${about.revision}" is no revision of this project, expected one of ${listed([...known])}.`,
      );
  }
  for (const [field, table] of Object.entries({ parts, decisions, site })) {
    for (const id of Object.keys(table)) {
      if (!known.has(id))
        errors.push(
          `${field}: "${id}" is no revision of this project, expected one of ${listed([...known])}.`,
        );
    }
  }
  return errors;
}

function givenTwice(field: string, rows: readonly { readonly id: string }[]): string[] {
  const twice = rows.find(({ id }, i) => rows.findIndex((o) => o.id === id) < i);
  return twice ? [`${field}: the id "${twice.id}" is used twice, expected each id once.`] : [];
}

function sentence(issue: z.core.$ZodIssue): string {
  return `${path(issue.path)}: ${found(issue.input)}, expected ${expected(issue)}.`;
}

function expected(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return typeWords[issue.expected] ?? issue.expected;
    case 'invalid_value':
      return issue.values.length === 1 ? shown(issue.values[0]) : `one of ${listed(issue.values)}`;
    case 'too_small':
      return bound(issue.origin, issue.inclusive ? 'at least' : 'more than', issue.minimum);
    case 'too_big':
      return bound(issue.origin, issue.inclusive ? 'at most' : 'less than', issue.maximum);
    case 'invalid_format':
      return issue.format === 'date' ? 'a date such as 2027-01-31' : `the format "${issue.format}"`;
    case 'invalid_union':
      return issue.discriminator === undefined
        ? 'another shape'
        : `"${issue.discriminator}" to be one of those that the format describes`;
    case 'custom':
      return issue.message;
    default:
      return `something else (${issue.message})`;
  }
}

function bound(origin: string, how: string, limit: number | bigint): string {
  if (origin === 'string') return `a text of ${how} ${limit} characters`;
  if (origin === 'array') return `a list of ${how} ${limit} entries`;
  return `${how} ${limit}`;
}

function found(value: unknown): string {
  if (value === undefined) return 'nothing is there';
  return `${shown(value)} was found`;
}

function shown(value: unknown): string {
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}…"` : text;
}

const listed = (values: readonly unknown[]) =>
  values.length === 0 ? 'none' : values.map((v) => JSON.stringify(v)).join(', ');

const typeWords: Partial<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  record: 'an object',
};

function path(keys: readonly PropertyKey[]): string {
  if (keys.length === 0) return 'The file';
  return keys.map((k, i) => (typeof k === 'number' ? `[${k}]` : `${i > 0 ? '.' : ''}${String(k)}`)).join('');
}
