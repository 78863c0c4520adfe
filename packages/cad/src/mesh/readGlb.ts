/** glTF binary: metres, +Y up by its standard; read as written, turned upright by the caller. Colours are linear there. */
import type { Model, Vec3 } from '@coveline/model';
import { Logger, type Mesh, type Node, type Primitive, Verbosity, WebIO } from '@gltf-transform/core';
import { Assembler } from '../assemble.ts';
import { CadError } from '../error.ts';
import { Growing } from '../growing.ts';
import { limits } from '../limits.ts';
import { determinant, identity, type Matrix, multiply } from '../matrix.ts';
import type { ReadOptions } from '../options.ts';
import { checkGlb } from './glbCheck.ts';
import { baseName } from './name.ts';
import { type SoupReading, shapeFromSoup } from './soup.ts';

const mmPerMetre = 1000;

/** glTF primitive modes. */
const mode = { triangles: 4, strip: 5, fan: 6 } as const;

interface Context {
  readonly out: Assembler;
  readonly shapes: Map<Mesh, SoupReading | undefined>;
  readonly fallbackName: string;
  /** Primitives that are points or lines. */
  skipped: number;
}

export async function readGlb(bytes: Uint8Array, fileName: string, options: ReadOptions): Promise<Model> {
  options.onProgress?.('Reading the GLB file', 0);
  checkGlb(bytes, fileName);
  const io = new WebIO().setLogger(new Logger(Verbosity.SILENT));
  let scenes: Node[][];
  try {
    const root = (await io.readBinary(bytes)).getRoot();
    const wanted = root.getDefaultScene() ?? root.listScenes()[0];
    // A file without a scene still has nodes; those that no other node holds are its roots.
    scenes = wanted
      ? [wanted.listChildren()]
      : [root.listNodes().filter((node) => node.getParentNode() === null)];
  } catch (thrown) {
    const why = thrown instanceof Error ? thrown.message : String(thrown);
    throw new CadError('damaged', `"${fileName}" is a damaged GLB file (${why}); export it again.`);
  }
  const context: Context = {
    out: new Assembler(),
    shapes: new Map(),
    fallbackName: baseName(fileName),
    skipped: 0,
  };
  for (const nodes of scenes) for (const node of nodes) walk(context, node, identity(), []);
  if (context.skipped > 0) {
    context.out.note('warning', `${context.skipped} pieces made of points or lines are left out.`);
  }
  if (context.out.partCount === 0) {
    throw new CadError('noGeometry', `"${fileName}" holds no triangles; export the model as a mesh.`);
  }
  options.onProgress?.('Reading the GLB file', 1);
  return context.out.model('m', 0);
}

function walk(context: Context, node: Node, parent: Matrix, names: readonly string[]): void {
  const local = Float64Array.from(node.getMatrix());
  const matrix = multiply(parent, local);
  const mesh = node.getMesh();
  const children = node.listChildren();
  const name = node.getName() || mesh?.getName() || '';
  if (mesh) addMesh(context, mesh, name || context.fallbackName, names, matrix);
  // A nameless node only carries a transform; it is no assembly.
  const below = node.getName() && children.length > 0 ? [...names, node.getName()] : names;
  for (const child of children) walk(context, child, matrix, below);
}

function addMesh(context: Context, mesh: Mesh, name: string, names: readonly string[], matrix: Matrix): void {
  if (!context.shapes.has(mesh)) {
    const reading = shapeOf(context, mesh, name);
    context.shapes.set(mesh, reading);
    for (const text of reading?.warnings ?? []) context.out.note('warning', text);
  }
  const reading = context.shapes.get(mesh);
  if (!reading) return;
  if (!matrix.every(Number.isFinite) || !(Math.abs(determinant(matrix)) > 1e-12)) {
    throw new CadError(
      'damaged',
      `"${name}" is placed by a transform that flattens it; export the file again.`,
    );
  }
  const inMm = matrix.slice();
  for (let k = 12; k < 15; k++) inMm[k] *= mmPerMetre;
  const color = colourOf(mesh);
  context.out.add({
    name,
    assembly: names,
    shape: reading.shape,
    placement: inMm,
    ...(color ? { color } : {}),
  });
}

/** All primitives of a mesh together: exporters split one body by material. */
function shapeOf(context: Context, mesh: Mesh, name: string): SoupReading | undefined {
  const positions = new Growing();
  const triangles = new Growing();
  for (const primitive of mesh.listPrimitives()) {
    const accessor = primitive.getAttribute('POSITION');
    const corners = accessor && cornersOf(primitive, accessor.getCount());
    if (!accessor || !corners) {
      context.skipped++;
      continue;
    }
    const first = positions.length / 3;
    const point = [0, 0, 0];
    for (let i = 0; i < accessor.getCount(); i++) {
      accessor.getElement(i, point);
      for (let k = 0; k < 3; k++) positions.push(point[k]);
    }
    for (const corner of corners) triangles.push(first + corner);
    if (triangles.length / 3 > limits.triangles) {
      throw new CadError(
        'tooLarge',
        `"${name}" has more than ${limits.triangles} triangles; export it coarser.`,
      );
    }
  }
  if (triangles.length === 0) return undefined;
  return shapeFromSoup(
    { what: `mesh "${name}"`, positions: positions.floats(), triangles: triangles.integers() },
    mmPerMetre,
  );
}

/** Vertex numbers, three per triangle; undefined for points and lines. */
function cornersOf(primitive: Primitive, vertexCount: number): number[] | undefined {
  const indices = primitive.getIndices();
  const n = indices ? indices.getCount() : vertexCount;
  const at = (i: number) => (indices ? indices.getScalar(i) : i);
  const out: number[] = [];
  switch (primitive.getMode()) {
    case mode.triangles:
      for (let i = 0; i + 2 < n; i += 3) out.push(at(i), at(i + 1), at(i + 2));
      return out;
    case mode.strip:
      for (let i = 0; i + 2 < n; i++) {
        // Every second triangle of a strip is wound the other way.
        if (i % 2 === 0) out.push(at(i), at(i + 1), at(i + 2));
        else out.push(at(i + 1), at(i), at(i + 2));
      }
      return out;
    case mode.fan:
      for (let i = 1; i + 1 < n; i++) out.push(at(0), at(i), at(i + 1));
      return out;
    default:
      return undefined;
  }
}

/** Base colour of the first material, from linear light to sRGB (IEC 61966-2-1). */
function colourOf(mesh: Mesh): Vec3 | undefined {
  for (const primitive of mesh.listPrimitives()) {
    const factor = primitive.getMaterial()?.getBaseColorFactor();
    if (factor) return [toSrgb(factor[0]), toSrgb(factor[1]), toSrgb(factor[2])];
  }
  return undefined;
}

function toSrgb(linear: number): number {
  const x = Math.min(1, Math.max(0, linear));
  return x <= 0.003_130_8 ? 12.92 * x : 1.055 * x ** (1 / 2.4) - 0.055;
}
