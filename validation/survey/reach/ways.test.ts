/**
 * Ways of a ball through channels of square section whose shortest path has a closed form: the ball's centre keeps its
 * radius from the walls, so the taut string runs straight, and along arcs of that radius around inner corners.
 */
import type { Model, Vec3 } from '@coveline/model';
import { expect, test } from 'vitest';
import { assemble, motion } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import { type Mesh, movedModel, type Point } from '../../shapes/mesh.ts';
import { type Corner, prism } from '../../shapes/prism.ts';
import { difference } from '../../shapes/solid.ts';
import { asked, limbOf } from './asked.ts';

const turns: readonly (readonly [Point, number])[] = [
  [[0, 0, 1], 0],
  [[1, 2, 3], 33],
  [[3, -1, 1], 71],
];
const within = 0.05;

/** The way, mm, to a small plate, from the side towards -y of a model that was turned. */
function wayTo(model: Model, part: string, size: number, turn: number): number {
  const by = motion([0, 0, 0], ...turns[turn]);
  const turned = movedModel(model, by);
  const outward: Vec3 = [-by[4], -by[5], -by[6]];
  const { field } = asked(turned, limbOf(size), { access: [{ id: 'front', outward }] }, size / 12);
  const at = turned.parts.findIndex(({ id }) => id === part);
  const before = turned.parts
    .slice(0, at)
    .reduce((sum, { shape }) => sum + turned.shapes[shape].triangles.length / 3, 0);
  // The face of the plate that looks into the channel: the nearest of its reached triangles.
  const ways = [...field.subarray(before, before + 12)].filter((w) => w >= 0);
  return Math.min(...ways);
}

const plate = (at: Point, d: number): Mesh =>
  box([at[0] - d, at[1] - d, at[2] - d], [at[0] + d, at[1] + d, at[2] + d]);

test.each([
  { size: 60, turn: 0 },
  { size: 120, turn: 1 },
  { size: 240, turn: 2 },
])(
  'straight in and around one edge: ball of $size mm, turn $turn',
  ({ size, turn }) => {
    const r = size / 2;
    const a = 1.5 * size;
    const [along, aside] = [4 * size, 5 * size];
    const channel: Corner[] = [
      [0, -1],
      [a, -1],
      [a, along],
      [a + aside, along],
      [a + aside, along + a],
      [0, along + a],
    ];
    const block = difference(
      box([-20, 0, -20], [a + aside + 20, along + a + 20, a + 20]),
      prism(channel, 0, a),
    );
    const d = size / 20;
    const end: Point = [a + aside, along + a / 2, a / 2];
    const straight: Point = [a / 2, along + a, a / 2];
    const model = assemble({ block, end: plate(end, d), straight: plate(straight, d) });
    // Along the wall, around the inner corner by an arc, and on its tangent to the plate.
    const far = Math.hypot(aside - d, a / 2);
    const arc = Math.PI - Math.atan2(a / 2, aside - d) - Math.acos(r / far);
    const expected = along + r * arc + Math.sqrt(far * far - r * r);
    expect(Math.abs(wayTo(model, 'end', size, turn) / expected - 1)).toBeLessThan(within);
    expect(Math.abs(wayTo(model, 'straight', size, turn) / (along + a - d) - 1)).toBeLessThan(within);
  },
  120_000,
);

test.each([
  { size: 60, turn: 1 },
  { size: 120, turn: 2 },
  { size: 240, turn: 0 },
])(
  'a labyrinth of three lanes: ball of $size mm, turn $turn',
  ({ size, turn }) => {
    const r = size / 2;
    const a = 1.4 * size;
    const wall = size / 4;
    const deep = 5 * size;
    const lane = a + wall;
    // Lane 1 goes in, lane 2 comes back, lane 3 goes in again; the walls between leave `a` at their ends.
    const cut = [
      box([0, -1, 0], [a, deep + a, a]),
      box([0, deep, 0], [lane + a, deep + a, a]),
      box([lane, a, 0], [lane + a, deep + a, a]),
      box([lane, a, 0], [2 * lane + a, 2 * a, a]),
      box([2 * lane, a, 0], [2 * lane + a, deep, a]),
    ];
    const block = difference(box([-20, 0, -20], [2 * lane + a + 20, deep + a + 20, a + 20]), ...cut);
    const d = size / 20;
    const model = assemble({ block, end: plate([2 * lane + a / 2, deep, a / 2], d) });
    // Around both corners of the first wall's end, by a tangent across lane 2, around both of the second one's.
    const across = lane - wall;
    const back = deep - 2 * a;
    const between = Math.hypot(across, back);
    const inner = Math.sqrt(between * between - size * size);
    // Turn of the string from square to the lanes to the inner tangent.
    const lean = Math.atan2(back, across) + Math.asin(size / between);
    const last = Math.hypot(a / 2, deep - d - 2 * a);
    const tail = Math.sqrt(last * last - r * r);
    const tailTurn = Math.atan2(deep - d - 2 * a, a / 2) + Math.asin(r / last);
    const expected =
      deep + (r * Math.PI) / 2 + wall + r * lean + inner + r * lean + wall + r * tailTurn + tail;
    expect(Math.abs(wayTo(model, 'end', size, turn) / expected - 1)).toBeLessThan(within);
  },
  120_000,
);

test.each([
  { arm: 300, turn: 0 },
  { arm: 615, turn: 1 },
  { arm: 900, turn: 2 },
])(
  'a pocket deeper than an arm of $arm mm, turn $turn',
  ({ arm, turn }) => {
    const size = 120;
    const side = 3 * size;
    const deep = arm + 300;
    const pocket = difference(
      box([-10, 0, -10], [side + 10, deep + 10, side + 10]),
      box([0, -1, 0], [side, deep, side]),
    );
    const by = motion([0, 0, 0], ...turns[turn]);
    const model = movedModel(assemble({ pocket }), by);
    const outward: Vec3 = [-by[4], -by[5], -by[6]];
    const { measure } = asked(model, limbOf(size, arm), {
      access: [{ id: 'front', outward }],
    });
    const far = measure.places.filter(({ because, way_mm }) => because === 'far' && (way_mm ?? 0) > arm);
    // The ball's centre keeps r from the wall, and its touch reaches 2 r ahead: r (2 - sqrt(3)) more than the depth.
    const depth = arm - (size / 2) * (2 - Math.sqrt(3));
    const beyond_cm2 = (4 * side * (deep - depth) + side * side) / 100;
    const inside = far.reduce((sum, { area_cm2 }) => sum + area_cm2, 0);
    // The outside of the back is far from the front as well, and 20 mm wider.
    const outside_cm2 = (4 * (side + 20) * (deep + 10 - arm) + (side + 20) ** 2) / 100;
    expect(Math.abs(inside / (beyond_cm2 + outside_cm2) - 1)).toBeLessThan(within);
  },
  120_000,
);
