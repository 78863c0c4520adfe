/** The typeface of the document, and which characters it has. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);

const files = [
  '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf',
];

let read: Buffer[] | null = null;

export function fontFiles(): Buffer[] {
  read ??= files.map((file) => readFileSync(require.resolve(file)));
  return read;
}

let covered: ReadonlySet<number> | null = null;

/** Code points that every weight of the typeface can show. */
export function coveredCodePoints(): ReadonlySet<number> {
  if (!covered) {
    const [first, ...rest] = fontFiles().map(codePointsOf);
    covered = new Set([...first].filter((code) => rest.every((other) => other.has(code))));
  }
  return covered;
}

/**
 * Code points with a glyph, from the character map of a TrueType file: formats 4 and 12 of the OpenType
 * specification, 'cmap'. Throws on a file without either.
 */
export function codePointsOf(file: Buffer): Set<number> {
  const cmap = tableAt(file, 'cmap');
  const found = new Set<number>();
  let known = false;
  for (let i = 0; i < file.readUInt16BE(cmap + 2); i++) {
    const at = cmap + file.readUInt32BE(cmap + 4 + i * 8 + 4);
    const format = file.readUInt16BE(at);
    if (format === 4) addSegments(file, at, found);
    if (format === 12) addGroups(file, at, found);
    known ||= format === 4 || format === 12;
  }
  if (!known) throw new Error('The font file has no character map of format 4 or 12.');
  return found;
}

function tableAt(file: Buffer, tag: string): number {
  for (let i = 0; i < file.readUInt16BE(4); i++) {
    const record = 12 + i * 16;
    if (file.toString('latin1', record, record + 4) === tag) return file.readUInt32BE(record + 8);
  }
  throw new Error(`The font file has no table "${tag}".`);
}

function addSegments(file: Buffer, at: number, found: Set<number>): void {
  const segments = file.readUInt16BE(at + 6) / 2;
  const ends = at + 14;
  const starts = ends + segments * 2 + 2;
  const deltas = starts + segments * 2;
  const offsets = deltas + segments * 2;
  for (let s = 0; s < segments; s++) {
    const start = file.readUInt16BE(starts + s * 2);
    const end = file.readUInt16BE(ends + s * 2);
    const delta = file.readUInt16BE(deltas + s * 2);
    const offset = file.readUInt16BE(offsets + s * 2);
    for (let code = start; code <= end && code !== 0xffff; code++) {
      const index = offset === 0 ? code : file.readUInt16BE(offsets + s * 2 + offset + (code - start) * 2);
      if (index !== 0 && ((index + delta) & 0xffff) !== 0) found.add(code);
    }
  }
}

function addGroups(file: Buffer, at: number, found: Set<number>): void {
  for (let g = 0; g < file.readUInt32BE(at + 12); g++) {
    const group = at + 16 + g * 12;
    for (let code = file.readUInt32BE(group); code <= file.readUInt32BE(group + 4); code++) {
      if (file.readUInt32BE(group + 8) + code - file.readUInt32BE(group) !== 0) found.add(code);
    }
  }
}
