/** Blind bores as CAD faces tell them: depth and mouth are those of the drawing. */
import type { CadFace, Model } from '@coveline/model';
import { type BlindChannel, type SurveySettings, survey } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { together } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import { about, type Mesh, modelOf, movedModel, multiply, placed } from '../../shapes/mesh.ts';
import { revolve } from '../../shapes/revolve.ts';
import { bored, modelOfBodies, orientations, rod, tubes } from './drilled.ts';

/** A round bar about z whose inside is told by a profile, with its cylinders as CAD faces. */
function bar(profile: readonly (readonly [number, number])[], segments = 48): { mesh: Mesh; model: Model } {
  const mesh = revolve(profile, segments);
  const faces: CadFace[] = profile.map(([r, z], k): CadFace => {
    const [r2, z2] = profile[(k + 1) % profile.length];
    if (r !== r2 || r === 0) return { kind: r === r2 ? 'cone' : z === z2 ? 'plane' : 'cone' };
    return {
      kind: 'cylinder',
      radius_mm: r,
      axis: { origin: [0, 0, 3], direction: [0, 0, 1] },
      // The profile runs counter-clockwise: a side that goes down has the air towards the axis.
      hollow: z2 < z,
    };
  });
  const faceOfTriangle: number[] = [];
  for (let k = 0; k < profile.length; k++) {
    const [r, r2] = [profile[k][0], profile[(k + 1) % profile.length][0]];
    for (let s = 0; s < segments; s++) {
      if (r > 0) faceOfTriangle.push(k);
      if (r2 > 0) faceOfTriangle.push(k);
    }
  }
  const plain = modelOf([{ id: 'bar', mesh }]);
  const cad = { faceOfTriangle: Uint32Array.from(faceOfTriangle), faces, edges: [] };
  return { mesh, model: { ...plain, shapes: [{ ...plain.shapes[0], cad }] } };
}

async function blindIn(
  model: Model,
  settings: Partial<SurveySettings> = {},
): Promise<readonly BlindChannel[]> {
  const { result } = await survey(model, { measures: ['hollows'], settings });
  return result.measures.hollows?.blind ?? [];
}

const flatBottom = [
  [0, 0],
  [20, 0],
  [20, 50],
  [4, 50],
  [4, 18],
  [0, 18],
] as const;

test.each([
  ['upright', about(2, 0)],
  ['lying', about(0, 90)],
  ['askew', multiply(about(2, 40), placed({ tiltX: 25, tiltY: 50, move: [100, -20, 30] }))],
])('a bore of 8 x 32 mm with a flat bottom, %s', async (_name, placement) => {
  const [channel, ...more] = await blindIn(movedModel(bar(flatBottom).model, placement));
  expect(more).toEqual([]);
  expect(channel.depth_mm).toBeCloseTo(32, 6);
  expect(channel.mouth_mm).toBe(8);
  expect(channel.ratio).toBeCloseTo(4, 6);
  expect(channel.parts).toEqual(['bar']);
});

test('a drill point counts to the depth', async () => {
  const tip = 4 / Math.tan((59 * Math.PI) / 180);
  const [channel] = await blindIn(bar([...flatBottom.slice(0, 5), [0, 18 - tip]]).model);
  expect(channel.depth_mm).toBeCloseTo(32 + tip, 1);
});

test('a stepped bore is one channel from its wide mouth', async () => {
  const stepped = [
    [0, 0],
    [20, 0],
    [20, 50],
    [8, 50],
    [8, 40],
    [4, 40],
    [4, 10],
    [0, 10],
  ] as const;
  const [channel, ...more] = await blindIn(bar(stepped).model);
  expect(more).toEqual([]);
  expect(channel.mouth_mm).toBe(16);
  expect(channel.depth_mm).toBeCloseTo(40, 6);
});

const through = [
  [4, 0],
  [20, 0],
  [20, 50],
  [4, 50],
] as const;

test('a bore right through is none, unless a plate lies against one end', async () => {
  const { model } = bar(through);
  expect(await blindIn(model)).toEqual([]);
  const plate = modelOf([{ id: 'plate', mesh: box([-30, -30, -5], [30, 30, 0]) }]);
  const joined: Model = {
    ...model,
    shapes: [...model.shapes, ...plate.shapes],
    parts: [...model.parts, { ...plate.parts[0], shape: 1 }],
  };
  const [channel, ...more] = await blindIn(joined);
  expect(more).toEqual([]);
  expect(channel.depth_mm).toBeCloseTo(50, 6);
  expect(channel.parts).toEqual(['bar', 'plate']);
});

