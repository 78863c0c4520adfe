import { CadError } from './error.ts';
import { foreignFormat } from './foreign.ts';
import { type FormatId, formats } from './formats.ts';

/** How the formats begin that say what they are; STL and OBJ do not. */
const beginnings: Partial<Record<FormatId, string>> = { step: 'ISO-10303-21;', '3mf': 'PK', glb: 'glTF' };

/**
 * Format of a file: by what its bytes say, and by its extension only where they say nothing.
 * Throws CadError `unknownFormat`, or `unsupported` with advice for formats that people try.
 */
export function sniff(bytes: Uint8Array, fileName: string): FormatId {
  const head = latin(bytes, 0, 4096);
  if (bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4) return '3mf';
  if (head.startsWith('glTF')) return 'glb';
  const text = head.replace(/^\u00ef\u00bb\u00bf/, '').replace(/^(\s|\/\*[\s\S]*?\*\/)+/, '');
  if (/^ISO-10303-21\s*;/i.test(text)) return 'step';
  if (isBinaryStl(bytes)) return 'stl';
  if (/^solid\b/i.test(text) && /\bfacet\b|\bendsolid\b/i.test(text)) return 'stl';
  if (/^(#[^\n]*\n|\s)*(mtllib|o|g|v|vn|vt)\s/.test(text) && /^v\s+[-+.\d]/m.test(latin(bytes, 0, 1 << 16)))
    return 'obj';
  const known = foreignFormat(bytes, head);
  if (known)
    throw new CadError('unsupported', `"${fileName}" is ${known.is}, which is not read; ${known.instead}.`);
  const extension = /\.([^.]+)$/.exec(fileName.toLowerCase())?.[1] ?? '';
  const byName = formats.find((format) => format.extensions.includes(extension));
  if (byName && !(byName.id in beginnings)) return byName.id;
  if (byName) {
    throw new CadError(
      'unknownFormat',
      `"${fileName}" is named as a ${byName.extensions[0].toUpperCase()} file but does not begin like one, which is with "${beginnings[byName.id]}"; copy or export it again.`,
    );
  }
  const names = formats.map((format) => format.extensions[0].toUpperCase()).join(', ');
  throw new CadError(
    'unknownFormat',
    `"${fileName}" is none of the formats that can be read; give a ${names} file.`,
  );
}

/** 80 bytes of header, a count, 50 bytes a triangle; the length must fit the count exactly. */
function isBinaryStl(bytes: Uint8Array): boolean {
  if (bytes.length < 84) return false;
  const count = new DataView(bytes.buffer, bytes.byteOffset).getUint32(80, true);
  return count > 0 && bytes.length === 84 + 50 * count;
}

function latin(bytes: Uint8Array, start: number, end: number): string {
  return String.fromCharCode(...bytes.subarray(start, Math.min(end, start + 8192)));
}
