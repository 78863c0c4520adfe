/** Narrow gaps and joints against closed forms. All values follow from the drawing. */
import type { CadFace, Model } from '@coveline/model';
import { defaultSettings, measureNarrowGaps } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { assemble, motion } from '../shapes/assemble.ts';
import { box } from '../shapes/box.ts';
import { cylinder } from '../shapes/cylinder.ts';
import { type Mesh, movedModel, scaled } from '../shapes/mesh.ts';
import { prism } from '../shapes/prism.ts';
import { arc, revolve } from '../shapes/revolve.ts';
import { difference } from '../shapes/solid.ts';

const gaps = (model: Model) => measureNarrowGaps(model, defaultSettings).measure;
const within = (value: number, exact: number, share: number) =>
  expect(Math.abs(value / exact - 1), `${value} for ${exact}`).toBeLessThan(share);

describe('gaps', () => {
  test.each([0.05, 0.2, 0.5, 1, 2, 2.9])('two plates %s mm apart', (w) => {
    const plates = { low: box([0, 0, 0], [120, 80, 10]), high: box([0, 0, 10 + w], [120, 80, 20 + w]) };
    const { places, joints } = gaps(movedModel(assemble(plates), motion([5, 6, 7], [1, 2, 3], 35)));
    expect(joints).toEqual([]);
    expect(places.length).toBe(1);
    const [g] = places;
    expect(g.parts).toEqual(['high', 'low']);
    within(g.width_mm, w, 1e-6);
    within(g.widest_mm, w, 1e-6);
    within(g.depth_mm, 40, 0.02);
    within(g.mouth_mm, 400, 0.005);
    within(g.area_cm2, 96, 0.001);
    expect(g.caveats).toBeUndefined();
  });

  test('a small plate over a large one, not aligned with anything: the border is found across the large one', () => {
    const m = movedModel(
      assemble({ small: box([-25, -20, 0.7], [25, 20, 9]) }),
      motion([90, 80, 0], [0, 0, 1], 23),
    );
    const base = assemble({ base: box([0, 0, -5], [200, 200, 0]) });
    const model: Model = {
      ...base,
      shapes: [...base.shapes, ...m.shapes],
      parts: [...base.parts, { ...m.parts[0], shape: 1 }],
    };
    const { places } = gaps(model);
    expect(places.length).toBe(1);
    within(places[0].width_mm, 0.7, 1e-6);
    within(places[0].depth_mm, 20, 0.02);
    within(places[0].mouth_mm, 180, 0.01);
    within(places[0].area_cm2, 20, 0.005);
  });

  test('plates 3 mm apart are not below a limit of 3 mm', () => {
    const plates = { low: box([0, 0, 0], [120, 80, 10]), high: box([0, 0, 13], [120, 80, 20]) };
    expect(gaps(assemble(plates)).places).toEqual([]);
  });

  test.each([
    [0.4, 3],
    [1, 1],
    [2, 8],
    [2.5, 30],
  ])('a slot %s mm wide and %s mm deep in one part', (w, d) => {
    const outline = [
      [0, 0],
      [60, 0],
      [60, 40],
      [30 + w / 2, 40],
      [30 + w / 2, 40 - d],
      [30 - w / 2, 40 - d],
      [30 - w / 2, 40],
      [0, 40],
    ] as const;
    const { places } = gaps(assemble({ block: prism(outline, 0, 150) }));
    expect(places.length).toBe(1);
    const [g] = places;
    expect(g.parts).toEqual(['block']);
    within(g.width_mm, w, 1e-4);
    within(g.depth_mm, d, 0.02);
    within(g.mouth_mm, 150 + 2 * d, 0.01);
    within(g.area_cm2, (150 * d) / 100, 0.005);
  });

  test('a slot with a round bottom reaches down to it', () => {
    const floor = Array.from({ length: 13 }, (_, i): [number, number] => {
      const a = ((360 - (180 * i) / 12) * Math.PI) / 180;
      return [30 + Math.cos(a), 31 + Math.sin(a)];
    });
    const outline = [[0, 0], [60, 0], [60, 40], [31, 40], ...floor.slice(0), [29, 40], [0, 40]] as [
      number,
      number,
    ][];
    const { places } = gaps(assemble({ block: prism(outline, 0, 150) }));
    expect(places.length).toBe(1);
    within(places[0].width_mm, 2, 0.02);
    // 10 mm straight down; the way follows the wall, which curves away from the middle by up to half the width.
    expect(places[0].depth_mm).toBeGreaterThan(9.9);
    expect(places[0].depth_mm).toBeLessThan(11.3);
  });

  test('an O-ring groove', () => {
    const profile = [
      [10, 0],
      [40, 0],
      [40, 12],
      [24.6, 12],
      [24.6, 10.1],
      [22, 10.1],
      [22, 12],
      [10, 12],
    ] as const;
    const { places } = gaps(assemble({ flange: revolve(profile, 128) }));
    expect(places.length).toBe(1);
    const [g] = places;
    within(g.width_mm, 2.6, 0.005);
    within(g.depth_mm, 1.9, 0.02);
    within(g.mouth_mm, 2 * Math.PI * 23.3, 0.01);
    within(g.area_cm2, (2 * Math.PI * 23.3 * 1.9) / 100, 0.01);
  });

  test('a bolted plate: the gap under it, and the clearance around the bolt', () => {
    const hole = (r: number, z0: number, z1: number) => cylinder(r, z1 - z0, 128, motion([0, 0, z0]));
    const plate = difference(box([-40, -40, 0.3], [40, 40, 8.3]), hole(4.2, -1, 9));
    const model = assemble({
      base: box([-60, -60, -20], [60, 60, 0]),
      plate,
      bolt: hole(4, 0, 30),
    });
    const { places, joints } = gaps(model);
    const under = places.find((g) => g.parts.join() === 'base,plate');
    within(under?.width_mm ?? 0, 0.3, 1e-4);
    within(under?.area_cm2 ?? 0, (80 * 80 - Math.PI * 4.2 ** 2) / 100, 0.01);
    const around = places.find((g) => g.parts.join() === 'bolt,plate');
    // Facets of shaft and bore are aligned here, so the width is that of the polygons.
    within(around?.width_mm ?? 0, 0.2, 0.01);
    within(around?.depth_mm ?? 0, 8, 0.05);
    within(around?.area_cm2 ?? 0, (2 * Math.PI * 4.1 * 8) / 100, 0.03);
    // The bolt stands on the base.
    expect(joints.map((j) => j.parts.join())).toEqual(['base,bolt']);
    within(joints[0].length_mm, 2 * Math.PI * 4, 0.005);
    within(joints[0].area_cm2, (Math.PI * 16) / 100, 0.005);
  });

  test('right-angled corners, thin walls and plain solids have no gap', () => {
    const l = prism(
      [
        [0, 0],
        [60, 0],
        [60, 10],
        [10, 10],
        [10, 40],
        [0, 40],
      ],
      0,
      200,
    );
    expect(gaps(movedModel(assemble({ l }), motion([1, 2, 3], [3, 1, 2], 77))).places).toEqual([]);
    expect(gaps(assemble({ sheet: box([0, 0, 0], [200, 100, 1]) })).places).toEqual([]);
    const tube = difference(cylinder(30, 100, 64), cylinder(29, 120, 64, motion([0, 0, -10])));
    expect(gaps(assemble({ tube })).places).toEqual([]);
    const boss = revolve([[0, 0], [40, 0], [40, 5], ...arc([13, 8], 3, 270, 180, 8), [10, 30], [0, 30]], 64);
    expect(gaps(assemble({ boss })).places).toEqual([]);
  });

  test('a wedge of 40 degrees closes to a gap at its tip, one of 70 degrees is a corner', () => {
    const wedge = (angle: number) => {
      const a = (angle * Math.PI) / 180;
      const arm = [10 + 40 * Math.cos(a), 10 + 40 * Math.sin(a)] as const;
      return prism([[-40, -40], [60, -40], [60, 10], [10, 10], arm, [-40, arm[1]]], 0, 100);
    };
    const { places } = gaps(assemble({ wedge: wedge(40) }));
    expect(places.length).toBe(1);
    expect(places[0].width_mm).toBeLessThan(0.2);
    expect(places[0].widest_mm).toBeLessThan(3);
    expect(places[0].widest_mm).toBeGreaterThan(2.7);
    expect(gaps(assemble({ wedge: wedge(70) })).places).toEqual([]);
  });

  test('scaling scales widths, depths and mouths', () => {
    const plates = (s: number): Record<string, Mesh> => ({
      low: scaled(box([0, 0, 0], [120, 80, 10]), s),
      high: scaled(box([0, 0, 10.8], [90, 50, 20]), s),
    });
    const [once] = gaps(assemble(plates(1))).places;
    const [large] = gaps(assemble(plates(2.5))).places;
    within(large.width_mm, 2.5 * once.width_mm, 1e-6);
    within(large.mouth_mm, 2.5 * once.mouth_mm, 0.01);
    within(large.depth_mm, 2.5 * once.depth_mm, 0.02);
  });
});

