/** Straight round pieces of air of a model: hollow cylinders of its parts, from CAD faces or fitted to triangles. */
import { type Model, type Part, type Shape, transformPoint, type Vec3 } from '@coveline/model';
import type { Control } from '../result.ts';
import { roundCylinders } from './bores.ts';
import { fittedBores } from './cylinders-fitted.ts';
import { minus } from './vector.ts';

/** In the frame of the model, mm. It runs from `from` to `to` along its unit direction, from its origin. */
export interface Duct {
  /** Index of the part. */
  readonly part: number;
  readonly origin: Vec3;
  readonly direction: Vec3;
  readonly from: number;
  readonly to: number;
  readonly radius: number;
  /** Triangles of its wall, in model order. */
  readonly triangles: readonly number[];
  readonly by: 'cad' | 'triangles';
}

interface Local extends Omit<Duct, 'part' | 'by'> {}

/** Shorter than this share of the radius is an edge that was broken, no piece of a passage. */
const leastLength = 0.05;

export function ductsOf(model: Model, control: Control = {}): Duct[] {
  const ofShape = model.shapes.map((shape) => localDucts(shape, control));
  const ducts: Duct[] = [];
  let start = 0;
  for (let p = 0; p < model.parts.length; p++) {
    const part = model.parts[p];
    const shape = model.shapes[part.shape];
    const first = start;
    for (const local of ofShape[part.shape])
      ducts.push(placedDuct(local, part, p, first, shape.cad ? 'cad' : 'triangles'));
    start += shape.triangles.length / 3;
  }
  return ducts;
}

function localDucts(shape: Shape, control: Control): Local[] {
  const { cad } = shape;
  if (!cad) return fittedBores(shape, control).filter(isPassage);
  const cylinders = roundCylinders(shape, cad).filter(isPassage);
  const ofFace = new Map<number, number[]>();
  const own = cylinders.map(({ faces, origin, direction, from, to, radius }): Local => {
    const triangles: number[] = [];
    for (const f of faces) ofFace.set(f, triangles);
    return { origin, direction, from, to, radius, triangles };
  });
  for (let t = 0; t < cad.faceOfTriangle.length; t++) ofFace.get(cad.faceOfTriangle[t])?.push(t);
  return own;
}

function isPassage({ from, to, radius }: { from: number; to: number; radius: number }): boolean {
  return to - from > leastLength * radius;
}

function placedDuct(local: Local, { placement }: Part, part: number, start: number, by: Duct['by']): Duct {
  const origin = transformPoint(placement, local.origin);
  const ahead = transformPoint(placement, [
    local.origin[0] + local.direction[0],
    local.origin[1] + local.direction[1],
    local.origin[2] + local.direction[2],
  ]);
  return {
    ...local,
    part,
    origin,
    direction: minus(ahead, origin),
    triangles: local.triangles.map((t) => start + t),
    by,
  };
}
