import type { Shape } from '@coveline/model';
import { expect, test } from 'vitest';
import { facetsOf } from './facets.ts';
import { cavityTriangles, shellsOf } from './shells.ts';
import { turnAt } from './turn.ts';
import { weldShape } from './weld.ts';

const cubeCorners = [0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0, 0, 0, 1, 1, 0, 1, 1, 1, 1, 0, 1, 1];
// biome-ignore format: one face a line
const cubeTriangles = [
  0, 2, 1, 0, 3, 2,
  4, 5, 6, 4, 6, 7,
  0, 1, 5, 0, 5, 4,
  1, 2, 6, 1, 6, 5,
  2, 3, 7, 2, 7, 6,
  3, 0, 4, 3, 4, 7,
];

/** A cube whose triangles share no vertex, with `noise` on every coordinate; three times as large inside out on request. */
function cubeSoup(noise: number, scale = 1, at = 0): Shape {
  const positions = cubeTriangles.flatMap((v, i) =>
    [0, 1, 2].map((k) => at + cubeCorners[v * 3 + k] * scale + (((i * 7 + k * 3) % 5) / 5) * noise),
  );
  return {
    positions: Float64Array.from(positions),
    triangles: Uint32Array.from(cubeTriangles, (_, i) => i),
    hash: 'cube',
  };
}

function joined(a: Shape, b: Shape): Shape {
  const base = a.positions.length / 3;
  return {
    positions: Float64Array.from([...a.positions, ...b.positions]),
    triangles: Uint32Array.from(
      [...a.triangles, ...b.triangles].map((v, i) => (i < a.triangles.length ? v : v + base)),
    ),
    hash: 'two',
  };
}

function reversed(s: Shape): Shape {
  return { ...s, triangles: s.triangles.slice().reverse() };
}

test('loose triangles with noise below the tolerance become a closed cube of 8 vertices and 6 facets', () => {
  const weld = weldShape(cubeSoup(3e-4));
  expect(weld.positions.length).toBe(24);
  expect(weld.closed).toBe(true);
  expect(facetsOf(weld).areas.length).toBe(6);
  for (let h = 0; h < weld.twin.length; h++) {
    expect(weld.twin[weld.twin[h]]).toBe(h);
    const turn = (turnAt(weld, h, weld.normals) * 180) / Math.PI;
    expect(Math.abs(turn) < 0.1 || Math.abs(turn - 90) < 0.1).toBe(true);
  }
});

test('vertices farther apart than the tolerance stay apart', () => {
  const weld = weldShape(cubeSoup(0.02));
  expect(weld.closed).toBe(false);
});

test('edges of a cube turned inside out turn into inside corners', () => {
  const weld = weldShape(reversed(cubeSoup(0)));
  const turns = Array.from(weld.twin, (_, h) => Math.round((turnAt(weld, h, weld.normals) * 180) / Math.PI));
  expect(new Set(turns.map((t) => t + 0))).toEqual(new Set([0, -90]));
});

test('a cavity is told from its outer surface by the sign of its volume', () => {
  const weld = weldShape(joined(cubeSoup(0, 3), reversed(cubeSoup(0, 1, 1))));
  const { volumes } = shellsOf(weld);
  expect(volumes.map((v) => Math.round(v))).toEqual([27, -1]);
  expect(Array.from(cavityTriangles(weld))).toEqual([...Array(12).fill(0), ...Array(12).fill(1)]);
});

test('two separate solids in one shape seal nothing, and a surface inside out is no cavity', () => {
  const two = weldShape(joined(cubeSoup(0, 3), cubeSoup(0, 1, 10)));
  expect(cavityTriangles(two).some((x) => x === 1)).toBe(false);
  expect(cavityTriangles(weldShape(reversed(cubeSoup(0)))).some((x) => x === 1)).toBe(false);
});

test('a triangle that shrinks to a line leaves its neighbours joined', () => {
  const cube = cubeSoup(0);
  const line = [0, 0, 0, 0, 0, 0, 1, 0, 0];
  const weld = weldShape({
    positions: Float64Array.from([...cube.positions, ...line]),
    triangles: Uint32Array.from([...cube.triangles, 36, 37, 38]),
    hash: 'line',
  });
  expect(weld.closed).toBe(true);
  expect(weld.twin[36]).toBe(-1);
});
