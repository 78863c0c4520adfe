import type { CadEdge, CadTopology, Shape } from '@coveline/model';
import { describe, expect, it } from 'vitest';
import { box, cut, cylinder, fillet, fuse, solidFile } from '../../fixtures/kernelFile.ts';
import { StepText } from '../../fixtures/stepText.ts';
import { openEdges, signedVolume } from '../mesh/check.ts';
import { readModel } from '../read.ts';

async function shapeOf(build: Parameters<typeof solidFile>[0]): Promise<Shape & { cad: CadTopology }> {
  const model = await readModel(await solidFile(build), 'test.step', { deviation_mm: 0.01, angle_rad: 0.1 });
  expect(model.shapes).toHaveLength(1);
  expect(model.notes).toEqual([]);
  const [shape] = model.shapes;
  expect(openEdges(shape.triangles, shape.positions.length / 3)).toBe(0);
  return shape as Shape & { cad: CadTopology };
}

const volume = (shape: Shape) => signedVolume(shape.positions, shape.triangles);
const turns = (edges: readonly CadEdge[], turn: string) => edges.filter((edge) => edge.turn === turn);

describe('faces and edges of exact solids', () => {
  it('L-block: one concave edge with 90 degrees of air', async () => {
    const { cad, ...shape } = await shapeOf((oc) =>
      cut(oc, box(oc, [0, 0, 0], [40, 30, 20]), box(oc, [20, -1, 10], [41, 31, 21])),
    );
    expect(volume(shape as Shape)).toBeCloseTo(40 * 30 * 20 - 20 * 30 * 10, 6);
    const concave = turns(cad.edges, 'concave');
    expect(concave).toHaveLength(1);
    expect(concave[0].airAngle_deg).toBeCloseTo(90, 9);
    expect(concave[0].length_mm).toBeCloseTo(30, 9);
    const points = [...concave[0].points];
    expect(points.filter((_, i) => i % 3 === 0)).toEqual([20, 20]);
    expect(points.filter((_, i) => i % 3 === 2)).toEqual([10, 10]);
  });

  it('inside fillet: hollow cylinder with its radius, tangent on both sides', async () => {
    const { cad } = await shapeOf((oc) => {
      const block = cut(oc, box(oc, [0, 0, 0], [40, 30, 20]), box(oc, [20, -1, 10], [41, 31, 21]));
      return fillet(oc, block, [20, 15, 10], 3);
    });
    const [round] = cad.faces.filter((face) => face.kind === 'cylinder');
    expect(round.radius_mm).toBeCloseTo(3, 9);
    expect(round.hollow).toBe(true);
    expect(Math.abs(round.axis?.direction[1] ?? 0)).toBeCloseTo(1, 9);
    expect(round.axis?.origin[0]).toBeCloseTo(23, 6);
    expect(round.axis?.origin[2]).toBeCloseTo(13, 6);
    expect(turns(cad.edges, 'concave')).toHaveLength(0);
    const tangent = turns(cad.edges, 'tangent').filter((edge) =>
      edge.faces.includes(cad.faces.indexOf(round)),
    );
    expect(tangent.map((edge) => edge.length_mm.toFixed(6))).toEqual(['30.000000', '30.000000']);
  });

  it('drilled hole: hollow cylinder, convex rims of exact length, a seam that is tangent to itself', async () => {
    const { cad, ...shape } = await shapeOf((oc) =>
      cut(oc, box(oc, [0, 0, 0], [40, 40, 10]), cylinder(oc, [20, 20, -1], 5, 12)),
    );
    // The hole is a prism with a few corners: a little less is missing than the cylinder would take.
    expect(volume(shape as Shape)).toBeGreaterThan(16000 - Math.PI * 250);
    expect(volume(shape as Shape)).toBeLessThan(16000 - Math.PI * 250 + 2 * Math.PI * 5 * 10 * 0.01);
    const hole = cad.faces.findIndex((face) => face.kind === 'cylinder');
    expect(cad.faces[hole]).toMatchObject({ radius_mm: 5, hollow: true });
    const around = cad.edges.filter((edge) => edge.faces.includes(hole));
    const seam = around.filter((edge) => edge.faces[0] === edge.faces[1]);
    expect(seam.map((edge) => edge.turn)).toEqual(['tangent']);
    const rims = turns(around, 'convex');
    expect(rims).toHaveLength(2);
    for (const rim of rims) {
      expect(rim.length_mm).toBeCloseTo(2 * Math.PI * 5, 6);
      expect(rim.airAngle_deg).toBeCloseTo(270, 6);
    }
  });

  it('pin on a plate: round cylinder, concave foot', async () => {
    const { cad } = await shapeOf((oc) =>
      fuse(oc, box(oc, [0, 0, 0], [40, 40, 10]), cylinder(oc, [20, 20, 10], 5, 12)),
    );
    const pin = cad.faces.findIndex((face) => face.kind === 'cylinder');
    expect(cad.faces[pin].hollow).toBe(false);
    const foot = turns(cad.edges, 'concave');
    expect(foot).toHaveLength(1);
    expect(foot[0].length_mm).toBeCloseTo(2 * Math.PI * 5, 6);
    expect(foot[0].airAngle_deg).toBeCloseTo(90, 6);
  });

  it('slanted groove: the air angle is that of the drawing', async () => {
    // A wedge of 30 degrees, its tip at the origin along y.
    const { cad } = await shapeOf((oc) => {
      const points = [
        [0, 0],
        [100, 0],
        [100, 100 * Math.tan(Math.PI / 6)],
      ].map(([x, z]) => new oc.gp_Pnt(x, 0, z));
      const wire = new oc.BRepBuilderAPI_MakeWire();
      for (let i = 0; i < 3; i++)
        wire.Add(new oc.BRepBuilderAPI_MakeEdge(points[i], points[(i + 1) % 3]).Edge());
      const face = new oc.BRepBuilderAPI_MakeFace(wire.Wire(), false).Face();
      return new oc.BRepPrimAPI_MakePrism(face, new oc.gp_Vec(0, 50, 0), false, true).Shape();
    });
    const tip = cad.edges.find(
      (edge) =>
        Math.abs(edge.length_mm - 50) < 1e-6 && Math.abs(edge.points[0]) + Math.abs(edge.points[2]) < 1e-9,
    );
    expect(tip?.turn).toBe('convex');
    expect(tip?.airAngle_deg).toBeCloseTo(330, 6);
  });

  it('sphere: its radius and volume, round', async () => {
    const { cad, ...shape } = await shapeOf((oc) => new oc.BRepPrimAPI_MakeSphere(12).Shape());
    expect(cad.faces).toHaveLength(1);
    expect(cad.faces[0]).toMatchObject({ kind: 'sphere', hollow: false });
    expect(cad.faces[0].radius_mm).toBeCloseTo(12, 9);
    const exact = (4 / 3) * Math.PI * 12 ** 3;
    expect(volume(shape as Shape)).toBeLessThan(exact);
    // No triangle is further from the sphere than 0.01 mm, so the volume lacks less than that skin.
    expect(volume(shape as Shape)).toBeGreaterThan(exact - 4 * Math.PI * 144 * 0.01);
  });

  it('fillet at the foot of a boss: a quarter of a torus, whose centre stands above the face', async () => {
    const { cad } = await shapeOf((oc) => {
      const boss = fuse(oc, box(oc, [-50, -50, 0], [50, 50, 10]), cylinder(oc, [0, 0, 5], 20, 35));
      return fillet(oc, boss, [-20, 0, 10], 3);
    });
    const [foot] = cad.faces.filter((face) => face.kind === 'torus');
    expect(foot).toMatchObject({ hollow: true });
    expect(foot.radius_mm).toBeCloseTo(3, 9);
    expect(foot.majorRadius_mm).toBeCloseTo(23, 9);
    expect(foot.axis?.origin).toEqual([expect.closeTo(0, 9), expect.closeTo(0, 9), expect.closeTo(13, 9)]);
  });

  it('torus and cone: radii and axes, though the kernel has no class for them', async () => {
    const torus = await shapeOf((oc) => new oc.BRepPrimAPI_MakeTorus(30, 4).Shape());
    expect(torus.cad.faces[0]).toMatchObject({ kind: 'torus', hollow: false });
    expect(torus.cad.faces[0].radius_mm).toBeCloseTo(4, 9);
    expect(torus.cad.faces[0].majorRadius_mm).toBeCloseTo(30, 9);
    expect(torus.cad.faces[0].axis?.direction.map(Math.abs)).toEqual([
      expect.closeTo(0, 9),
      expect.closeTo(0, 9),
      expect.closeTo(1, 9),
    ]);
    const countersunk = await shapeOf((oc) => {
      const block = cut(oc, box(oc, [0, 0, 0], [40, 40, 10]), cylinder(oc, [20, 20, -1], 5, 12));
      const maker = new oc.BRepFilletAPI_MakeChamfer(block);
      const { TopAbs_EDGE, TopAbs_SHAPE } = oc.TopAbs_ShapeEnum;
      for (const walk = new oc.TopExp_Explorer(block, TopAbs_EDGE, TopAbs_SHAPE); walk.More(); walk.Next()) {
        const edge = oc.TopoDS.Edge(walk.Current());
        const curve = new oc.BRepAdaptor_Curve(edge);
        if (curve.GetType() === 'GeomAbs_Circle' && curve.EvalD0(0).Z() > 5) maker.Add(2, edge);
      }
      return maker.Shape();
    });
    const cone = countersunk.cad.faces.find((face) => face.kind === 'cone');
    expect(cone?.hollow).toBe(true);
    expect(cone?.axis?.origin[0]).toBeCloseTo(20, 6);
    expect(cone?.axis?.origin[1]).toBeCloseTo(20, 6);
  });

  it('closed hollow inside a solid: its walls face the hollow and its volume is missing', async () => {
    const { cad, ...shape } = await shapeOf((oc) =>
      cut(oc, box(oc, [0, 0, 0], [40, 30, 20]), box(oc, [10, 10, 5], [30, 20, 15])),
    );
    expect(cad.faces).toHaveLength(12);
    expect(volume(shape as Shape)).toBeCloseTo(40 * 30 * 20 - 20 * 10 * 10, 6);
    expect(turns(cad.edges, 'concave')).toHaveLength(12);
    expect(turns(cad.edges, 'convex')).toHaveLength(12);
  });
});

