/** Dirty models, each with one fault made on purpose; and clean ones that must not be accused. */
import { type FaultKind, healthOf, survey } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { assemble, insideOut, motion, together } from '../../shapes/assemble.ts';
import { box, hollowBox, tray } from '../../shapes/box.ts';
import { type Mesh, meshOf, movedModel, transformed } from '../../shapes/mesh.ts';

const cube = (x: number, size = 100) => box([x, 0, 0], [x + size, size, size]);
const without = ({ positions, triangles }: Mesh, last: number): Mesh => ({
  positions,
  triangles: triangles.slice(0, triangles.length - 3 * last),
});
/** Its last triangle seen from inside. */
const oneTurned = ({ positions, triangles }: Mesh): Mesh => {
  const t = triangles.slice();
  const i = t.length - 3;
  [t[i + 1], t[i + 2]] = [t[i + 2], t[i + 1]];
  return { positions, triangles: t };
};
/** A square whose one side meets two triangles that share a corner in its middle. */
const withTJunction = meshOf(
  [
    [0, 0, 0],
    [100, 0, 0],
    [100, 100, 0],
    [0, 100, 0],
    [50, 0, 0],
    [0, -100, 0],
    [100, -100, 0],
  ],
  [
    [0, 1, 2],
    [0, 2, 3],
    [0, 5, 4],
    [5, 6, 4],
    [6, 1, 4],
  ],
);

const dirty: readonly (readonly [
  FaultKind,
  Readonly<Record<string, Mesh>>,
  parts: readonly string[],
  count: number,
])[] = [
  ['openShell', { good: cube(0), open: without(cube(200), 2) }, ['open'], 4],
  ['invertedShell', { good: cube(0), inside: insideOut(cube(200)) }, ['inside'], 1],
  ['mixedWinding', { good: cube(0), mixed: oneTurned(cube(200)) }, ['mixed'], 1],
  ['tJunction', { sheet: withTJunction }, ['sheet'], 1],
  ['overlap', { a: cube(0), b: transformed(cube(60), motion([0, 30, 40])) }, ['a', 'b'], 1],
  [
    'selfIntersection',
    { twice: together(cube(0), transformed(cube(60), motion([0, 30, 40]))) },
    ['twice'],
    1,
  ],
  ['oddSize', { a: cube(0, 10), b: cube(20, 10), c: box([0, 0, 50], [2540, 2540, 2590]) }, ['c'], 1],
];

describe.each(dirty)('%s', (kind, meshes, parts, count) => {
  test.each([
    [[0, 0, 1], 0],
    [[0, 0, 1], 37],
    [[1, 2, 3], 64],
  ] as const)('is found, turned about %j by %d degrees, and nothing else is accused of it', (axis, angle) => {
    const model = movedModel(assemble(meshes), motion([0, 0, 0], axis, angle));
    const found = healthOf(model, {}).faults.find((f) => f.kind === kind);
    expect(found).toMatchObject({ parts, count });
    expect(found!.text).toMatch(/^["A-Z0-9].*\.$/);
  });
});

test('the same shape in the same place is told as a duplicate', () => {
  const apart = assemble({ one: cube(0), two: cube(200), three: cube(300) });
  const model = { ...apart, parts: apart.parts.map((p) => (p.id === 'two' ? { ...p, shape: 0 } : p)) };
  expect(healthOf(model, {}).faults.find((f) => f.kind === 'duplicatePart')?.parts).toEqual(['two']);
});

test.each<readonly [string, Readonly<Record<string, Mesh>>]>([
  ['separate boxes', { a: cube(0), b: cube(200) }],
  ['boxes that touch', { a: cube(0), b: cube(100) }],
  ['a box on a tray', { tray: tray(200, 100, 50, 2), box: box([10, 10, 0], [40, 40, 30]) }],
  ['a hollow box', { hollow: hollowBox(100, 80, 60, 3) }],
  ['boxes that share an edge', { a: cube(0), b: box([100, 100, 0], [200, 200, 100]) }],
])('%s: no fault', (_, meshes) => {
  for (const angle of [0, 12.3, 45])
    expect(healthOf(movedModel(assemble(meshes), motion([0, 0, 0], [3, 1, 2], angle)), {}).faults).toEqual(
      [],
    );
});

test('a survey carries the health of its model first, and stops in it when it is told to', async () => {
  const model = assemble({ good: cube(0), open: without(cube(200), 2) });
  const { result } = await survey(model, { measures: ['flatFaces'] });
  expect(result.health).toMatchObject({ parts: 2, triangles: 22, closedParts: 1 });
  await expect(survey(model, {}, { signal: { aborted: true } })).rejects.toThrow('health of the model');
});
