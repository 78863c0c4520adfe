/**
 * Pools on wide, shallow curved faces, drawn exactly and read at the default deviation: the triangles must keep close
 * enough for the volume, and the mesh closed. Closed forms stand beside each shape.
 */
import { readModel } from '@coveline/cad';
import { triangleCount } from '@coveline/model';
import { type Drawing, draw, exportSTEP, makeBox, makeCylinder, type Shape3D, setOC } from 'replicad';
import init from 'replicad-opencascadejs';
import { beforeAll, describe, expect, it } from 'vitest';
import { openEdges } from '../../packages/cad/src/mesh/check.ts';
import { poolsIn } from '../survey/liquid/pools-in.ts';

beforeAll(async () => {
  setOC(
    (await init({ stdin: () => null, stdout: () => {}, stderr: () => {} })) as Parameters<typeof setOC>[0],
  );
});

const turned = (outline: Drawing) => outline.sketchOnPlane('XZ').revolve([0, 0, 1]) as Shape3D;
const plate = (radius: number) => makeCylinder(radius + 15, 20, [0, 0, -20]);

/** A spherical cap pressed into a plate: pi h (3 a^2 + h^2) / 6. */
const dish = (a: number, h: number) => {
  const R = (a * a + h * h) / (2 * h);
  const mid = R - h - Math.sqrt(R * R - (a * a) / 4);
  return {
    shape: () =>
      plate(a).cut(
        turned(
          draw([0, 1])
            .hLineTo(a)
            .vLineTo(0)
            .threePointsArcTo([0, -h], [a / 2, mid])
            .close(),
        ),
      ),
    mm3: (Math.PI * h * (3 * a * a + h * h)) / 6,
  };
};

/** A cone pressed into a plate: pi a^2 h / 3. */
const cone = (a: number, h: number) => ({
  shape: () => plate(a).cut(turned(draw([0, 0]).hLineTo(a).lineTo([0, -h]).close())),
  mm3: (Math.PI * a * a * h) / 3,
});

/** A ring groove with the section of a circular segment of width 2 b and depth h, centre at c: 2 pi c times its area (Pappus). */
const groove = (c: number, b: number, h: number) => {
  const r = (b * b + h * h) / (2 * h);
  const segment = r * r * Math.asin(b / r) - b * (r - h);
  return {
    shape: () =>
      plate(c + b).cut(
        turned(
          draw([c - b, 0])
            .threePointsArcTo([c + b, 0], [c, -h])
            .close(),
        ),
      ),
    mm3: 2 * Math.PI * c * segment,
  };
};

/** A trough with the section of a circular segment of width 2 b and depth h, closed at both ends: length times its area. */
const trough = (b: number, h: number, length: number) => {
  const r = (b * b + h * h) / (2 * h);
  return {
    shape: () =>
      makeBox([-b - 10, -10, -h - 10], [b + 10, length + 10, 0]).cut(
        makeCylinder(r, length, [0, 0, r - h], [0, 1, 0]),
      ),
    mm3: (r * r * Math.asin(b / r) - b * (r - h)) * length,
  };
};

const cases = [
  ['dish of 60 mm, 2.1 mm deep', dish(60, 2.1)],
  ['dish of 107 mm, 2.1 mm deep', dish(107.3, 2.1)],
  ['dish of 300 mm, 2.1 mm deep', dish(300, 2.1)],
  ['dish of 150 mm, 5 mm deep', dish(150, 5)],
  ['cone of 100 mm, 2.1 mm deep', cone(100, 2.1)],
  ['cone of 300 mm, 8 mm deep', cone(300, 8)],
  ['ring groove 40 mm wide, 2.5 mm deep', groove(80, 20, 2.5)],
  ['ring groove 100 mm wide, 5 mm deep', groove(150, 50, 5)],
  ['trough 45 mm wide, 2.1 mm deep', trough(22.5, 2.1, 300)],
  ['trough 200 mm wide, 4 mm deep', trough(100, 4, 500)],
] as const;

describe.each(cases)('%s', (_name, { shape, mm3 }) => {
  it('holds its closed-form volume within 1 %, on a closed mesh', async () => {
    const blob = exportSTEP([{ shape: shape(), name: 'plate' }]);
    const model = await readModel(new Uint8Array(await blob.arrayBuffer()), 'plate.step');
    const [{ positions, triangles }] = model.shapes;
    expect(model.notes).toEqual([]);
    expect(openEdges(triangles, positions.length / 3)).toBe(0);
    const { pools } = await poolsIn(model);
    expect(pools).toHaveLength(1);
    expect(Math.abs((pools[0].volume_mL * 1000) / mm3 - 1)).toBeLessThan(0.01);
    expect(triangleCount(model)).toBeLessThan(40_000);
  });
});
