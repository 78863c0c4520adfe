/**
 * Cuts one body out of a STEP file: a small file of its own with everything the body refers to, renumbered from 1.
 *
 * So the kernel reads part by part (less memory, and a body that breaks it costs only itself), equal bodies become
 * equal texts, and what is wrong in the text is known before the kernel sees it: dangling references, loops, and
 * numbers that no machine can have.
 */
import { limits } from '../limits.ts';
import { findInstance, type Part21Index } from './scan.ts';

export interface Extract {
  /** A complete Part 21 file, one product with one body. */
  readonly text: Uint8Array;
  /** Faults that the kernel would not report; each a clause to put behind "because". */
  readonly faults: readonly string[];
  /** True where the kernel must not be given this text: it would hang, or the text is beyond the size limit. */
  readonly refused: boolean;
}

const hash = 35;
const quote = 39;

/**
 * `mmPerUnit` scales the limit on coordinates. The body loses its label, so that copies under other names give the
 * same text.
 */
export function extractBody(
  index: Part21Index,
  body: number,
  context: number,
  representationEntity: string,
  mmPerUnit: number,
): Extract {
  const out = new Output();
  const faults: string[] = [];
  const number = new Map<number, number>([
    [body, 1],
    [context, 2],
  ]);
  const queue = [body, context];
  const references: number[] = [];
  const referenceStart: number[] = [];
  let refused = false;
  let dangling = 0;
  let firstDangling = -1;
  let firstUser = -1;
  let absurd: string | undefined;
  const { bytes } = index;
  const limit = limits.coordinate_mm / mmPerUnit;

  out.ascii(prologue);
  for (let k = 0; k < queue.length; k++) {
    referenceStart.push(references.length);
    const id = queue[k];
    const at = findInstance(index, id);
    if (at < 0) continue;
    out.ascii(`#${k + 1}=`);
    const end = index.ends[at];
    const points = isNamed(index, at, 'CARTESIAN_POINT');
    const vector = isNamed(index, at, 'VECTOR');
    let from = index.starts[at];
    for (let p = from; p < end; p++) {
      const c = bytes[p];
      if (c === quote) {
        // The label of the body itself is left out.
        const start = p++;
        while (p < end && bytes[p] !== quote) p++;
        if (k === 0) {
          out.bytes(bytes, from, start + 1);
          from = p;
        }
      } else if (c === hash) {
        let target = 0;
        let q = p + 1;
        for (; q < end && bytes[q] >= 48 && bytes[q] <= 57; q++) target = target * 10 + bytes[q] - 48;
        if (q === p + 1) continue;
        out.bytes(bytes, from, p);
        let renumbered = number.get(target);
        if (renumbered === undefined) {
          renumbered = queue.length + 1;
          number.set(target, renumbered);
          queue.push(target);
          if (findInstance(index, target) < 0) {
            dangling++;
            if (firstDangling < 0) {
              firstDangling = target;
              firstUser = id;
            }
          }
        }
        references.push(renumbered - 1);
        out.ascii(`#${renumbered}`);
        from = q;
        p = q - 1;
      } else if ((c >= 48 && c <= 57) || c === 45 || c === 43 || c === 46) {
        const start = p;
        let long = 0;
        let exponent = false;
        while (p < end && isNumberByte(bytes[p])) {
          if (bytes[p] === 69 || bytes[p] === 101) exponent = true;
          else if (!exponent && bytes[p] >= 48 && bytes[p] <= 57) long++;
          p++;
        }
        if (vector && !(Math.abs(Number(textBetween(bytes, start, p))) >= shortestVector)) {
          absurd ??= `#${id} is a vector without length`;
        } else if (exponent || long > 6) {
          const text = textBetween(bytes, start, Math.min(p, start + 40));
          const value = Math.abs(Number(text));
          const bad = Number.isNaN(value) ? /\d/.test(text) : value > (points ? limit : 1e30);
          if (bad) absurd ??= `#${id} holds the number ${text}, which no machine can have`;
        }
        p--;
      } else if ((c >= 65 && c <= 90) || (c >= 97 && c <= 122) || c === 95) {
        while (p < end && isWordByte(bytes[p])) p++;
        p--;
      }
    }
    out.bytes(bytes, from, end);
    out.ascii(';\n');
    if (out.length > limits.bodyBytes) {
      refused = true;
      faults.push(`its text is larger than ${limits.bodyBytes >> 20} MB`);
      break;
    }
  }
  referenceStart.push(references.length);
  out.ascii(epilogue(queue.length, representationEntity));
  if (dangling > 0) {
    faults.push(
      `${dangling} of the entities that it refers to ${dangling > 1 ? 'are' : 'is'} missing from the file (first #${firstDangling}, used by #${firstUser})`,
    );
  }
  if (absurd) {
    refused = true;
    faults.push(absurd);
  }
  const looped = loopAt(references, referenceStart);
  if (looped >= 0) {
    refused = true;
    faults.push(`#${queue[looped]} refers to itself in a loop`);
  }
  return { text: out.done(), faults, refused };
}

