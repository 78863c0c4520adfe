/**
 * Index of a Part 21 file (ISO 10303-21, clear text): where each entity instance stands and what it is.
 *
 * Works on bytes, so a file of hundreds of megabytes is never turned into one string. The geometry is left to the
 * kernel; only the few entities that carry names, structure, placements, colours and units are parsed.
 */
import { CadError } from '../error.ts';

export interface Part21Index {
  readonly bytes: Uint8Array;
  /** Instance numbers, ascending. */
  readonly ids: Uint32Array;
  /** First byte after "#id=" and the byte of the closing ";" of each instance, in the order of `ids`. */
  readonly starts: Uint32Array;
  readonly ends: Uint32Array;
  /** Per instance: index into `signatures`. */
  readonly kinds: Uint16Array;
  /** Entity names, upper case; a complex instance has several. */
  readonly signatures: readonly (readonly string[])[];
  /** Instance numbers that were defined more than once; the first definition is kept. */
  readonly repeated: readonly number[];
  /** Statements of the data section that are no instances, or whose parentheses do not match. */
  readonly malformed: { readonly count: number; readonly first: string };
  /** Text between HEADER; and its ENDSEC;. */
  readonly header: string;
  /** False where the closing line of the exchange structure is missing. */
  readonly closed: boolean;
}

const hash = 35;
const quote = 39;
const open = 40;
const close = 41;
const slash = 47;
const star = 42;
const semicolon = 59;
const equals = 61;

/** Throws CadError `truncated` where the data section does not end, `damaged` where there is none. */
export function scanPart21(bytes: Uint8Array): Part21Index {
  let capacity = Math.max(1024, Math.ceil(bytes.length / 40));
  let ids = new Float64Array(capacity);
  let starts = new Uint32Array(capacity);
  let ends = new Uint32Array(capacity);
  let kinds = new Uint16Array(capacity);
  let count = 0;
  const signatures: string[][] = [];
  const kindOf = new Map<string, number>();
  let header = '';
  let headerStart = -1;
  let inData = false;
  let dataSections = 0;
  let closed = false;
  const malformed = { count: 0, first: '' };
  let at = 0;

  while (at < bytes.length) {
    at = skipBlank(bytes, at, bytes.length);
    if (at >= bytes.length) break;
    const start = at;
    const end = statementEnd(bytes, start);
    if (end < 0) break;
    let sound = balanced(bytes, start, end);
    if (bytes[start] === hash && inData) {
      let id = 0;
      let p = start + 1;
      for (; p < end && isDigit(bytes[p]); p++) id = id * 10 + bytes[p] - 48;
      p = skipBlank(bytes, p, end);
      sound &&= p > start + 1 && bytes[p] === equals && id < 2 ** 32;
      if (sound) {
        p = skipBlank(bytes, p + 1, end);
        if (count === capacity) {
          capacity *= 2;
          ids = grown(ids, new Float64Array(capacity));
          starts = grown(starts, new Uint32Array(capacity));
          ends = grown(ends, new Uint32Array(capacity));
          kinds = grown(kinds, new Uint16Array(capacity));
        }
        ids[count] = id;
        starts[count] = p;
        ends[count] = end;
        kinds[count] = kindIndex(signatureText(bytes, p, end), signatures, kindOf);
        count++;
      }
    } else {
      const word = ascii(bytes, start, Math.min(end, start + 20)).toUpperCase();
      if (word.startsWith('HEADER')) headerStart = end + 1;
      else if (word.startsWith('DATA')) {
        inData = true;
        dataSections++;
      } else if (word.startsWith('ENDSEC')) {
        if (headerStart >= 0 && header === '') header = ascii(bytes, headerStart, start);
        inData = false;
      } else if (word.startsWith('END-ISO-10303-21')) closed = true;
      else if (inData) sound = false;
    }
    if (!sound && inData && malformed.count++ === 0)
      malformed.first = ascii(bytes, start, Math.min(end, start + 40));
    at = end + 1;
  }
  if (dataSections === 0) {
    throw new CadError(
      'damaged',
      'The STEP file has no DATA section, so it holds no geometry; export it again.',
    );
  }
  if (inData) {
    throw new CadError(
      'truncated',
      `The STEP file stops in the middle of its DATA section after ${count} entities; copy or export it again.`,
    );
  }
  return { bytes, ...sorted(ids, starts, ends, kinds, count), signatures, malformed, header, closed };
}

