import type { Model, Shape, Vec3 } from '@coveline/model';
import { describe, expect, test } from 'vitest';
import { type BoxPart, boxModel } from '../geometry/box-model.fixture.ts';
import { rectanglesOf } from '../geometry/rectangles.ts';
import { proposeSite } from './propose-site.ts';

/** A square cup with walls of 5 mm and a floor of 5 mm, 60 mm wide outside, standing with its middle over x, y. */
function withCups(
  boxes: readonly BoxPart[],
  cups: readonly { name: string; at: Vec3; height: number }[],
): Model {
  const model = boxModel(boxes);
  const shapes = [...model.shapes];
  const parts = [...model.parts];
  for (const { name, at, height } of cups) {
    const placement = Float64Array.of(1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, ...at, 1);
    parts.push({ id: name, name, assembly: [], shape: shapes.length, placement });
    shapes.push(cup(height));
  }
  return { ...model, shapes, parts };
}

function cup(height: number): Shape {
  const ring = (half: number, z: number) => [-half, -half, z, half, -half, z, half, half, z, -half, half, z];
  // Rings: outside below, outside above, inside above, inside below.
  const positions = Float64Array.from([
    ...ring(30, 0),
    ...ring(30, height),
    ...ring(25, height),
    ...ring(25, 5),
  ]);
  const triangles: number[] = [0, 2, 1, 0, 3, 2];
  for (let r = 0; r < 3; r++)
    for (let i = 0; i < 4; i++) {
      const [a, b] = [4 * r + i, 4 * r + ((i + 1) % 4)];
      triangles.push(a, b, b + 4, a, b + 4, a + 4);
    }
  triangles.push(12, 13, 14, 12, 14, 15);
  return { positions, triangles: Uint32Array.from(triangles), hash: `cup ${height}` };
}

const box = (name: string, low: Vec3, high: Vec3): BoxPart => ({ name, low, high });
const feet = [0, 1, 2, 3].map((i) => {
  const [x, y] = [i & 1 ? 380 : 0, i & 2 ? 280 : 0];
  return box(`foot ${i}`, [x, y, -20], [x + 20, y + 20, 0]);
});
const table = box('table', [0, 0, 0], [400, 300, 20]);
const jar = { name: 'jar', at: [200, 150, 20] as Vec3, height: 90 };

const of = (model: Model, what: string) => proposeSite(model).proposals.filter((p) => p.item.what === what);

describe('the floor', () => {
  test('is where the feet stand', () => {
    expect(of(boxModel([table, ...feet]), 'floor')).toMatchObject([
      { item: { height_mm: -20 }, confidence: 'high' },
    ]);
  });

  test('feet at the top say that another axis points up', () => {
    const turned = feet.map((f) => ({
      ...f,
      low: [f.low[0], f.low[1], 20] as Vec3,
      high: [f.high[0], f.high[1], 40] as Vec3,
    }));
    const { proposals, notes } = proposeSite(boxModel([table, ...turned]));
    expect(proposals[0]).toMatchObject({ item: { height_mm: 0 }, confidence: 'medium' });
    expect(notes).toEqual([expect.stringContaining('whether the right axis points up')]);
  });
});

describe('open containers', () => {
  test('a cup that is named a jar is one; a solid block of that name and a cup with a lid are none', () => {
    const [mouth, ...more] = of(withCups([table], [jar]), 'mouth');
    expect(more).toEqual([]);
    expect(mouth).toMatchObject({ id: 'mouth:jar', confidence: 'high', item: { at_mm: [200, 150, 110] } });
    expect(mouth.reason).toContain('85 mm deep');
    expect(of(boxModel([table, box('jar', [170, 120, 20], [230, 180, 110])]), 'mouth')).toEqual([]);
    const lid = box('lid', [165, 115, 108], [235, 185, 115]);
    expect(of(withCups([table, lid], [jar]), 'mouth')).toEqual([]);
  });
});

describe('filter faces', () => {
  const filter = box('HEPA filter', [50, 50, 600], [350, 250, 650]);
  const housing = box('housing', [40, 40, 650], [360, 260, 800]);

  test('the face of a named filter that looks down on a jar, not the housing behind it', () => {
    const [face, ...more] = of(withCups([table, filter, housing], [jar]), 'filter');
    expect(more).toEqual([]);
    expect(face).toMatchObject({
      confidence: 'high',
      item: { parts: ['HEPA filter'], at_mm: [200, 150, 600] },
    });
  });

  test('without a name the largest face over the jar is a guess; without a jar there is none', () => {
    const unnamed = {
      ...filter,
      name: 'block 7',
      low: [-100, -100, 600] as Vec3,
      high: [500, 400, 650] as Vec3,
    };
    expect(of(withCups([table, unnamed], [jar]), 'filter')).toMatchObject([{ confidence: 'low' }]);
    expect(of(boxModel([table, filter]), 'filter')).toEqual([]);
  });

  test('a plate in between hides it, and is itself no more than a guess', () => {
    const plate = box('plate', [-200, -200, 300], [600, 500, 305]);
    expect(of(withCups([table, filter, plate], [jar]), 'filter')).toMatchObject([
      { id: 'filter:plate', confidence: 'low' },
    ]);
  });
});

describe('access sides', () => {
  const inside = box('block', [150, 100, 20], [250, 200, 400]);
  const wall = box('wall', [0, 295, 20], [400, 300, 400]);

  test('a side that a sheet closes is a guess, the open ones are likely, the one with the buttons is sure', () => {
    const button = box('push button', [200, -5, 5], [210, 0, 15]);
    const sides = of(boxModel([table, inside, wall, button]), 'access');
    expect(sides.map((s) => [s.id, s.confidence])).toEqual([
      ['access:front', 'high'],
      ['access:left', 'medium'],
      ['access:right', 'medium'],
      ['access:back', 'low'],
    ]);
  });
});

test('an empty model proposes nothing', () => {
  const empty = { ...boxModel([]) };
  expect(proposeSite(empty)).toEqual({ proposals: [], notes: [] });
});

test('a rectangle is found whichever way it lies', () => {
  const model = boxModel([box('plate', [-150, -100, 0], [150, 100, 10])]);
  for (const deg of [0, 17, 30, 45]) {
    const [s, c] = [Math.sin((deg * Math.PI) / 180), Math.cos((deg * Math.PI) / 180)];
    const placement = Float64Array.of(c, s, 0, 0, -s, c, 0, 0, 0, 0, 1, 0, 7, 8, 9, 1);
    const turned = { ...model, parts: [{ ...model.parts[0], placement }] };
    const down = rectanglesOf(turned, 0, 1000).filter((r) => r.normal[2] < -0.9);
    expect(down).toHaveLength(1);
    const halves = [down[0].across_mm, down[0].along_mm].map((v) => Math.hypot(...v)).sort((a, b) => a - b);
    expect(halves[0]).toBeCloseTo(100, 6);
    expect(halves[1]).toBeCloseTo(150, 6);
    down[0].at_mm.forEach((x, i) => {
      expect(x).toBeCloseTo([7, 8, 9][i], 6);
    });
  }
});