describe('joints', () => {
  const standing = (z: number) =>
    assemble({ plate: box([0, 0, 0], [200, 150, 10]), block: box([33, 41, z], [113, 101, 60]) });

  test.each([10, 10.015])('a block on a plate at height %s touches it', (z) => {
    const { places, joints } = gaps(movedModel(standing(z), motion([1, 2, 3], [0, 0, 1], 19)));
    expect(places).toEqual([]);
    expect(joints.length).toBe(1);
    expect(joints[0].parts).toEqual(['block', 'plate']);
    within(joints[0].length_mm, 280, 0.005);
    within(joints[0].area_cm2, 48, 0.005);
    expect(joints[0].caveats).toBeUndefined();
  });

  test.each([9.9, 9, 5])('a block sunk into a plate to height %s meets it along the same line', (z) => {
    const { places, joints } = gaps(standing(z));
    expect(places).toEqual([]);
    expect(joints.length).toBe(1);
    within(joints[0].length_mm, 280, 0.005);
    expect(joints[0].area_cm2).toBe(0);
    expect(joints[0].caveats?.[0]).toContain('overlap');
  });

  test('a block that hovers above contact has a gap instead', () => {
    const { places, joints } = gaps(standing(10.03));
    expect(joints).toEqual([]);
    expect(places.length).toBe(1);
    within(places[0].width_mm, 0.03, 0.01);
  });

  test('two plates side by side have a seam all round', () => {
    const { places, joints } = gaps(
      assemble({ left: box([0, 0, 0], [50, 80, 6]), right: box([50, 0, 0], [90, 80, 6]) }),
    );
    expect(places).toEqual([]);
    expect(joints.length).toBe(1);
    within(joints[0].length_mm, 2 * (80 + 6), 0.005);
    within(joints[0].area_cm2, 4.8, 0.005);
  });

  test('a pin through a plate meets it in two circles', () => {
    const model = assemble({
      plate: box([0, 0, 0], [60, 60, 8]),
      pin: cylinder(5, 40, 64, motion([30, 30, -10])),
    });
    const { places, joints } = gaps(model);
    expect(places).toEqual([]);
    const total = joints.reduce((sum, j) => sum + j.length_mm, 0);
    within(total, 2 * 2 * 64 * 5 * Math.sin(Math.PI / 64), 0.005);
  });

  test('four feet are four joints', () => {
    const foot = (x: number, y: number) => box([x, y, 0], [x + 20, y + 20, 30]);
    const { joints } = gaps(
      assemble({
        top: box([0, 0, 30], [200, 200, 40]),
        a: foot(10, 10),
        b: foot(170, 10),
        c: foot(170, 170),
        d: foot(10, 170),
      }),
    );
    expect(joints.map((j) => j.parts.join()).sort()).toEqual(['a,top', 'b,top', 'c,top', 'd,top']);
    for (const j of joints) within(j.length_mm, 80, 0.005);
  });
});