function sorted(
  ids: Float64Array,
  starts: Uint32Array,
  ends: Uint32Array,
  kinds: Uint16Array,
  count: number,
): Pick<Part21Index, 'ids' | 'starts' | 'ends' | 'kinds' | 'repeated'> {
  let ascending = true;
  for (let i = 1; i < count && ascending; i++) ascending = ids[i] > ids[i - 1];
  const order = new Uint32Array(count);
  for (let i = 0; i < count; i++) order[i] = i;
  if (!ascending) order.sort((a, b) => ids[a] - ids[b] || a - b);
  const repeated: number[] = [];
  const out = {
    ids: new Uint32Array(count),
    starts: new Uint32Array(count),
    ends: new Uint32Array(count),
    kinds: new Uint16Array(count),
  };
  let n = 0;
  for (let i = 0; i < count; i++) {
    const from = order[i];
    if (n > 0 && out.ids[n - 1] === ids[from]) {
      repeated.push(ids[from]);
      continue;
    }
    out.ids[n] = ids[from];
    out.starts[n] = starts[from];
    out.ends[n] = ends[from];
    out.kinds[n] = kinds[from];
    n++;
  }
  return {
    ids: out.ids.subarray(0, n),
    starts: out.starts.subarray(0, n),
    ends: out.ends.subarray(0, n),
    kinds: out.kinds.subarray(0, n),
    repeated,
  };
}

/** Position of an instance in the index, or -1 where the file does not define it. */
export function findInstance(index: Part21Index, id: number): number {
  let low = 0;
  let high = index.ids.length - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const value = index.ids[middle];
    if (value === id) return middle;
    if (value < id) low = middle + 1;
    else high = middle - 1;
  }
  return -1;
}

/** Instance numbers of all instances that are, or contain, the named entity. */
export function instancesOf(index: Part21Index, entity: string): number[] {
  const wanted = new Set<number>();
  for (let kind = 0; kind < index.signatures.length; kind++) {
    if (index.signatures[kind].includes(entity)) wanted.add(kind);
  }
  const out: number[] = [];
  if (wanted.size === 0) return out;
  for (let i = 0; i < index.ids.length; i++) if (wanted.has(index.kinds[i])) out.push(index.ids[i]);
  return out;
}

/** First byte at or after `at` that is neither white space nor inside a comment. */
export function skipBlank(bytes: Uint8Array, at: number, end: number): number {
  while (at < end) {
    if (bytes[at] <= 32) at++;
    else if (bytes[at] === slash && bytes[at + 1] === star) {
      at += 2;
      while (at < end && !(bytes[at] === star && bytes[at + 1] === slash)) at++;
      at += 2;
    } else break;
  }
  return at;
}

/** Byte of the next ";" outside strings and comments, or -1. */
function statementEnd(bytes: Uint8Array, at: number): number {
  for (; at < bytes.length; at++) {
    const c = bytes[at];
    if (c === semicolon) return at;
    if (c === quote) {
      at++;
      while (at < bytes.length && bytes[at] !== quote) at++;
    } else if (c === slash && bytes[at + 1] === star) {
      at += 2;
      while (at < bytes.length && !(bytes[at] === star && bytes[at + 1] === slash)) at++;
      at++;
    }
  }
  return -1;
}

/** True where every parenthesis in the statement has its partner. */
function balanced(bytes: Uint8Array, at: number, end: number): boolean {
  let depth = 0;
  for (; at < end; at++) {
    const c = bytes[at];
    if (c === open) depth++;
    else if (c === close && --depth < 0) return false;
    else if (c === quote) {
      at++;
      while (at < end && bytes[at] !== quote) at++;
    } else if (c === slash && bytes[at + 1] === star) {
      at += 2;
      while (at < end && !(bytes[at] === star && bytes[at + 1] === slash)) at++;
      at++;
    }
  }
  return depth === 0;
}

/** "NAME" of a simple instance, "A+B+C" of a complex one. */
function signatureText(bytes: Uint8Array, at: number, end: number): string {
  if (bytes[at] !== open) {
    const start = at;
    while (at < end && isNameByte(bytes[at])) at++;
    return ascii(bytes, start, at).toUpperCase();
  }
  let names = '';
  let depth = 0;
  for (; at < end; at++) {
    const c = bytes[at];
    if (c === open) depth++;
    else if (c === close) depth--;
    else if (c === quote) {
      at++;
      while (at < end && bytes[at] !== quote) at++;
    } else if (depth === 1 && isNameByte(c)) {
      const start = at;
      while (at < end && isNameByte(bytes[at])) at++;
      names += `${names === '' ? '' : '+'}${ascii(bytes, start, at).toUpperCase()}`;
      at--;
    }
  }
  return names;
}

function kindIndex(text: string, signatures: string[][], kindOf: Map<string, number>): number {
  let kind = kindOf.get(text);
  if (kind === undefined) {
    kind = signatures.length;
    if (kind > 65_535) {
      throw new CadError(
        'damaged',
        'The STEP file uses more than 65 535 kinds of entities; export it again.',
      );
    }
    signatures.push(text.split('+'));
    kindOf.set(text, kind);
  }
  return kind;
}

const isDigit = (c: number) => c >= 48 && c <= 57;
const isNameByte = (c: number) =>
  (c >= 65 && c <= 90) || (c >= 97 && c <= 122) || (c >= 48 && c <= 57) || c === 95;

export function ascii(bytes: Uint8Array, start: number, end: number): string {
  let text = '';
  for (let i = start; i < end; i++) text += String.fromCharCode(bytes[i]);
  return text;
}

function grown<T extends Float64Array | Uint32Array | Uint16Array>(from: T, to: T): T {
  to.set(from);
  return to;
}
