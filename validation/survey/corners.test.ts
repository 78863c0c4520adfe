/** Inside corners against closed forms, from triangles and from CAD faces built by hand. Values follow from the drawing. */
import type { CadEdge, CadFace, Model } from '@coveline/model';
import { defaultSettings, measureInsideCorners } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { assemble, insideOut, motion, together } from '../shapes/assemble.ts';
import { box } from '../shapes/box.ts';
import { cylinder } from '../shapes/cylinder.ts';
import { type Mesh, movedModel, scaled } from '../shapes/mesh.ts';
import { type Corner, prism } from '../shapes/prism.ts';
import { arc, revolve } from '../shapes/revolve.ts';
import { difference } from '../shapes/solid.ts';

const corners = (model: Model) => measureInsideCorners(model, defaultSettings).measure;

/** An L of 60 x 40 and 10 thick, 200 long, with an inside corner of any angle at (10, 10), sharp or with a fillet. */
function lBlock(radius = 0, steps = 0, length = 200): Mesh {
  const inner: Corner[] =
    radius === 0
      ? [[10, 10]]
      : Array.from({ length: steps + 1 }, (_, i): Corner => {
          const a = ((270 - (90 * i) / steps) * Math.PI) / 180;
          return [10 + radius + radius * Math.cos(a), 10 + radius + radius * Math.sin(a)];
        });
  return prism([[0, 0], [60, 0], [60, 10], ...inner, [10, 40], [0, 40]], 0, length);
}

