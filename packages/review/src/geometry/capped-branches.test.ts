import type { CadFace, Model, Shape, Vec3 } from '@coveline/model';
import { expect, test } from 'vitest';
import { type BoxPart, boxModel, identity } from './box-model.fixture.ts';
import { cappedBranches } from './capped-branches.ts';

const cylinder = (direction: Vec3, radius_mm: number): CadFace => ({
  kind: 'cylinder',
  radius_mm,
  hollow: true,
  axis: { origin: [0, 0, 0], direction },
});

/** Bores by one triangle each that reaches from end to end: a main of 50 mm along x, a branch of 26 mm up from its wall. */
const tee: Shape = {
  positions: Float64Array.of(-100, 25, 0, 100, 25, 0, -100, 25, 1, 13, 0, 22, 13, 0, 50, 13, 1, 22),
  triangles: Uint32Array.of(0, 1, 2, 3, 4, 5),
  hash: 'tee',
  cad: {
    faceOfTriangle: Uint32Array.of(0, 1),
    faces: [cylinder([1, 0, 0], 25), cylinder([0, 0, 1], 13)],
    edges: [],
  },
};

function withTee(...others: readonly BoxPart[]): Model {
  const rest = boxModel(others);
  const part = { id: 'tee', name: 'tee', assembly: [], shape: rest.shapes.length, placement: identity };
  return { ...rest, shapes: [...rest.shapes, tee], parts: [...rest.parts, part] };
}
const isLine = (model: Model) => (p: number) => model.parts[p].name === 'tee';
const found = (model: Model) => cappedBranches(model, isLine(model));

test('a cap 60 mm from the axis: 2.31 bores from the axis, 1.35 from the wall, as worked by hand', () => {
  const model = withTee({ name: 'cap', low: [-20, -20, 60], high: [20, 20, 70] });
  const [branch, ...others] = found(model);
  expect(others).toEqual([]);
  expect(branch).toMatchObject({ tee: 1, cap: 0, mainBore_mm: 50, branchBore_mm: 26 });
  expect(branch.fromAxis_mm).toBeCloseTo(60, 9);
  expect(branch.fromAxis_mm / branch.branchBore_mm).toBeCloseTo(2.31, 2);
  expect((branch.fromAxis_mm - branch.mainBore_mm / 2) / branch.branchBore_mm).toBeCloseTo(1.35, 2);
});

test('a branch that is open, or runs on beyond ten bores, is no dead end', () => {
  expect(found(withTee())).toEqual([]);
  expect(found(withTee({ name: 'far', low: [-20, -20, 400], high: [20, 20, 410] }))).toEqual([]);
});

test('a wall that stands askew, as in an elbow, is no cap', () => {
  const model = withTee({ name: 'bend', low: [-20, -20, 60], high: [20, 20, 61] });
  const c = Math.SQRT1_2;
  // Turned by 45 degrees about y, through the point where the branch would meet it.
  const turned = Float64Array.of(c, 0, -c, 0, 0, 1, 0, 0, c, 0, c, 0, -60 * c, 0, 60 - 60 * c, 1);
  const bent: Model = { ...model, parts: [{ ...model.parts[0], placement: turned }, model.parts[1]] };
  expect(found(bent)).toEqual([]);
});