describe('spline surfaces that are something simpler', () => {
  /** One face on a rational spline: a quarter turn about z, or a flat or parabolic one, by its middle weight and pole. */
  const faceOf = async (middle: readonly [number, number], weight: number) => {
    const r = 6.35;
    const height = 40;
    const step = new StepText();
    const poles = [[r, 0], middle, [0, r]].map(
      ([x, y]) => `(${step.point(x, y, 0)},${step.point(x, y, height)})`,
    );
    const surface = step.add(
      `(BOUNDED_SURFACE()B_SPLINE_SURFACE(2,1,(${poles.join()}),.UNSPECIFIED.,.F.,.F.,.F.)B_SPLINE_SURFACE_WITH_KNOTS((3,3),(2,2),(0.,1.),(0.,1.),.UNSPECIFIED.)GEOMETRIC_REPRESENTATION_ITEM()RATIONAL_B_SPLINE_SURFACE(((1.,1.),(${weight},${weight}),(1.,1.)))REPRESENTATION_ITEM('')SURFACE())`,
    );
    const vertex = (x: number, y: number, z: number) => step.add(`VERTEX_POINT('',${step.point(x, y, z)})`);
    const corners = [vertex(r, 0, 0), vertex(0, r, 0), vertex(0, r, height), vertex(r, 0, height)];
    const across = (z: number) =>
      step.add(
        `(BOUNDED_CURVE()B_SPLINE_CURVE(2,(${step.point(r, 0, z)},${step.point(middle[0], middle[1], z)},${step.point(0, r, z)}),.UNSPECIFIED.,.F.,.F.)B_SPLINE_CURVE_WITH_KNOTS((3,3),(0.,1.),.UNSPECIFIED.)CURVE()GEOMETRIC_REPRESENTATION_ITEM()RATIONAL_B_SPLINE_CURVE((1.,${weight},1.))REPRESENTATION_ITEM(''))`,
      );
    const up = (x: number, y: number) =>
      step.add(`LINE('',${step.point(x, y, 0)},${step.add(`VECTOR('',${step.direction(0, 0, 1)},1.)`)})`);
    const edge = (from: string, to: string, curve: string, same: boolean) =>
      step.add(
        `ORIENTED_EDGE('',*,*,${step.add(`EDGE_CURVE('',${from},${to},${curve},.T.)`)},${same ? '.T.' : '.F.'})`,
      );
    const loop = [
      edge(corners[0], corners[1], across(0), true),
      edge(corners[1], corners[2], up(0, r), true),
      edge(corners[3], corners[2], across(height), false),
      edge(corners[0], corners[3], up(r, 0), false),
    ];
    const bound = step.add(`FACE_OUTER_BOUND('',${step.add(`EDGE_LOOP('',(${loop.join()}))`)},.T.)`);
    const face = step.add(`ADVANCED_FACE('',(${bound}),${surface},.T.)`);
    const shell = step.add(`SHELL_BASED_SURFACE_MODEL('',(${step.add(`OPEN_SHELL('',(${face}))`)}))`);
    step.product(
      'Face',
      step.representation([shell], step.context(), 'MANIFOLD_SURFACE_SHAPE_REPRESENTATION'),
    );
    const model = await readModel(step.bytes(), 'face.step');
    expect(model.shapes[0].cad?.faces).toHaveLength(1);
    return model.shapes[0].cad!.faces[0];
  };

  it('a cylinder stays freeform and carries its radius and side', async () => {
    const face = await faceOf([6.35, 6.35], Math.SQRT1_2);
    expect(face.kind).toBe('freeform');
    expect(face.radius_mm).toBeCloseTo(6.35, 6);
    expect(face.hollow).toBe(false);
  });

  it('a flat one is a plane', async () => {
    const face = await faceOf([6.35 / 2, 6.35 / 2], 1);
    expect(face.kind).toBe('plane');
    const [x, y, z] = face.axis!.direction;
    expect([Math.abs(x), Math.abs(y), Math.abs(z)]).toEqual([
      expect.closeTo(Math.SQRT1_2, 9),
      expect.closeTo(Math.SQRT1_2, 9),
      expect.closeTo(0, 9),
    ]);
  });

  it('a parabolic one has no radius', async () => {
    const face = await faceOf([6.35, 6.35], 1);
    expect(face.kind).toBe('freeform');
    expect(face.radius_mm).toBeUndefined();
  });
});
