/** STL, ASCII and binary. The format states neither unit nor colour; each "solid" becomes a part. */
import type { Model } from '@coveline/model';
import { Assembler } from '../assemble.ts';
import { CadError } from '../error.ts';
import { Growing } from '../growing.ts';
import { identity } from '../matrix.ts';
import { mmPerUnit, type ReadOptions } from '../options.ts';
import { baseName, noteUnit } from './name.ts';
import { type Soup, shapeFromSoup } from './soup.ts';

interface Solid {
  readonly name: string;
  readonly positions: Float64Array;
}

export function readStl(bytes: Uint8Array, fileName: string, options: ReadOptions): Model {
  options.onProgress?.('Reading the STL file', 0);
  const solids = isAscii(bytes) ? asciiSolids(bytes, fileName) : [binarySolid(bytes, fileName)];
  const filled = solids.filter((solid) => solid.positions.length > 0);
  if (filled.length === 0) {
    throw new CadError('noGeometry', `"${fileName}" holds no triangle; export the model again.`);
  }
  const out = new Assembler();
  const unit = noteUnit(out, options);
  for (const solid of filled) {
    const name = solid.name || baseName(fileName);
    const triangles = new Uint32Array(solid.positions.length / 3);
    for (let i = 0; i < triangles.length; i++) triangles[i] = i;
    const soup: Soup = { what: `solid "${name}"`, positions: solid.positions, triangles };
    const { shape, warnings } = shapeFromSoup(soup, mmPerUnit[unit]);
    const id = out.add({ name, assembly: [], shape, placement: identity() });
    for (const text of warnings) out.note('warning', text, id);
  }
  options.onProgress?.('Reading the STL file', 1);
  return out.model(unit, 0);
}

/** Many binary files start with "solid" too, so the length decides first. */
function isAscii(bytes: Uint8Array): boolean {
  if (bytes.length >= 84) {
    const count = new DataView(bytes.buffer, bytes.byteOffset).getUint32(80, true);
    if (count > 0 && bytes.length === 84 + 50 * count) return false;
  }
  let i = 0;
  while (i < bytes.length && (bytes[i] <= 32 || bytes[i] > 0xee)) i++;
  if (String.fromCharCode(...bytes.subarray(i, i + 5)).toLowerCase() !== 'solid') return false;
  // Text has no zero bytes; a binary header of 80 bytes with a count behind it nearly always does.
  return !bytes.subarray(0, 200).includes(0);
}

function binarySolid(bytes: Uint8Array, fileName: string): Solid {
  if (bytes.length < 84) {
    throw new CadError(
      'truncated',
      `"${fileName}" has ${bytes.length} bytes, too few for an STL file; copy or export it again.`,
    );
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  const there = Math.floor((bytes.length - 84) / 50);
  if (there < count) {
    throw new CadError(
      'truncated',
      `"${fileName}" announces ${count} triangles but ends after ${there}; copy or export it again.`,
    );
  }
  const positions = new Float64Array(count * 9);
  for (let t = 0; t < count; t++) {
    for (let k = 0; k < 9; k++) positions[t * 9 + k] = view.getFloat32(84 + t * 50 + 12 + k * 4, true);
  }
  let header = '';
  for (let i = 0; i < 80 && bytes[i] !== 0; i++) header += String.fromCharCode(bytes[i]);
  // Exporters put their own name or the word "solid" here; only a short plain name is taken for the part.
  const name = header.replace(/^solid\b/i, '').trim();
  return { name: /^[\w .()+-]{1,40}$/.test(name) && !/stl|export|binary/i.test(name) ? name : '', positions };
}

function asciiSolids(bytes: Uint8Array, fileName: string): Solid[] {
  const solids: Solid[] = [];
  let name = '';
  let points = new Growing();
  let inside = false;
  let corners = 0;
  let line = 1;
  let at = 0;
  const stop = (why: string): never => {
    throw new CadError('damaged', `Line ${line} of "${fileName}" ${why}; export the file again.`);
  };
  const finish = () => {
    solids.push({ name, positions: points.floats().slice() });
    points = new Growing();
    inside = false;
  };
  while (at < bytes.length) {
    let end = at;
    while (end < bytes.length && bytes[end] !== 10) end++;
    const words = latin(bytes, at, end).trim().split(/\s+/);
    switch (words[0].toLowerCase()) {
      case 'solid':
        if (inside) stop('starts a solid inside a solid');
        inside = true;
        name = words.slice(1).join(' ');
        break;
      case 'facet':
        if (!inside) stop('has a facet outside a solid');
        if (corners % 3 !== 0) stop('starts a facet before the last one is complete');
        break;
      case 'vertex':
        if (words.length < 4) stop('has a vertex without three coordinates');
        for (let k = 1; k <= 3; k++) {
          const x = Number(words[k]);
          if (!Number.isFinite(x)) stop(`has the coordinate "${words[k]}", which is no number`);
          points.push(x);
        }
        corners++;
        break;
      case 'endfacet':
        if (corners % 3 !== 0) stop('ends a facet that does not have three vertices');
        break;
      case 'endsolid':
        if (corners % 3 !== 0) stop('ends a solid in the middle of a facet');
        finish();
        break;
      case 'outer':
      case 'endloop':
      case '':
        break;
      default:
        stop(`starts with "${words[0].slice(0, 30)}", which is no STL`);
    }
    at = end + 1;
    line++;
  }
  if (inside) {
    throw new CadError(
      'truncated',
      `"${fileName}" stops after ${Math.floor(corners / 3)} triangles without its "endsolid" line; copy or export it again.`,
    );
  }
  return solids;
}

function latin(bytes: Uint8Array, start: number, end: number): string {
  let text = '';
  for (let i = start; i < end; i++) text += String.fromCharCode(bytes[i]);
  return text;
}
