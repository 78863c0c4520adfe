/** Wavefront OBJ: polygons under object (o) or group (g) names. Materials stand in other files and are not read. */
import type { Model } from '@coveline/model';
import earcut from 'earcut';
import { Assembler } from '../assemble.ts';
import { CadError } from '../error.ts';
import { Growing } from '../growing.ts';
import { identity } from '../matrix.ts';
import { mmPerUnit, type ReadOptions } from '../options.ts';
import { baseName, noteUnit } from './name.ts';
import { shapeFromSoup } from './soup.ts';

interface Piece {
  readonly name: string;
  /** Vertex numbers of the file, three per triangle. */
  readonly corners: Growing;
}

export function readObj(bytes: Uint8Array, fileName: string, options: ReadOptions): Model {
  options.onProgress?.('Reading the OBJ file', 0);
  const positions = new Growing();
  const objects = new Map<string, Piece>();
  const groups = new Map<string, Piece>();
  let object = pieceIn(objects, '');
  let group = pieceIn(groups, '');
  let freeform = 0;
  let line = 0;
  const stop = (why: string): never => {
    throw new CadError('damaged', `Line ${line} of "${fileName}" ${why}; export the file again.`);
  };
  for (const text of lines(bytes)) {
    line++;
    const words = text.trim().split(/\s+/);
    switch (words[0]) {
      case 'v':
        for (let k = 1; k <= 3; k++) {
          const x = Number(words[k]);
          if (words[k] === undefined || !Number.isFinite(x)) stop('has a vertex without three numbers');
          positions.push(x);
        }
        break;
      case 'f': {
        const polygon: number[] = [];
        for (const word of words.slice(1)) {
          const number = Number.parseInt(word, 10);
          const index = number < 0 ? positions.length / 3 + number : number - 1;
          if (!(index >= 0 && index < positions.length / 3)) {
            stop(`names vertex ${word}, of which there are ${positions.length / 3} so far`);
          }
          polygon.push(index);
        }
        if (polygon.length < 3) stop('has a face with fewer than three vertices');
        for (const corner of triangulate(polygon, positions)) {
          object.corners.push(corner);
          group.corners.push(corner);
        }
        break;
      }
      case 'o':
        object = pieceIn(objects, words.slice(1).join(' '));
        break;
      case 'g':
        group = pieceIn(groups, words.slice(1).join(' '));
        break;
      case 'curv':
      case 'surf':
        freeform++;
        break;
      default:
    }
  }
  // Objects are bodies; groups are only taken for bodies where the file names no objects.
  const pieces = [...(objects.size > 1 ? objects : groups).values()].filter((p) => p.corners.length > 0);
  if (pieces.length === 0) {
    throw new CadError('noGeometry', `"${fileName}" holds no faces; export the model as a mesh.`);
  }
  const out = new Assembler();
  const unit = noteUnit(out, options);
  if (freeform > 0) {
    out.note(
      'warning',
      `${freeform} free-form curves and surfaces in the file cannot be read and are left out.`,
    );
  }
  for (const piece of pieces) {
    const name = piece.name || baseName(fileName);
    const soup = { what: `object "${name}"`, ...compact(piece.corners, positions) };
    const { shape, warnings } = shapeFromSoup(soup, mmPerUnit[unit]);
    const id = out.add({ name, assembly: [], shape, placement: identity() });
    for (const warning of warnings) out.note('warning', warning, id);
  }
  options.onProgress?.('Reading the OBJ file', 1);
  return out.model(unit, 0);
}

function pieceIn(pieces: Map<string, Piece>, name: string): Piece {
  const known = pieces.get(name);
  if (known) return known;
  const piece = { name, corners: new Growing() };
  pieces.set(name, piece);
  return piece;
}

/** Lines of the file, joined where one ends with a backslash. Decoded piece by piece, so no file is too long. */
function* lines(bytes: Uint8Array): Generator<string> {
  const decoder = new TextDecoder();
  let held = '';
  for (let at = 0; at < bytes.length; ) {
    let end = at;
    while (end < bytes.length && bytes[end] !== 10) end++;
    const text = decoder.decode(bytes.subarray(at, end)).replace(/\r$/, '');
    at = end + 1;
    if (text.endsWith('\\') && held.length < 1e6) held += `${text.slice(0, -1)} `;
    else {
      yield held + text;
      held = '';
    }
  }
  if (held) yield held;
}

/** Triangles of a polygon, also where it has a re-entrant corner: ears cut in the plane it fits best. */
function triangulate(polygon: readonly number[], positions: Growing): readonly number[] {
  if (polygon.length === 3) return polygon;
  // Newell's normal.
  const normal = [0, 0, 0];
  for (let i = 0; i < polygon.length; i++) {
    const a = polygon[i] * 3;
    const b = polygon[(i + 1) % polygon.length] * 3;
    for (let k = 0; k < 3; k++) {
      const u = (k + 1) % 3;
      const v = (k + 2) % 3;
      normal[k] += (positions.at(a + u) - positions.at(b + u)) * (positions.at(a + v) + positions.at(b + v));
    }
  }
  const size = normal.map(Math.abs);
  const drop = size.indexOf(Math.max(...size));
  const flat: number[] = [];
  for (const corner of polygon) {
    flat.push(positions.at(corner * 3 + ((drop + 1) % 3)), positions.at(corner * 3 + ((drop + 2) % 3)));
  }
  const ears = earcut(flat);
  // Which way round the ears come out is the library's own business; they follow the polygon here.
  const loop = polygon.map((_, i) => i);
  const turned = area(flat, ears) * area(flat, fan(loop)) < 0;
  return (turned ? ears.reverse() : ears).map((i) => polygon[i]);
}

/** Triangles from the first corner; their signed areas add up to that of the polygon. */
function fan(loop: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = 1; i + 1 < loop.length; i++) out.push(loop[0], loop[i], loop[i + 1]);
  return out;
}

function area(flat: readonly number[], triangles: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i] * 2, triangles[i + 1] * 2, triangles[i + 2] * 2];
    sum +=
      (flat[b] - flat[a]) * (flat[c + 1] - flat[a + 1]) - (flat[c] - flat[a]) * (flat[b + 1] - flat[a + 1]);
  }
  return sum;
}

/** The corners' vertices alone, numbered from 0. */
function compact(corners: Growing, positions: Growing): { positions: Float64Array; triangles: Uint32Array } {
  const number = new Map<number, number>();
  const kept = new Growing();
  const triangles = new Uint32Array(corners.length);
  for (let i = 0; i < triangles.length; i++) {
    const corner = corners.at(i);
    let n = number.get(corner);
    if (n === undefined) {
      n = number.size;
      number.set(corner, n);
      for (let k = 0; k < 3; k++) kept.push(positions.at(corner * 3 + k));
    }
    triangles[i] = n;
  }
  return { positions: kept.floats().slice(), triangles };
}
