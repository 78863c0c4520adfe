/** Attributes of one Part 21 instance. Used for the few entities that carry structure, not for the geometry. */
import { limits } from '../limits.ts';
import { ascii, findInstance, type Part21Index, skipBlank } from './scan.ts';
import { decodeText } from './text.ts';

export type Attribute =
  | null
  | number
  | { readonly ref: number }
  | { readonly text: string }
  | { readonly word: string }
  | { readonly type: string; readonly of: readonly Attribute[] }
  | readonly Attribute[];

export interface Instance {
  readonly id: number;
  /** Attributes by entity name; a simple instance has one entry. */
  readonly by: ReadonlyMap<string, readonly Attribute[]>;
}

/** The instance, or undefined where the file does not define it or its text cannot be parsed. */
export function instance(index: Part21Index, id: number): Instance | undefined {
  const at = findInstance(index, id);
  if (at < 0) return undefined;
  const cursor: Cursor = {
    bytes: index.bytes,
    at: index.starts[at],
    end: index.ends[at],
    depth: 0,
    bad: false,
  };
  const by = new Map<string, readonly Attribute[]>();
  if (index.bytes[cursor.at] === 40) {
    cursor.at++;
    for (;;) {
      blank(cursor);
      if (cursor.at >= cursor.end || index.bytes[cursor.at] === 41) break;
      const name = word(cursor);
      if (name === '') return undefined;
      by.set(name, parameters(cursor));
      if (cursor.bad) return undefined;
    }
  } else {
    const name = word(cursor);
    if (name === '') return undefined;
    by.set(name, parameters(cursor));
  }
  return cursor.bad ? undefined : { id, by };
}

/** Attributes of the entity `name` in the instance, or of its only entity where no name is given. */
export function attributes(found: Instance | undefined, ...names: string[]): readonly Attribute[] {
  if (!found) return [];
  if (names.length === 0) return found.by.size === 1 ? (found.by.values().next().value ?? []) : [];
  for (const name of names) {
    const list = found.by.get(name);
    if (list) return list;
  }
  return [];
}

/** Instance number of a reference, or -1. */
export function refOf(value: Attribute | undefined): number {
  return value && typeof value === 'object' && 'ref' in value ? value.ref : -1;
}

export function refsOf(value: Attribute | undefined): number[] {
  return listOf(value)
    .map(refOf)
    .filter((id) => id >= 0);
}

export function textOf(value: Attribute | undefined): string {
  return value && typeof value === 'object' && 'text' in value ? value.text : '';
}

/** Enumeration value without its dots, or ''. */
export function wordOf(value: Attribute | undefined): string {
  return value && typeof value === 'object' && 'word' in value ? value.word : '';
}

/** Number, also inside a typed value such as LENGTH_MEASURE(25.4); NaN where there is none. */
export function numberOf(value: Attribute | undefined): number {
  if (typeof value === 'number') return value;
  if (value && typeof value === 'object' && 'of' in value) return numberOf(value.of[0]);
  return Number.NaN;
}

export function listOf(value: Attribute | undefined): readonly Attribute[] {
  return Array.isArray(value) ? value : [];
}

interface Cursor {
  readonly bytes: Uint8Array;
  at: number;
  readonly end: number;
  depth: number;
  bad: boolean;
}

function blank(c: Cursor): void {
  c.at = skipBlank(c.bytes, c.at, c.end);
}

function word(c: Cursor): string {
  const start = c.at;
  while (c.at < c.end && /[A-Za-z0-9_]/.test(String.fromCharCode(c.bytes[c.at]))) c.at++;
  return ascii(c.bytes, start, c.at).toUpperCase();
}

/** "(a, b, …)" from its opening to behind its closing parenthesis. */
function parameters(c: Cursor): Attribute[] {
  const out: Attribute[] = [];
  blank(c);
  if (c.bytes[c.at] !== 40 || c.depth >= limits.depth) {
    c.bad = true;
    return out;
  }
  c.at++;
  c.depth++;
  for (;;) {
    blank(c);
    if (c.at >= c.end) {
      c.bad = true;
      break;
    }
    if (c.bytes[c.at] === 41) {
      c.at++;
      break;
    }
    if (c.bytes[c.at] === 44) c.at++;
    else out.push(value(c));
    if (c.bad) break;
  }
  c.depth--;
  return out;
}

function value(c: Cursor): Attribute {
  const first = c.bytes[c.at];
  if (first === 40) return parameters(c);
  if (first === 36 || first === 42) {
    c.at++;
    return null;
  }
  if (first === 39) return { text: quoted(c) };
  if (first === 35) {
    c.at++;
    const digits = word(c);
    if (!/^\d+$/.test(digits)) c.bad = true;
    return { ref: Number(digits) };
  }
  if (first === 46 && !isDigit(c.bytes[c.at + 1])) {
    c.at++;
    const name = word(c);
    if (c.bytes[c.at] === 46) c.at++;
    else c.bad = true;
    return { word: name };
  }
  if (isDigit(first) || first === 45 || first === 43 || first === 46) {
    const start = c.at;
    while (c.at < c.end && /[0-9+\-.eE]/.test(String.fromCharCode(c.bytes[c.at]))) c.at++;
    return Number(ascii(c.bytes, start, c.at));
  }
  const type = word(c);
  if (type === '') {
    c.bad = true;
    return null;
  }
  return { type, of: parameters(c) };
}

function quoted(c: Cursor): string {
  const start = ++c.at;
  for (; c.at < c.end; c.at++) {
    if (c.bytes[c.at] !== 39) continue;
    if (c.bytes[c.at + 1] === 39) c.at++;
    else break;
  }
  if (c.at >= c.end) c.bad = true;
  return decodeText(c.bytes, start, c.at++);
}

const isDigit = (b: number) => b >= 48 && b <= 57;
