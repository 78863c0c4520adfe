/** Heads and nuts of three sizes: their kind and width, from CAD faces and from noisy triangles, however they are turned. */
import type { Model } from '@coveline/model';
import { type FastenerHead, type SurveyMeasures, survey } from '@coveline/survey';
import { makeBox } from 'replicad';
import { beforeAll, describe, expect, it } from 'vitest';
import { placed } from '../../shapes/mesh.ts';
import {
  capNut,
  crossScrew,
  domedBolt,
  hexagon,
  hexBar,
  hexBlock,
  hexBolt,
  hexCup,
  hexNut,
  hexSleeve,
  knob,
  placedAt,
  pocketPlate,
  read,
  rod,
  type Size,
  setScrew,
  sizes,
  slotScrew,
  socketScrew,
  squareSocket,
  startDrawing,
  steppedPin,
  trianglesOnly,
} from './drawn.ts';

beforeAll(startDrawing);

type Drawn = ReturnType<typeof hexBolt>;
const measured = async (model: Model): Promise<NonNullable<SurveyMeasures['fasteners']>> =>
  (await survey(model, { measures: ['fasteners'] })).result.measures.fasteners!;

const orientations = [
  {},
  { turn: 23, tiltX: 90, move: [100, -40, 7] as const },
  { turn: 71, tiltX: 31, tiltY: -48, move: [-900, 350, 1200] as const },
];

const kinds: readonly (readonly [
  FastenerHead['kind'],
  (d: Size) => Drawn,
  (d: Size) => { acrossFlats_mm?: number; diameter_mm?: number },
])[] = [
  ['hexagon', (d) => hexBolt(d, 4 * d), (d) => ({ acrossFlats_mm: sizes[d].flats })],
  ['dome', (d) => domedBolt(d, 3 * d), (d) => ({ acrossFlats_mm: sizes[d].flats })],
  ['nut', hexNut, (d) => ({ acrossFlats_mm: sizes[d].flats })],
  ['domedNut', capNut, (d) => ({ acrossFlats_mm: sizes[d].flats })],
  [
    'hexagonSocket',
    (d) => socketScrew(d, 3 * d),
    (d) => ({ acrossFlats_mm: sizes[d].socket, diameter_mm: sizes[d].socketHead }),
  ],
  ['hexagonSocket', (d) => setScrew(d, 2 * d), (d) => ({ acrossFlats_mm: 0.5 * d, diameter_mm: d })],
  ['slot', (d) => slotScrew(d, 3 * d), (d) => ({ diameter_mm: sizes[d].socketHead })],
  ['crossRecess', (d) => crossScrew(d, 3 * d), (d) => ({ diameter_mm: sizes[d].socketHead })],
];

describe.each([4, 8, 20] as const)('M%d', (d) => {
  it.each(kinds)('%s', async (kind, make, expected) => {
    const drawn = await read([{ shape: make(d), name: 'part' }]);
    for (const turn of orientations) {
      const cad = placedAt(drawn, placed(turn));
      for (const [from, model] of [
        ['cad', cad],
        ['triangles', trianglesOnly(cad, 0, 1)],
        ['triangles', trianglesOnly(cad, 0.01, 7)],
      ] as const) {
        const { heads } = await measured(model);
        expect(heads.map((h) => [h.kind, h.from])).toEqual([[kind, from]]);
        // Exact from CAD faces; vertices off by 0.01 mm move a flat by no more than that.
        const within = from === 'cad' ? 1e-6 : 0.02;
        for (const [key, value] of Object.entries(expected(d))) {
          const told = heads[0][key as 'acrossFlats_mm'];
          expect(Math.abs(told! - value), `${key} ${told}`).toBeLessThan(
            key === 'diameter_mm' ? 0.03 : within,
          );
        }
      }
    }
  });
});

/** Not fasteners, by a rule that docs/methods.md states. */
const lookalikes: readonly (readonly [string, () => Drawn])[] = [
  ['hexagonal standoff, twice as long as wide', () => hexBar(10, 20)],
  ['hexagonal bar of a frame', () => hexBar(27, 600)],
  ['standoff with a stud', () => hexBar(10, 20).fuse(rod(5, 8, -8))],
  ['hexagonal spacer with a hole', () => hexBar(10, 20).cut(rod(5.5, 20))],
  ['hexagonal container', () => hexCup(80, 60)],
  ['small hexagonal cup', () => hexCup(20, 12)],
  ['hexagonal sleeve with a thin wall', () => hexSleeve(30, 20)],
  ['plain hexagonal block, alone', () => hexBlock(20, 10)],
  ['stepped pin', () => steppedPin(8)],
  ['knob with twelve flats on a shaft', () => knob(30)],
  ['hexagonal pocket in a plate', () => pocketPlate(13)],
  ['hexagonal pocket in a disc', () => rod(45, 30).cut(hexagon(13, 6, 24))],
  [
    'hexagonal block on half a round',
    () => hexBlock(20, 10).fuse(rod(10, 20, -20).cut(makeBox([0, -9, -21], [9, 9, 0]))),
  ],
  ['square socket', () => squareSocket(8)],
];

