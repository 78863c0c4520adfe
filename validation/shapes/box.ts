import { type Mesh, meshOfFaces, type Point } from './mesh.ts';

/** Box between two corners. */
export function box(low: Point, high: Point): Mesh {
  return meshOfFaces(corners(low, high), sides);
}

const sides = [
  [0, 3, 2, 1],
  [4, 5, 6, 7],
  [0, 1, 5, 4],
  [1, 2, 6, 5],
  [2, 3, 7, 6],
  [3, 0, 4, 7],
];

function corners([x0, y0, z0]: Point, [x1, y1, z1]: Point): Point[] {
  return [
    [x0, y0, z0],
    [x1, y0, z0],
    [x1, y1, z0],
    [x0, y1, z0],
    [x0, y0, z1],
    [x1, y0, z1],
    [x1, y1, z1],
    [x0, y1, z1],
  ];
}

/** Open tray: inside `length` x `width` x `height`, walls and floor of thickness `wall`; the inside starts at 0, 0, 0. */
export function tray(length: number, width: number, height: number, wall: number): Mesh {
  const outer = corners([-wall, -wall, -wall], [length + wall, width + wall, height]);
  const inner = corners([0, 0, 0], [length, width, height]);
  return meshOfFaces(
    [...outer, ...inner],
    [
      ...sides.filter((_, k) => k !== 1),
      // The inside, seen from the air: floor and walls turned round, then the rim.
      ...sides.filter((_, k) => k !== 1).map((face) => [...face].reverse().map((v) => v + 8)),
      [4, 5, 13, 12],
      [5, 6, 14, 13],
      [6, 7, 15, 14],
      [7, 4, 12, 15],
    ],
  );
}

/** Closed box with a closed hollow inside. */
export function hollowBox(length: number, width: number, height: number, wall: number): Mesh {
  const outer = corners([-wall, -wall, -wall], [length + wall, width + wall, height + wall]);
  const inner = corners([0, 0, 0], [length, width, height]);
  return meshOfFaces(
    [...outer, ...inner],
    [...sides, ...sides.map((face) => [...face].reverse().map((v) => v + 8))],
  );
}