/** An entity on a reference loop (Kahn's algorithm leaves the loops over), or -1. */
function loopAt(references: readonly number[], start: readonly number[]): number {
  const n = start.length - 1;
  const users = new Uint32Array(n);
  for (const target of references) if (target < n) users[target]++;
  const ready: number[] = [];
  for (let i = 0; i < n; i++) if (users[i] === 0) ready.push(i);
  let left = n;
  while (ready.length > 0) {
    const i = ready.pop()!;
    left--;
    for (let r = start[i]; r < start[i + 1]; r++) {
      const target = references[r];
      if (target < n && --users[target] === 0) ready.push(target);
    }
  }
  return left === 0 ? -1 : users.findIndex((count) => count > 0);
}

/** A line along a vector of no length has no parameters: the kernel hangs on one. */
const shortestVector = 1e-9;

function isNamed(index: Part21Index, at: number, entity: string): boolean {
  const names = index.signatures[index.kinds[at]];
  return names.length === 1 && names[0] === entity;
}

const isNumberByte = (c: number) =>
  (c >= 48 && c <= 57) || c === 46 || c === 43 || c === 45 || c === 69 || c === 101;
const isWordByte = (c: number) =>
  (c >= 48 && c <= 57) || (c >= 65 && c <= 90) || (c >= 97 && c <= 122) || c === 95;

function textBetween(bytes: Uint8Array, start: number, end: number): string {
  let text = '';
  for (let i = start; i < end; i++) text += String.fromCharCode(bytes[i]);
  return text;
}

class Output {
  #bytes = new Uint8Array(1 << 16);
  length = 0;

  ascii(text: string): void {
    this.#room(text.length);
    for (let i = 0; i < text.length; i++) this.#bytes[this.length + i] = text.charCodeAt(i);
    this.length += text.length;
  }

  bytes(from: Uint8Array, start: number, end: number): void {
    if (end <= start) return;
    this.#room(end - start);
    this.#bytes.set(from.subarray(start, end), this.length);
    this.length += end - start;
  }

  done(): Uint8Array {
    return this.#bytes.subarray(0, this.length);
  }

  #room(more: number): void {
    if (this.length + more <= this.#bytes.length) return;
    const larger = new Uint8Array(Math.max(this.#bytes.length * 2, this.length + more));
    larger.set(this.#bytes.subarray(0, this.length));
    this.#bytes = larger;
  }
}

const prologue = `ISO-10303-21;
HEADER;
FILE_DESCRIPTION((''),'2;1');
FILE_NAME('','',(''),(''),'','','');
FILE_SCHEMA(('AUTOMOTIVE_DESIGN'));
ENDSEC;
DATA;
`;

/** The product around body #1 in context #2, numbered after the `n` instances that the body needs. */
function epilogue(n: number, representationEntity: string): string {
  const f = (k: number) => `#${n + k}`;
  return `${f(1)}=APPLICATION_CONTEXT('');
${f(2)}=PRODUCT_CONTEXT('',${f(1)},'mechanical');
${f(3)}=PRODUCT_DEFINITION_CONTEXT('part definition',${f(1)},'design');
${f(4)}=PRODUCT('part','part','',(${f(2)}));
${f(5)}=PRODUCT_DEFINITION_FORMATION('','',${f(4)});
${f(6)}=PRODUCT_DEFINITION('design','',${f(5)},${f(3)});
${f(7)}=PRODUCT_DEFINITION_SHAPE('','',${f(6)});
${f(8)}=SHAPE_DEFINITION_REPRESENTATION(${f(7)},${f(9)});
${f(9)}=${representationEntity}('',(#1),#2);
ENDSEC;
END-ISO-10303-21;
`;
}