describe('from triangles', () => {
  test('a sharp L-block has one corner of its length, at 90 degrees, and says what it could hide', () => {
    const { sharp_mm, places } = corners(assemble({ block: lBlock() }));
    expect(places.length).toBe(1);
    expect(sharp_mm).toBeCloseTo(200, 9);
    expect(places[0]).toMatchObject({ parts: ['block'], radius_mm: 0, from: 'triangles' });
    expect(places[0].angle_deg).toBeCloseTo(90, 9);
    expect(places[0].at_mm).toEqual([10, 10, 100].map((x) => expect.closeTo(x, 9)));
    // d / (1 - cos 45 deg) with an assumed deviation of 0.1 mm.
    expect(places[0].couldHideRadius_mm).toBeCloseTo(0.1 / (1 - Math.SQRT1_2), 9);
  });

  test.each([
    [1, 2],
    [1, 4],
    [3, 2],
    [3, 4],
    [3, 9],
    [5.9, 8],
    [5.9, 40],
  ])('a fillet of %s mm in %s steps is found with its radius and length', (radius, steps) => {
    const { sharp_mm, places } = corners(assemble({ block: lBlock(radius, steps) }));
    expect(sharp_mm).toBe(0);
    expect(places.length).toBe(1);
    expect(places[0].radius_mm / radius).toBeCloseTo(1, 6);
    expect(Math.abs(places[0].length_mm / 200 - 1)).toBeLessThan(0.01);
    expect(places[0].angle_deg).toBeCloseTo(90, 6);
  });

  test('a fillet of 6.2 mm is above the limit of 6 mm, and an angle of 136 degrees above that of 135', () => {
    expect(corners(assemble({ block: lBlock(6.2, 6) })).places).toEqual([]);
    const wedge = (angle: number) => {
      const a = (angle * Math.PI) / 180;
      const arm: Corner = [10 + 40 * Math.cos(a), 10 + 40 * Math.sin(a)];
      return prism([[-40, -40], [50, -40], [50, 10], [10, 10], arm, [-40, arm[1]]], 0, 100);
    };
    expect(corners(assemble({ wedge: wedge(136) })).places).toEqual([]);
    const [place] = corners(assemble({ wedge: wedge(134) })).places;
    expect(place.angle_deg).toBeCloseTo(134, 6);
    expect(place.length_mm).toBeCloseTo(100, 6);
    expect(corners(assemble({ wedge: wedge(135) })).places).toEqual([]);
  });

  test('a sharp pocket has eight edges: four around its floor and four up its walls', () => {
    const block = difference(box([0, 0, 0], [100, 80, 40]), box([20, 20, 15], [80, 60, 50]));
    const { sharp_mm, places } = corners(assemble({ block }));
    expect(places.length).toBe(8);
    expect(sharp_mm).toBeCloseTo(2 * (60 + 40) + 4 * 25, 3);
  });

  test('the bottom edge of a blind bore is a corner, its wall is not', () => {
    const block = difference(box([-20, -20, 0], [20, 20, 30]), cylinder(4, 30, 64, motion([0, 0, 10])));
    const { places } = corners(assemble({ block }));
    expect(places.length).toBe(1);
    expect(places[0].radius_mm).toBe(0);
    expect(places[0].length_mm).toBeCloseTo(2 * 64 * 4 * Math.sin(Math.PI / 64), 3);
  });

  test.each([8, 16])('a fillet around the foot of a round boss, %s steps', (steps) => {
    const profile: Corner[] = [
      [0, 0],
      [60, 0],
      [60, 10],
      ...arc([20 + 3, 10 + 3], 3, 270, 180, steps),
      [20, 40],
      [0, 40],
    ];
    const { places } = corners(assemble({ boss: revolve(profile, 96) }));
    expect(places.length).toBe(1);
    expect(Math.abs(places[0].radius_mm / 3 - 1)).toBeLessThan(0.02);
    // Mean over the quarter turn of the fillet: 2 pi (23 - 3 * 2 / pi).
    const exact = 2 * Math.PI * (23 - (3 * 2) / Math.PI);
    expect(Math.abs(places[0].length_mm / exact - 1)).toBeLessThan(0.01);
  });

  test('outer edges, bores and round bars have no inside corner', () => {
    expect(
      corners(assemble({ box: box([0, 0, 0], [10, 20, 30]), bar: cylinder(3, 100, 24, motion([50, 0, 0])) }))
        .places,
    ).toEqual([]);
    const tube = difference(cylinder(5, 100, 48), cylinder(4, 120, 48, motion([0, 0, -10])));
    expect(corners(assemble({ tube })).places).toEqual([]);
  });

  test('a slot with round ends has corners of half its width', () => {
    const end = (x: number, from: number) =>
      Array.from({ length: 13 }, (_, i): Corner => {
        const a = ((from + (180 * i) / 12) * Math.PI) / 180;
        return [x + 4 * Math.cos(a), 4 * Math.sin(a)];
      });
    const slot = prism([...end(15, 270), ...end(-15, 90)], -1, 30);
    const plate = difference(box([-40, -20, 0], [40, 20, 12]), slot);
    const { places } = corners(assemble({ plate }));
    expect(places.length).toBe(2);
    for (const p of places) {
      expect(p.radius_mm).toBeCloseTo(4, 2);
      expect(Math.abs(p.length_mm / 12 - 1)).toBeLessThan(0.01);
      expect(p.angle_deg).toBeLessThan(1);
    }
  });

  test('what another part fills is not listed, to a tenth of a millimetre', () => {
    const filler = box([5, 5, 50.3], [30, 30, 120.3]);
    const { sharp_mm, places } = corners(assemble({ block: lBlock(), filler }));
    expect(sharp_mm).toBeCloseTo(130, 1);
    expect(places.length).toBe(1);
  });

  test('corners in a closed cavity are not listed', () => {
    // The walls of a box-shaped cavity meet in twelve inside corners that no soil reaches.
    const hollow = together(box([0, 0, 0], [100, 100, 50]), insideOut(box([5, 5, 5], [95, 95, 45])));
    expect(corners(assemble({ hollow })).places).toEqual([]);
  });

  test('turning in space changes nothing, and lengths and radii grow with the scale', () => {
    const mesh = lBlock(2, 5);
    const [once] = corners(assemble({ mesh })).places;
    const [turned] = corners(movedModel(assemble({ mesh }), motion([9, 8, 7], [1, 2, 3], 41))).places;
    expect(turned.length_mm).toBeCloseTo(once.length_mm, 6);
    expect(turned.radius_mm).toBeCloseTo(once.radius_mm, 6);
    const [large] = corners(assemble({ mesh: scaled(mesh, 2.5) })).places;
    expect(large.length_mm).toBeCloseTo(once.length_mm * 2.5, 6);
    expect(large.radius_mm).toBeCloseTo(5, 6);
  });
});

/** Gives an L-block with a fillet the CAD faces and edges that a kernel would. */
function cadBlock(radius: number, steps: number, length: number): Model {
  const model = assemble({ block: lBlock(radius, steps, length) });
  const shape = model.shapes[0];
  const n = shape.positions.length / 6;
  const faces: CadFace[] = Array.from({ length: n + 2 }, () => ({ kind: 'plane' }));
  const fillet = n + 2;
  faces.push({
    kind: 'cylinder',
    radius_mm: radius,
    hollow: true,
    axis: { origin: [10 + radius, 10 + radius, 0], direction: [0, 0, 1] },
  });
  const faceOfTriangle = Uint32Array.from({ length: shape.triangles.length / 3 }, (_, t) => {
    if (t < 2 * (n - 2)) return n + (t % 2);
    const side = (t - 2 * (n - 2)) >> 1;
    return side >= 3 && side < 3 + steps ? fillet : side;
  });
  const line = (x: number, y: number) => Float64Array.of(x, y, 0, x, y, length);
  const edge = (a: number, b: number, turn: CadEdge['turn'], x: number, y: number): CadEdge => ({
    faces: [a, b],
    turn,
    airAngle_deg: turn === 'tangent' ? 180 : 90,
    length_mm: length,
    points: line(x, y),
  });
  const edges =
    radius === 0
      ? [edge(2, 3, 'concave', 10, 10)]
      : [edge(2, fillet, 'tangent', 10 + radius, 10), edge(fillet, 3 + steps, 'tangent', 10, 10 + radius)];
  return { ...model, deviation_mm: 0.1, shapes: [{ ...shape, cad: { faceOfTriangle, faces, edges } }] };
}