test('a bore with a bolt in it is filled', async () => {
  const { model } = bar(flatBottom);
  const bolt = modelOf([
    {
      id: 'bolt',
      mesh: revolve(
        [
          [0, 18],
          [4, 18],
          [4, 55],
          [0, 55],
        ],
        48,
      ),
    },
  ]);
  const joined: Model = {
    ...model,
    shapes: [...model.shapes, ...bolt.shapes],
    parts: [...model.parts, { ...bolt.parts[0], shape: 1 }],
  };
  expect(await blindIn(joined)).toEqual([]);
});

test('a shallow recess is below the least ratio', async () => {
  expect(await blindIn(bar([...flatBottom.slice(0, 4), [4, 47], [0, 47]]).model)).toEqual([]);
});

test.each([8, 12, 48])('from triangles alone, in %i segments', async (segments) => {
  const [channel, ...more] = await blindIn(modelOf([{ id: 'bar', mesh: bar(flatBottom, segments).mesh }]));
  expect(more).toEqual([]);
  expect(channel.from).toBe('triangles');
  expect(channel.depth_mm).toBeCloseTo(32, 6);
  expect(channel.mouth_mm).toBeCloseTo(8, 6);
});

test('a counterbored hole tells the bore behind its mouth, which is the worse one', async () => {
  const counterbored = [
    [0, 0],
    [20, 0],
    [20, 50],
    [8, 50],
    [8, 42],
    [4, 42],
    [4, 20],
    [0, 20],
  ] as const;
  const [channel] = await blindIn(bar(counterbored).model);
  // 30 mm behind a mouth of 16 mm; 22 mm behind the shoulder at a bore of 8 mm.
  expect(channel.ratio).toBeCloseTo(1.875, 6);
  expect(channel.inner?.bore_mm).toBe(8);
  expect(channel.inner?.ratio).toBeCloseTo(2.75, 6);
  expect(channel.inner?.depth_mm).toBeCloseTo(22, 6);
});

test('holes in both walls of a tube are no channel from one wall to the other', async () => {
  const plate = (id: string, low: number) =>
    bored(id, box([-30, -30, low], [30, 30, low + 2]), [
      { from: [0, 0, low - 1], direction: [0, 0, 1], length: 4, radius: 4 },
    ]);
  const sheets = modelOfBodies([plate('upper', 60), plate('lower', 20)]);
  const oneBody: Model = {
    ...sheets,
    shapes: [
      {
        ...together(...sheets.shapes),
        hash: 'both',
        cad: {
          faces: sheets.shapes[0].cad!.faces,
          edges: [],
          faceOfTriangle: Uint32Array.from(sheets.shapes.flatMap(({ cad }) => [...cad!.faceOfTriangle])),
        },
      },
    ],
    parts: [sheets.parts[0]],
  };
  expect(await blindIn(oneBody)).toEqual([]);
});

describe.each([2.5, 8, 25])(
  'bores of radius %s mm, all the depths, from CAD faces, triangles and shaken triangles',
  (radius) => {
    test.each([0.5, 1, 1.5, 2, 3, 6])('%s times as deep as wide', async (ratio) => {
      const depth = ratio * 2 * radius;
      const top = depth + radius;
      const block = bored('block', box([-3 * radius, -2.5 * radius, 0], [3 * radius, 2.5 * radius, top]), [
        { from: [0, 0, radius], direction: [0, 0, 1], length: depth + 1, radius },
      ]);
      for (const placement of orientations) {
        for (const drawn of [{}, { cad: false }, { cad: false, noise_mm: 0.02 }]) {
          const found = await blindIn(modelOfBodies([block], { ...drawn, placement }), {
            leastBlindRatio: 0.4,
          });
          const tolerance = drawn.cad === false ? 0.05 : 1e-4;
          expect(found).toHaveLength(1);
          expect(Math.abs(found[0].ratio / ratio - 1)).toBeLessThan(tolerance);
          expect(Math.abs(found[0].mouth_mm / (2 * radius) - 1)).toBeLessThan(tolerance);
        }
      }
    });
  },
);

test.each([60, 110])('a spout that ends %s mm over the floor of a jar is no channel into it', async (end) => {
  const spout = tubes('spout', [{ from: [0, 0, end], direction: [0, 0, 1], length: 100, radius: 5 }], 1.5);
  const jar = bored('jar', rod({ from: [0, 0, 0], direction: [0, 0, 1], length: 80, radius: 30 }), [
    { from: [0, 0, 3], direction: [0, 0, 1], length: 80, radius: 27 },
  ]);
  const found = await blindIn(modelOfBodies([spout, jar]), { leastBlindRatio: 0.5, pitch_mm: 4 });
  expect(found.map(({ parts, mouth_mm }) => [parts.join(), mouth_mm])).toEqual([['jar', 54]]);
});
