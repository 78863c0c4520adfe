/** Models made of boxes, for the tests. */
import type { Model, Part, Shape, Vec3 } from '@coveline/model';

export interface BoxPart {
  readonly name: string;
  readonly low: Vec3;
  readonly high: Vec3;
  readonly assembly?: readonly string[];
  readonly color?: Vec3;
}

/** One shape and one part a box, in the frame of the model, mm. */
export function boxModel(boxes: readonly BoxPart[]): Model {
  const shapes = boxes.map((b) => shapeOf(b, JSON.stringify([b.low, b.high])));
  const parts: Part[] = boxes.map(({ name, assembly = [], color }, i) => ({
    id: [...assembly, name].join('/'),
    name,
    assembly,
    shape: i,
    placement: identity,
    ...(color ? { color } : {}),
  }));
  return { shapes, parts, unit: 'mm', deviation_mm: 0, notes: [] };
}

const identity = Float64Array.of(1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1);

function shapeOf({ low, high }: BoxPart, hash: string): Shape {
  const positions: number[] = [];
  for (let i = 0; i < 8; i++)
    positions.push(i & 1 ? high[0] : low[0], i & 2 ? high[1] : low[1], i & 4 ? high[2] : low[2]);
  const triangles = sides.flatMap(([a, b, c, d]) => [a, b, c, a, c, d]);
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles), hash };
}

const sides = [
  [0, 2, 3, 1],
  [4, 5, 7, 6],
  [0, 1, 5, 4],
  [2, 6, 7, 3],
  [0, 4, 6, 2],
  [1, 3, 7, 5],
] as const;
