/** An O-ring that lies on the floor of its groove: it touches in a line, and the wedges beside that are gaps. */
import type { Model } from '@coveline/model';
import { defaultSettings, measureNarrowGaps } from '@coveline/survey';
import { expect, test } from 'vitest';
import { assemble, motion } from '../../shapes/assemble.ts';
import { movedModel } from '../../shapes/mesh.ts';
import { revolve } from '../../shapes/revolve.ts';

const segments = 96;
const cord = 1.8;
const ring = 20;

/** `offset`: where round the cord its triangles begin, in facets; at a half a facet lies flat on the floor. */
function oRing(offset: number, cad: boolean): Model {
  const facets = 24;
  const round = Array.from({ length: facets }, (_, i): [number, number] => {
    const a = (2 * Math.PI * (i + offset)) / facets - Math.PI / 2;
    return [ring + cord * Math.cos(a), cord + cord * Math.sin(a)];
  });
  const model = assemble({
    flange: revolve(
      [
        [10, -10],
        [40, -10],
        [40, 2.8],
        [ring + 2.6, 2.8],
        [ring + 2.6, 0],
        [ring - 2.6, 0],
        [ring - 2.6, 2.8],
        [10, 2.8],
      ],
      segments,
    ),
    oRing: revolve(round, segments),
  });
  if (!cad) return model;
  const { triangles } = model.shapes[1];
  const torus = {
    faceOfTriangle: new Uint32Array(triangles.length / 3),
    faces: [
      {
        kind: 'torus' as const,
        radius_mm: cord,
        majorRadius_mm: ring,
        axis: { origin: [0, 0, cord] as const, direction: [0, 0, 1] as const },
        hollow: false,
      },
    ],
    edges: [],
  };
  const shapes = model.shapes.map((shape, i) => (i === 1 ? { ...shape, cad: torus } : shape));
  return { ...model, shapes, deviation_mm: 0.05 };
}

test.each([
  { offset: 0, cad: false },
  { offset: 0, cad: true },
  { offset: 0.5, cad: false },
  { offset: 0.5, cad: true },
])('offset $offset, CAD faces: $cad', ({ offset, cad }) => {
  const model = movedModel(oRing(offset, cad), motion([30, -20, 10], [1, 2, 0], 40));
  const { places, joints } = measureNarrowGaps(model, defaultSettings).measure;
  expect(joints.map((j) => j.parts.join())).toEqual(['flange,oRing']);
  expect(Math.abs(joints[0].length_mm / (2 * Math.PI * ring) - 1)).toBeLessThan(0.01);
  // One wedge inside the line and one outside it.
  const wedges = places.filter((p) => p.parts.join() === 'flange,oRing');
  expect(wedges.length).toBe(2);
  for (const { width_mm, depth_mm } of wedges) {
    expect(width_mm).toBeLessThan(0.03);
    expect(depth_mm).toBeGreaterThan(1.5);
    expect(depth_mm).toBeLessThan(4);
  }
});
