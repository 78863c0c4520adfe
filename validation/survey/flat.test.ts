/** Flat faces against closed forms: tilted plates, covered plates, tubes, cavities. All values follow from the drawing. */
import type { CadFace, Model } from '@coveline/model';
import { defaultSettings, measureFlatFaces } from '@coveline/survey';
import { expect, test } from 'vitest';
import { assemble, insideOut, motion, together } from '../shapes/assemble.ts';
import { box } from '../shapes/box.ts';
import { cylinder } from '../shapes/cylinder.ts';
import { movedModel } from '../shapes/mesh.ts';
import { prism } from '../shapes/prism.ts';

const flat = (model: Model) => measureFlatFaces(model, defaultSettings).measure;

test('a plate at 2.9 degrees is flat on both sides with its slope, at 3.1 degrees it is not', () => {
  const plate = assemble({ plate: box([0, 0, 0], [300, 200, 5]) });
  const low = flat(movedModel(plate, motion([7, 8, 9], [1, 2, 0], 2.9)));
  expect(low.up_cm2).toBeCloseTo(600, 6);
  expect(low.down_cm2).toBeCloseTo(600, 6);
  expect(low.places.map((p) => p.slope_deg)).toEqual([expect.closeTo(2.9, 6), expect.closeTo(2.9, 6)]);
  expect(new Set(low.places.map((p) => p.facing))).toEqual(new Set(['up', 'down']));
  expect(flat(movedModel(plate, motion([7, 8, 9], [1, 2, 0], 3.1))).places).toEqual([]);
});

test('the two slopes of a flat roof are two faces, and the middle of a face lies on it', () => {
  const tan = Math.tan((2 * Math.PI) / 180);
  const outline = [
    [0, 0],
    [200, 0],
    [200, 20],
    [100, 20 + 100 * tan],
    [0, 20],
  ] as const;
  // Drawn upwards, then laid on its side so that the roof faces up.
  const roof = movedModel(assemble({ roof: prism(outline, 0, 400) }), motion([0, 0, 0], [1, 0, 0], 90));
  const up = flat(roof).places.filter((p) => p.facing === 'up');
  expect(up.length).toBe(2);
  for (const p of up) {
    expect(p.slope_deg).toBeCloseTo(2, 9);
    expect(p.area_cm2).toBeCloseTo((400 * 100) / Math.cos((2 * Math.PI) / 180) / 100, 6);
    expect(p.at_mm[2]).toBeCloseTo(20 + (100 - Math.abs(p.at_mm[0] - 100)) * tan, 9);
  }
});

test('what another part stands on is not counted, whether it touches, hovers within contact or sinks in', () => {
  for (const z of [10, 10.015, 9.9, 5]) {
    const { places, up_cm2 } = flat(
      assemble({ plate: box([0, 0, 0], [200, 200, 10]), block: box([33, 41, z], [133, 141, 60]) }),
    );
    const plate = places.find((p) => p.parts[0] === 'plate' && p.facing === 'up');
    // 2 048 points: within 0.5 % of the 300 cm2 that stay open.
    expect(plate?.area_cm2).toBeGreaterThan(300 * 0.995);
    expect(plate?.area_cm2).toBeLessThan(300 * 1.005);
    expect(plate?.caveats?.[0]).toContain('covered');
    expect(up_cm2).toBeCloseTo((plate?.area_cm2 ?? 0) + 100, 6);
    expect(places.some((p) => p.parts[0] === 'block' && p.facing === 'down')).toBe(false);
  }
});

test('a block that hovers above contact distance covers nothing', () => {
  const { places } = flat(
    assemble({ plate: box([0, 0, 0], [200, 200, 10]), block: box([50, 50, 10.1], [150, 150, 60]) }),
  );
  expect(places.find((p) => p.parts[0] === 'plate' && p.facing === 'up')?.area_cm2).toBeCloseTo(400, 6);
});

