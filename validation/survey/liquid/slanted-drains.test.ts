/**
 * Drains that lean: 1 to 10 mm wide, 10 to 60 mm long, at 0 to 90 degrees to the vertical, out of a basin's floor or its
 * wall. All of them end below the floor, so the basin is dry (elementary). The columns know the drain
 * from its CAD face; the exact method from the triangles alone.
 */
import type { CadTopology, Model } from '@coveline/model';
import { loadManifoldUnion, survey } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { box } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { about, type Mesh, modelOf, movedModel, type Point, placed } from '../../shapes/mesh.ts';
import { difference } from '../../shapes/solid.ts';
import { poolsIn } from './pools-in.ts';

const depth = 40;
const [width, breadth] = [160, 90];
/** 576 mL when it is full. */
const full_mL = (width * breadth * depth) / 1000;

interface Drain {
  readonly origin: readonly [number, number, number];
  readonly direction: readonly [number, number, number];
}

/**
 * A basin in a block, with a drain from the middle of its floor, `lean` degrees off the vertical and `length` mm long in
 * the block; at 90 degrees it goes out through the wall, its lowest line 0.05 mm below the floor.
 */
function basin(diameter: number, lean: number, length: number): { mesh: Mesh; drain: Drain } {
  const a = (lean * Math.PI) / 180;
  const sideways = lean === 90;
  const floor = sideways ? 5 : length * Math.cos(a);
  const wall = Math.max(5, sideways ? length : 0, length * Math.sin(a) + 20 - width / 2);
  const block = difference(
    box([-width / 2 - 5, -breadth / 2 - 5, -floor], [width / 2 + wall, breadth / 2 + 5, depth]),
    box([-width / 2, -breadth / 2, 0], [width / 2, breadth / 2, depth + 1]),
  );
  const origin = sideways ? ([width / 2, 0, diameter / 2 - 0.05] as const) : ([0, 0, 0] as const);
  const direction = [Math.sin(a), 0, -Math.cos(a)] as const;
  // The tool starts a little before the mouth and ends well past the outlet.
  const before = diameter * Math.tan(Math.min(a, 1.1)) + 1;
  const move = [0, 1, 2].map((k) => origin[k] - before * direction[k]) as unknown as Point;
  const tool = cylinder(diameter / 2, before + length + 60, 32, placed({ tiltY: 180 - lean, move }));
  return { mesh: difference(block, tool), drain: { origin, direction } };
}

/** The wall of the drain as a CAD face, told by the distance of its corners from the axis. */
function withFace(model: Model, diameter: number, { origin, direction }: Drain): Model {
  const [shape, ...others] = model.shapes;
  const off = (v: number): number => {
    const d = origin.map((o, k) => shape.positions[v * 3 + k] - o);
    const along = d.reduce((s, c, k) => s + c * direction[k], 0);
    return Math.hypot(...d.map((c, k) => c - along * direction[k]));
  };
  // Corners may lie on a facet between two of its edges: the sagitta of 32 segments inside the circle.
  const slack = 1e-3 + (diameter / 2) * (1 - Math.cos(Math.PI / 32));
  const faceOfTriangle = Uint32Array.from({ length: shape.triangles.length / 3 }, (_, t) =>
    [0, 1, 2].every((c) => Math.abs(off(shape.triangles[t * 3 + c]) - diameter / 2) < slack) ? 1 : 0,
  );
  const cad: CadTopology = {
    faceOfTriangle,
    faces: [
      { kind: 'plane' },
      { kind: 'cylinder', radius_mm: diameter / 2, axis: { origin, direction }, hollow: true },
    ],
    edges: [],
  };
  return { ...model, shapes: [{ ...shape, cad }, ...others] };
}

/** Parts far off keep the columns 2 mm apart. */
const far = { id: 'far', mesh: box([900, 900, 0], [901, 901, 1]) };

describe.each([0, 30, 60, 90])('at %s degrees to the vertical', (lean) => {
  test.each([1, 2, 3, 5, 10])('%s mm wide, known from CAD: the columns drain', async (diameter) => {
    for (const length of [10, 30, 60]) {
      const { mesh, drain } = basin(diameter, lean, length);
      const model = withFace(modelOf([{ id: 'basin', mesh }, far]), diameter, drain);
      for (const turn of [0, 40]) {
        const { total_mL } = await poolsIn(movedModel(model, about(2, turn)));
        expect(total_mL).toBeLessThan(0.002 * full_mL);
      }
    }
  });

  test.each([1, 2, 3, 5, 10])('%s mm wide, triangles only: the exact method drains', async (diameter) => {
    const { mesh } = basin(diameter, lean, 60);
    const { result } = await survey(movedModel(modelOf([{ id: 'basin', mesh }, far]), about(2, 25)), {
      measures: ['standingLiquid'],
      exact: loadManifoldUnion,
    });
    expect(result.measures.standingLiquid?.total_mL).toBeLessThan(0.002 * full_mL);
  });
});

test('a drain that is plugged by another part holds, in both methods', async () => {
  const { mesh, drain } = basin(3, 30, 40);
  const plug = box([10, -10, -60], [45, 10, -40 * Math.cos(Math.PI / 6)]);
  const model = withFace(modelOf([{ id: 'basin', mesh }, { id: 'plug', mesh: plug }, far]), 3, drain);
  expect(Math.abs((await poolsIn(model)).total_mL / full_mL - 1)).toBeLessThan(0.01);
  const { result } = await survey(model, { measures: ['standingLiquid'], exact: loadManifoldUnion });
  expect(Math.abs((result.measures.standingLiquid?.total_mL ?? 0) / full_mL - 1)).toBeLessThan(0.01);
});
