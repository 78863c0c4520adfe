/** Blind bores as CAD faces tell them: depth and mouth are those of the drawing. */
import type { CadFace, Model } from '@coveline/model';
import { type BlindChannel, survey } from '@coveline/survey';
import { expect, test } from 'vitest';
import { box } from '../../shapes/box.ts';
import { about, type Mesh, modelOf, movedModel, multiply, placed } from '../../shapes/mesh.ts';
import { revolve } from '../../shapes/revolve.ts';

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

async function blindIn(model: Model): Promise<readonly BlindChannel[]> {
  const { result } = await survey(model, { measures: ['hollows'] });
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

test('without CAD faces a note says that blind channels were not looked for', async () => {
  const { result } = await survey(modelOf([{ id: 'bar', mesh: bar(flatBottom).mesh }]), {
    measures: ['hollows'],
  });
  expect(result.measures.hollows?.blind).toEqual([]);
  expect(result.notes.join()).toContain('Blind channels were not looked for');
});
