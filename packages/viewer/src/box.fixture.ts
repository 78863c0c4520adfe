import type { Model, Part, Shape } from '@coveline/model';

/** A box from the origin to `size`, eight shared vertices, twelve triangles wound outwards. */
export function boxShape([x, y, z]: readonly [number, number, number]): Shape {
  const positions = new Float64Array([
    0,
    0,
    0,
    x,
    0,
    0,
    x,
    y,
    0,
    0,
    y,
    0,
    0,
    0,
    z,
    x,
    0,
    z,
    x,
    y,
    z,
    0,
    y,
    z,
  ]);
  const quads = [
    [0, 3, 2, 1],
    [4, 5, 6, 7],
    [0, 1, 5, 4],
    [1, 2, 6, 5],
    [2, 3, 7, 6],
    [3, 0, 4, 7],
  ];
  const triangles = new Uint32Array(quads.flatMap(([a, b, c, d]) => [a, b, c, a, c, d]));
  return { positions, triangles, hash: `box ${x} ${y} ${z}` };
}

/** The same box of 10 mm at every place, as parts "0", "1" and so on. */
export function boxesAt(places: readonly (readonly [number, number, number])[]): Model {
  const parts: Part[] = places.map(([x, y, z], index) => ({
    id: String(index),
    name: `box ${index}`,
    assembly: [],
    shape: 0,
    placement: new Float64Array([1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, x, y, z, 1]),
  }));
  return { shapes: [boxShape([10, 10, 10])], parts, unit: 'mm', deviation_mm: 0.05, notes: [] };
}
