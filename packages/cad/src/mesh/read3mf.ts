/** 3MF: a zip archive with one or more XML model parts; units, names, colours, components, transforms. */
import type { LengthUnit, Model, Shape, Vec3 } from '@coveline/model';
import { Assembler } from '../assemble.ts';
import { CadError } from '../error.ts';
import { limits } from '../limits.ts';
import { determinant, identity, type Matrix, multiply } from '../matrix.ts';
import type { ReadOptions } from '../options.ts';
import { shapeFromSoup } from './soup.ts';
import { type Placed, parseThreeMf, type ThreeMfObject, type ThreeMfPart } from './threeMf.ts';
import { unpack } from './unpack.ts';

const mmPerUnit: Readonly<Record<string, number>> = {
  micron: 0.001,
  millimeter: 1,
  centimeter: 10,
  meter: 1000,
  inch: 25.4,
  foot: 304.8,
};

const unitOf: Readonly<Record<string, LengthUnit>> = { centimeter: 'cm', meter: 'm', inch: 'in' };

interface Context {
  readonly fileName: string;
  readonly parts: ReadonlyMap<string, ThreeMfPart>;
  readonly out: Assembler;
  readonly shapes: Map<ThreeMfObject, Shape>;
  /** Objects that were walked and placed nothing: not walked again, however often they are used. */
  readonly empty: Set<ThreeMfObject>;
  /** Objects that are no part of the product, such as supports, by type. */
  readonly skipped: Set<string>;
}

export function read3mf(bytes: Uint8Array, fileName: string, options: ReadOptions): Model {
  options.onProgress?.('Unpacking the 3MF file', 0);
  const members = unpack(bytes, fileName, (name) => /\.(model|rels)$/i.test(name));
  const rootPath = rootModel(members);
  if (!rootPath) {
    throw new CadError(
      'unknownFormat',
      `"${fileName}" is a zip archive without a 3D model in it; give a 3MF file or unpack the archive.`,
    );
  }
  const parts = new Map<string, ThreeMfPart>();
  for (const [name, xml] of members) {
    if (!/\.model$/i.test(name) && normal(name) !== rootPath) continue;
    options.onProgress?.('Reading the 3MF file', parts.size / members.size);
    try {
      parts.set(normal(name), parseThreeMf(xml));
    } catch (thrown) {
      const why = thrown instanceof Error ? thrown.message.split('\n')[0] : String(thrown);
      throw new CadError('damaged', `"${name}" in "${fileName}" is damaged: ${why}; export the file again.`);
    }
  }
  const root = parts.get(rootPath)!;
  const factor = mmPerUnit[root.unit];
  if (factor === undefined) {
    throw new CadError(
      'unsupported',
      `"${fileName}" is written in the unit "${root.unit.slice(0, 30)}", which 3MF does not have; export it again.`,
    );
  }
  const out = new Assembler();
  const context: Context = { fileName, parts, out, shapes: new Map(), skipped: new Set(), empty: new Set() };
  for (const item of root.items) place(context, item, rootPath, identity(), [], []);
  for (const type of context.skipped) out.note('info', `Objects of type "${type}" are left out.`);
  if (out.partCount === 0) {
    throw new CadError(
      'noGeometry',
      `"${fileName}" builds no object with triangles; export the model again.`,
    );
  }
  options.onProgress?.('Reading the 3MF file', 1);
  return out.model(unitOf[root.unit] ?? 'mm', 0);
}

function place(
  context: Context,
  placed: Placed,
  ownPath: string,
  parent: Matrix,
  names: readonly string[],
  chain: readonly ThreeMfObject[],
): void {
  const path = placed.path === undefined ? ownPath : normal(placed.path);
  const part = context.parts.get(path);
  const object = part?.objects.get(placed.object);
  if (!part || !object) {
    throw new CadError(
      'damaged',
      `"${context.fileName}" places object ${placed.object.slice(0, 30)}, which is not in it; export the file again.`,
    );
  }
  const name = object.name || `Object ${object.id}`;
  if (chain.includes(object)) {
    throw new CadError(
      'hostile',
      `Object "${name}" in "${context.fileName}" contains itself; export it again.`,
    );
  }
  if (chain.length >= limits.depth) {
    throw new CadError(
      'hostile',
      `Objects in "${context.fileName}" are nested more than ${limits.depth} deep; export a flatter assembly.`,
    );
  }
  if (object.type !== 'model' && object.type !== 'surface') {
    context.skipped.add(object.type);
    return;
  }
  if (context.empty.has(object)) return;
  const placedBefore = context.out.partCount;
  const matrix = multiply(parent, placed.matrix);
  for (const component of object.components) {
    place(context, component, path, matrix, [...names, name], [...chain, object]);
  }
  if (object.triangles.length > 0) addObject(context, object, name, names, matrix, mmPerUnit[part.unit] ?? 1);
  if (context.out.partCount === placedBefore) context.empty.add(object);
}

function addObject(
  context: Context,
  object: ThreeMfObject,
  name: string,
  names: readonly string[],
  matrix: Matrix,
  factor: number,
): void {
  if (!(Math.abs(determinant(matrix)) > 1e-12)) {
    throw new CadError(
      'damaged',
      `Object "${name}" is placed by a transform that flattens it; export it again.`,
    );
  }
  let shape = context.shapes.get(object);
  if (!shape) {
    const soup = {
      what: `object "${name}"`,
      positions: object.positions.floats(),
      triangles: object.triangles.integers(),
    };
    const reading = shapeFromSoup(soup, factor);
    shape = reading.shape;
    context.shapes.set(object, shape);
    for (const text of reading.warnings) context.out.note('warning', text);
  }
  const inMm = matrix.slice();
  for (let k = 12; k < 15; k++) inMm[k] *= factor;
  const color: { color?: Vec3 } = object.colour ? { color: object.colour } : {};
  context.out.add({ name, assembly: names, shape, placement: inMm, ...color });
}

/** Path of the model part that the package's root relationships name, else the usual one. */
function rootModel(members: ReadonlyMap<string, Uint8Array>): string | undefined {
  const rels = [...members].find(([name]) => normal(name) === '_rels/.rels')?.[1];
  const text = rels && rels.length < 1 << 20 ? new TextDecoder().decode(rels) : '';
  for (const [tag] of text.matchAll(/<Relationship\b[^>]*>/g)) {
    const target = /\bTarget\s*=\s*["']([^"']+)["']/.exec(tag)?.[1];
    if (target && /3dmodel["']/.test(tag)) {
      const path = normal(target);
      if ([...members.keys()].some((name) => normal(name) === path)) return path;
    }
  }
  return [...members.keys()].map(normal).find((name) => /\.model$/.test(name));
}

const normal = (path: string) => path.replace(/^\/+/, '').toLowerCase();