describe('from CAD faces', () => {
  test('a sharp edge is exact and says that it comes from CAD', () => {
    const { places, sharp_mm } = corners(cadBlock(0, 0, 123));
    expect(sharp_mm).toBe(123);
    expect(places[0]).toMatchObject({ from: 'cad', angle_deg: 90, radius_mm: 0 });
    expect(places[0].couldHideRadius_mm).toBeUndefined();
  });

  test.each([2.9, 3, 5.999])(
    'a fillet of %s mm has its exact radius, however coarse the triangles',
    (radius) => {
      const outcome = measureInsideCorners(cadBlock(radius, 3, 123), defaultSettings);
      const { places } = outcome.measure;
      expect(places.length).toBe(1);
      expect(places[0]).toMatchObject({ from: 'cad', radius_mm: radius });
      expect(places[0].length_mm).toBeCloseTo(123, 9);
      expect(places[0].angle_deg).toBeCloseTo(90, 9);
      expect(Array.from(outcome.field).filter((x) => !Number.isNaN(x)).length).toBe(6);
      const line = outcome.drawings.get(places[0].id)?.lines?.[0];
      expect(line?.length).toBe(6);
    },
  );

  test('a fillet of exactly the limit is not listed', () => {
    expect(corners(cadBlock(6, 3, 123)).places).toEqual([]);
  });

  test('a hollow cylinder that does not run out smoothly is no fillet', () => {
    const model = cadBlock(3, 4, 50);
    const cad = model.shapes[0].cad;
    if (!cad) throw new Error('no CAD');
    const edges = cad.edges.map((e): CadEdge => ({ ...e, turn: 'convex', airAngle_deg: 270 }));
    const shape = { ...model.shapes[0], cad: { ...cad, edges } };
    expect(corners({ ...model, shapes: [shape] }).places).toEqual([]);
  });

  test('a torus around a boss: exact radius, length at the surface', () => {
    const steps = 6;
    const segments = 48;
    const profile: Corner[] = [
      [0, 0],
      [60, 0],
      [60, 10],
      ...arc([24, 14], 4, 270, 180, steps),
      [20, 40],
      [0, 40],
    ];
    const model = assemble({ boss: revolve(profile, segments) });
    const shape = model.shapes[0];
    const onFillet = (v: number) => {
      const r = Math.hypot(shape.positions[v * 3], shape.positions[v * 3 + 1]);
      return Math.abs(Math.hypot(r - 24, shape.positions[v * 3 + 2] - 14) - 4) < 1e-9;
    };
    const faceOfTriangle = Uint32Array.from({ length: shape.triangles.length / 3 }, (_, t) =>
      [0, 1, 2].every((k) => onFillet(shape.triangles[t * 3 + k])) ? 1 : 0,
    );
    const circle = (r: number, z: number): CadEdge => ({
      faces: [0, 1],
      turn: 'tangent',
      airAngle_deg: 180,
      length_mm: 2 * Math.PI * r,
      points: Float64Array.from(
        Array.from({ length: segments + 1 }, (_, i) => [
          r * Math.cos((i / segments) * 2 * Math.PI),
          r * Math.sin((i / segments) * 2 * Math.PI),
          z,
        ]).flat(),
      ),
    });
    const torus: CadFace = {
      kind: 'torus',
      radius_mm: 4,
      majorRadius_mm: 24,
      hollow: true,
      axis: { origin: [0, 0, 14], direction: [0, 0, 1] },
    };
    const cad = {
      faceOfTriangle,
      faces: [{ kind: 'plane' as const }, torus],
      edges: [circle(24, 10), circle(20, 14)],
    };
    const { places } = corners({ ...model, shapes: [{ ...shape, cad }] });
    expect(places.length).toBe(1);
    expect(places[0].radius_mm).toBe(4);
    const exact = 2 * Math.PI * (24 - (4 * 2) / Math.PI);
    expect(Math.abs(places[0].length_mm / exact - 1)).toBeLessThan(0.002);
  });
});
