/**
 * A closed box with one opening, 1 mm wider or narrower than the ball: the whole inside is reached, or none of it.
 * Closed forms: the largest ball through a round hole, a slot or a rectangle has its smallest width as diameter.
 */
import { expect, test } from 'vitest';
import { assemble, motion } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { type Mesh, movedModel, type Point } from '../../shapes/mesh.ts';
import { difference } from '../../shapes/solid.ts';
import { asked, limbOf } from './asked.ts';

const wall = 5;
const turns: readonly (readonly [Point, number])[] = [
  [[0, 0, 1], 0],
  [[1, 2, 3], 33],
  [[3, -1, 1], 71],
];

/** The tools that cut an opening of a width into the lid at height z, off the middle. */
const cutters: Readonly<Record<string, (width: number, z: number) => Mesh>> = {
  // So many sides that the polygon is narrower than the circle by less than 0.06 % of its diameter.
  round: (width, z) => cylinder(width / 2, 4 * wall, 96, motion([0.1 * width, -0.07 * width, z - 2 * wall])),
  slot: (width, z) => box([-width, -width / 2 + 7, z - 2 * wall], [width, width / 2 + 7, z + 2 * wall]),
  rectangle: (width, z) =>
    box([-width / 2 - 3, -0.75 * width, z - 2 * wall], [width / 2 - 3, 0.75 * width, z + 2 * wall]),
};

function housing(side: number, cutter: Mesh): Mesh {
  const h = side / 2;
  return difference(
    box([-h - wall, -h - wall, -wall], [h + wall, h + wall, side + wall]),
    box([-h, -h, 0], [h, h, side]),
    cutter,
  );
}

/** Vertices moved by up to `by` mm along each axis; mulberry32 with the seed in the title (from memory). */
function shaken({ positions, triangles }: Mesh, by: number, seed: number): Mesh {
  let state = seed;
  const random = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return { positions: positions.map((c) => c + by * (2 * random() - 1)), triangles };
}

/** Each size meets each shape and each turn; each shape meets each turn. */
const cases = [60, 120, 240].flatMap((size, s) =>
  Object.keys(cutters).map((shape, k) => ({ size, shape, turn: (s + k) % 3, noise: 0 })),
);
const noisy = Object.keys(cutters).map((shape, turn) => ({ size: 120, shape, turn, noise: 0.05 }));

test.each([...cases, ...noisy])(
  'ball of $size mm, $shape opening, turn $turn, noise $noise mm (seed 7)',
  ({ size, shape, turn, noise }) => {
    const side = 3.4 * size;
    for (const width of [size + 1, size - 1]) {
      const mesh = housing(side, cutters[shape](width, side));
      const shell = noise > 0 ? shaken(mesh, noise, 7) : mesh;
      const model = movedModel(assemble({ shell }), motion([3, 4, 5], ...turns[turn]));
      const { measure } = asked(model, limbOf(size), {}, size / 12);
      const inside_cm2 = (6 * side * side) / 100;
      expect(measure.openings).toHaveLength(1);
      expect(Math.abs(measure.openings[0].size_mm - width)).toBeLessThan(0.5);
      expect(measure.openings[0].parts).toEqual(['shell']);
      if (width > size) {
        expect(measure.unreached_cm2).toBeLessThan(0.002 * inside_cm2);
        continue;
      }
      expect(measure.places).toHaveLength(1);
      const [place] = measure.places;
      expect(place.because).toBe('narrow');
      expect(place.opening).toBe(measure.openings[0].id);
      expect(Math.abs(place.largest_mm - width)).toBeLessThan(0.5);
      // The lid around the opening is touched from outside through it, the rest is not.
      expect(place.area_cm2).toBeGreaterThan(0.9 * inside_cm2);
      expect(place.area_cm2).toBeLessThan(1.01 * inside_cm2);
    }
  },
  120_000,
);