it.each(lookalikes)('%s is no fastener', async (_name, make) => {
  const drawn = await read([{ shape: make(), name: 'part' }]);
  for (const model of [drawn, trianglesOnly(drawn, 0, 1), trianglesOnly(drawn, 0.01, 7)]) {
    expect(await measured(model)).toEqual({ heads: [], threads: [] });
  }
});

it('a head whose top is barely crowned is not domed', async () => {
  const { heads } = await measured(await read([{ shape: domedBolt(20, 60, 0.1), name: 'part' }]));
  expect(heads.map((h) => h.kind)).toEqual(['hexagon']);
});

it('a nut with one edge cut off keeps its axis', async () => {
  const corner = makeBox([-10, 6.7, -1], [10, 20, 20]);
  const { heads } = await measured(await read([{ shape: hexNut(8).cut(corner), name: 'part' }]));
  expect(heads.map((h) => h.kind)).toEqual(['nut']);
  for (const k of [0, 1]) expect(heads[0].at_mm[k]).toBeCloseTo(0, 6);
});

it('a hexagon that stands on a plate of its own part is a head', async () => {
  const plate = hexBlock(80, 5).fuse(hexBlock(13, 5.3).translate([0, 0, 5]));
  const { heads } = await measured(await read([{ shape: plate, name: 'plate' }]));
  expect(heads.map((h) => [h.kind, h.acrossFlats_mm])).toEqual([['hexagon', expect.closeTo(13, 6)]]);
});

it('four plain hexagonal blocks of one shape are heads by their number, and say so', async () => {
  const drawn = await read([{ shape: hexBlock(13, 5), name: 'part' }]);
  const [part] = drawn.parts;
  const four = {
    ...drawn,
    parts: [0, 1, 2, 3].map((k) => ({
      ...part,
      id: `part#${k}`,
      placement: placed({ move: [50 * k, 0, 0] }),
    })),
  };
  const { heads } = await measured(four);
  expect(heads.map((h) => h.from)).toEqual(['repeated', 'repeated', 'repeated', 'repeated']);
  expect(heads[0].caveats?.join(' ')).toContain('4 parts');
});

it('paints heads with 1 and free threads with 2, and draws both', async () => {
  const drawn = await read([{ shape: hexBolt(8, 30), name: 'part' }]);
  const { result, fields, drawings } = await survey(drawn, { measures: ['fasteners'] });
  const { heads, threads } = result.measures.fasteners!;
  for (const { id } of [...heads, ...threads]) expect(drawings.get(id)?.lines?.length).toBeGreaterThan(1);
  const [{ positions, triangles }] = drawn.shapes;
  for (const [t, value] of fields.fasteners!.entries()) {
    const heights = [0, 1, 2].map((c) => positions[triangles[t * 3 + c] * 3 + 2]);
    expect(value).toBe(Math.max(...heights) > 0.01 || Math.min(...heights) > -0.01 ? 1 : 2);
  }
});

it('a stepped body is a screw without a drive by its name only, however many there are', async () => {
  const drawn = await read([{ shape: steppedPin(8), name: 'pin' }]);
  const [pin] = drawn.parts;
  const six = [0, 1, 2, 3, 4, 5].map((k) => ({
    ...pin,
    id: `pin#${k}`,
    placement: placed({ move: [30 * k, 0, 0] }),
  }));
  expect(await measured({ ...drawn, parts: six })).toEqual({ heads: [], threads: [] });
  const { heads, threads } = await measured({ ...drawn, parts: [{ ...pin, name: 'screw M8x24' }] });
  expect(heads.map((h) => [h.kind, h.from, h.diameter_mm])).toEqual([
    ['cylinder', 'name', expect.closeTo(12.8, 6)],
  ]);
  expect(threads.map((t) => [t.from, t.diameter_mm])).toEqual([['name', expect.closeTo(8, 6)]]);
  expect(threads[0].exposed_mm).toBeCloseTo(24 - 4.8, 1);
});

it('a name is a hint only: it makes a thing a fastener of unknown kind', async () => {
  const { heads } = await measured(await read([{ shape: hexBar(10, 40), name: 'screw M8x24' }]));
  expect(heads.map((h) => [h.kind, h.from])).toEqual([['unknown', 'name']]);
});