/** A shaft in a bore as CAD cylinders, with triangles as coarse as the kernel's deviation allows. */
function shaftInBore(shaft: number, bore: number, segments: number, turn: number): Model {
  const sleeve = revolve(
    [
      [bore, 0],
      [30, 0],
      [30, 40],
      [bore, 40],
    ],
    segments,
  );
  const model = assemble({
    sleeve,
    shaft: cylinder(shaft, 60, segments, motion([0, 0, -10], [0, 0, 1], turn)),
  });
  const deviation_mm = bore * (1 - Math.cos(Math.PI / segments));
  const shapes = model.shapes.map((shape, i) => {
    const radius = i === 0 ? bore : shaft;
    const faces: CadFace[] = [
      { kind: 'plane' },
      {
        kind: 'cylinder',
        radius_mm: radius,
        hollow: i === 0,
        axis: { origin: [0, 0, 0], direction: [0, 0, 1] },
      },
    ];
    const faceOfTriangle = Uint32Array.from({ length: shape.triangles.length / 3 }, (_, t) =>
      [0, 1, 2].every((k) => {
        const v = shape.triangles[3 * t + k] * 3;
        return Math.abs(Math.hypot(shape.positions[v], shape.positions[v + 1]) - radius) < 1e-6;
      })
        ? 1
        : 0,
    );
    return { ...shape, cad: { faceOfTriangle, faces, edges: [] } };
  });
  return { ...model, shapes, deviation_mm };
}

describe('with CAD cylinders', () => {
  test.each([
    [10, 10.1, 24],
    [10, 10.1, 48],
    [10, 11, 16],
  ])('a shaft of radius %s in a bore of %s, %s segments: the width is that of the drawing', (r, R, n) => {
    const { places, joints } = gaps(shaftInBore(r, R, n, 180 / n));
    expect(joints).toEqual([]);
    expect(places.length).toBe(1);
    within(places[0].width_mm, R - r, 0.01);
    within(places[0].widest_mm, R - r, 0.01);
    within(places[0].depth_mm, 20, 0.05);
    within(places[0].mouth_mm, 2 * Math.PI * (r + R), 0.03);
  });

  test('a shaft that fills its bore is a joint with two circles, whatever the triangles', () => {
    const { places, joints } = gaps(shaftInBore(10, 10, 32, 180 / 32));
    expect(places).toEqual([]);
    const total = joints.reduce((sum, j) => sum + j.length_mm, 0);
    within(total, 2 * 2 * Math.PI * 10, 0.02);
    within(
      joints.reduce((sum, j) => sum + j.area_cm2, 0),
      (2 * Math.PI * 10 * 40) / 100,
      0.02,
    );
  });
});
