/** Collects shapes and placed bodies into a model: equal shapes once, ids unique, scaling and mirroring baked in. */
import type { CadFace, LengthUnit, Model, ModelNote, Part, Shape, Vec3 } from '@coveline/model';
import { CadError } from './error.ts';
import { shapeHash } from './hash.ts';
import { limits } from './limits.ts';
import { determinant, isRigid, type Matrix, splitRigid } from './matrix.ts';
import { flipTriangles } from './mesh/check.ts';
import { unit } from './vector.ts';

export interface Body {
  readonly name: string;
  readonly assembly: readonly string[];
  readonly shape: Shape;
  /** Any affine motion; made rigid here. */
  readonly placement: Matrix;
  readonly color?: Vec3;
}

export class Assembler {
  readonly #shapes: Shape[] = [];
  readonly #parts: Part[] = [];
  readonly #notes: ModelNote[] = [];
  readonly #byHash = new Map<string, number>();
  readonly #baked = new Map<string, Shape>();
  readonly #ids = new Map<string, number>();
  #triangles = 0;

  /** Adds a part and returns its id. Throws CadError `tooLarge` beyond the limit of parts or triangles. */
  add(body: Body): string {
    if (this.#parts.length >= limits.parts) {
      throw new CadError(
        'tooLarge',
        `The file places more than ${limits.parts} bodies; export a part of it.`,
      );
    }
    let { shape, placement } = body;
    if (!isRigid(placement)) {
      const { rigid, rest } = splitRigid(placement);
      placement = rigid;
      const key = `${shape.hash}|${Array.from(rest, (x) => x.toPrecision(10)).join()}`;
      const baked = this.#baked.get(key) ?? bake(shape, rest);
      this.#baked.set(key, baked);
      shape = baked;
    }
    const name = clean(body.name) || 'Body';
    const assembly = body.assembly.map((text) => clean(text) || 'Assembly');
    const id = this.#uniqueId([...assembly, name].map((text) => text.replaceAll('/', '∕')).join('/'));
    const part: Part = { id, name, assembly, shape: this.#shapeIndex(shape), placement };
    this.#parts.push(body.color ? { ...part, color: body.color } : part);
    return id;
  }

  note(level: ModelNote['level'], text: string, part?: string): void {
    this.#notes.push(part === undefined ? { level, text } : { level, text, part });
  }

  get partCount(): number {
    return this.#parts.length;
  }

  model(unitOfFile: LengthUnit, deviation_mm: number): Model {
    return { shapes: this.#shapes, parts: this.#parts, unit: unitOfFile, deviation_mm, notes: this.#notes };
  }

  #shapeIndex(shape: Shape): number {
    let index = this.#byHash.get(shape.hash);
    if (index === undefined) {
      this.#triangles += shape.triangles.length / 3;
      if (this.#triangles > limits.triangles) {
        throw new CadError(
          'tooLarge',
          `The model has more than ${limits.triangles / 1e6} million triangles; export it coarser or in parts.`,
        );
      }
      index = this.#shapes.length;
      this.#shapes.push(shape);
      this.#byHash.set(shape.hash, index);
    }
    return index;
  }

  #uniqueId(path: string): string {
    for (;;) {
      const n = (this.#ids.get(path) ?? 0) + 1;
      this.#ids.set(path, n);
      if (n === 1) return path;
      const id = `${path}#${n}`;
      // A part may itself be called "Bolt#2".
      if (!this.#ids.has(id)) {
        this.#ids.set(id, 1);
        return id;
      }
    }
  }
}

/** Names are shown: no control characters, no endless text. */
function clean(name: string): string {
  return name
    .replace(/\p{Cc}+/gu, ' ')
    .trim()
    .slice(0, 200);
}

/**
 * The shape with a linear map without rotation worked into it. Radii, kinds and angles survive a uniform scale or a
 * mirror; under any other map the CAD topology is no longer true and is dropped.
 */
function bake(shape: Shape, rest: Matrix): Shape {
  const positions = new Float64Array(shape.positions.length);
  for (let i = 0; i < positions.length; i += 3) positions.set(image(rest, shape.positions, i), i);
  const triangles = shape.triangles.slice();
  if (determinant(rest) < 0) flipTriangles(triangles);
  const k = Math.cbrt(Math.abs(determinant(rest)));
  const uniform = [1, -1].some((sign) =>
    [sign, 0, 0, 0, 1, 0, 0, 0, 1].every(
      (x, i) => Math.abs(rest[Math.floor(i / 3) * 4 + (i % 3)] - x * k) < 1e-9 * k,
    ),
  );
  if (!shape.cad || !uniform) return { positions, triangles, hash: shapeHash(positions, triangles) };
  const cad = {
    faceOfTriangle: shape.cad.faceOfTriangle,
    faces: shape.cad.faces.map((face) => bakeFace(face, rest, k)),
    edges: shape.cad.edges.map((edge) => {
      const points = new Float64Array(edge.points.length);
      for (let i = 0; i < points.length; i += 3) points.set(image(rest, edge.points, i), i);
      return { ...edge, points, length_mm: edge.length_mm * k };
    }),
  };
  return { positions, triangles, cad, hash: shapeHash(positions, triangles, cad) };
}

function bakeFace(face: CadFace, rest: Matrix, k: number): CadFace {
  const { axis, radius_mm, majorRadius_mm, ...same } = face;
  return {
    ...same,
    ...(radius_mm === undefined ? {} : { radius_mm: radius_mm * k }),
    ...(majorRadius_mm === undefined ? {} : { majorRadius_mm: majorRadius_mm * k }),
    ...(axis && {
      axis: {
        origin: image(rest, axis.origin, 0),
        direction: unit(image(rest, axis.direction, 0)) ?? axis.direction,
      },
    }),
  };
}

function image(m: Matrix, p: ArrayLike<number>, i: number): Vec3 {
  const x = p[i];
  const y = p[i + 1];
  const z = p[i + 2];
  return [
    m[0] * x + m[4] * y + m[8] * z + m[12],
    m[1] * x + m[5] * y + m[9] * z + m[13],
    m[2] * x + m[6] * y + m[10] * z + m[14],
  ];
}