test('the crest of a round tube is not a flat face at any fineness, its square neighbour is', () => {
  for (const segments of [16, 24, 48, 96, 360]) {
    const tube = cylinder(20, 1000, segments);
    const half = 180 / segments;
    const laid = movedModel(assemble({ tube }), motion([0, 0, 0], [0, 1, 0], 90));
    // Once with an edge on top, once with a facet on top.
    for (const turn of [0, half]) {
      const result = measureFlatFaces(movedModel(laid, motion([0, 0, 0], [1, 0, 0], turn)), defaultSettings);
      expect(result.measure.places).toEqual([]);
    }
  }
  const square = flat(assemble({ bar: box([0, 0, 0], [1000, 40, 40]) }));
  expect(square.up_cm2).toBeCloseTo(400, 6);
});

test('a narrow flat between two fillets is flat, although the fillets are not', () => {
  const arc = (cx: number, cy: number, from: number) =>
    Array.from({ length: 7 }, (_, i): [number, number] => {
      const a = ((from + (90 * i) / 6) * Math.PI) / 180;
      return [cx + 3 * Math.cos(a), cy + 3 * Math.sin(a)];
    });
  const outline: [number, number][] = [[0, 0], [26, 0], ...arc(23, 17, 0), ...arc(3, 17, 90)];
  const bar = movedModel(assemble({ bar: prism(outline, 0, 500) }), motion([0, 0, 0], [1, 0, 0], 90));
  const up = flat(bar).places.filter((p) => p.facing === 'up');
  expect(up.length).toBe(1);
  expect(up[0].area_cm2).toBeCloseTo((20 * 500) / 100, 6);
});

test('faces inside a closed cavity do not count', () => {
  const hollow = together(box([0, 0, 0], [100, 100, 50]), insideOut(box([5, 5, 5], [95, 95, 45])));
  const { up_cm2, down_cm2, places } = flat(assemble({ hollow }));
  expect(up_cm2).toBeCloseTo(100, 6);
  expect(down_cm2).toBeCloseTo(100, 6);
  expect(places.length).toBe(2);
});

test('with CAD faces the exact normal decides, and a cylinder of small radius does not count', () => {
  const model = assemble({ plate: box([0, 0, 0], [300, 200, 5]) });
  const shape = model.shapes[0];
  const faceOfTriangle = Uint32Array.from({ length: 12 }, (_, t) => (t < 4 ? t >> 1 : 2));
  const faces = (up: CadFace): CadFace[] => [
    { kind: 'plane', axis: { origin: [0, 0, 0], direction: [0, 0, -1] } },
    up,
    { kind: 'freeform' },
  ];
  const withTop = (up: CadFace): Model => ({
    ...model,
    shapes: [{ ...shape, cad: { faceOfTriangle, faces: faces(up), edges: [] } }],
  });
  const a = (3.1 * Math.PI) / 180;
  const plane = (angle: number): CadFace => ({
    kind: 'plane',
    axis: { origin: [0, 0, 5], direction: [Math.sin(angle), 0, Math.cos(angle)] },
  });
  expect(flat(withTop(plane(a))).up_cm2).toBe(0);
  expect(flat(withTop(plane(0))).up_cm2).toBeCloseTo(600, 6);
  expect(flat(withTop({ kind: 'cylinder', radius_mm: 100, hollow: false })).up_cm2).toBe(0);
  expect(flat(withTop({ kind: 'cylinder', radius_mm: 5000, hollow: false })).up_cm2).toBeCloseTo(600, 6);
});

test('turning about the vertical changes nothing, and area grows with the square of the scale', () => {
  const shapes = (s: number) => ({
    plate: box([0, 0, 0], [200 * s, 200 * s, 10 * s]),
    block: box([33 * s, 41 * s, 10 * s], [133 * s, 141 * s, 60 * s]),
  });
  const once = flat(assemble(shapes(1)));
  const turned = flat(movedModel(assemble(shapes(1)), motion([3, 4, 5], [0, 0, 1], 27)));
  expect(turned.places.map((p) => p.area_cm2)).toEqual(once.places.map((p) => expect.closeTo(p.area_cm2, 6)));
  const large = flat(assemble(shapes(3)));
  expect(large.down_cm2).toBeCloseTo(once.down_cm2 * 9, 6);
  expect(large.up_cm2 / (once.up_cm2 * 9)).toBeCloseTo(1, 2);
});
