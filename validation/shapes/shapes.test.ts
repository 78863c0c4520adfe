/** The generators themselves: closed, and of the volume that geometry demands. */
import { expect, test } from 'vitest';
import { box, hollowBox, tray } from './box.ts';
import { cylinder } from './cylinder.ts';
import { type Mesh, meshVolume } from './mesh.ts';
import { polygonShare } from './revolve.ts';
import { cup, dish, flask, ring, uPipe } from './vessels.ts';

function openEdges({ triangles }: Mesh): number {
  const uses = new Map<string, number>();
  for (let t = 0; t < triangles.length; t++) {
    const a = triangles[t];
    const b = triangles[t % 3 === 2 ? t - 2 : t + 1];
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    uses.set(key, (uses.get(key) ?? 0) + (a < b ? 1 : -1));
  }
  return [...uses.values()].filter((n) => n !== 0).length;
}

const n = 96;
const share = polygonShare(n);
const cases: readonly (readonly [string, Mesh, number])[] = [
  ['box', box([0, 0, 0], [2, 3, 4]), 24],
  ['tray', tray(10, 6, 4, 1), 12 * 8 * 5 - 240],
  ['hollow box', hollowBox(10, 6, 4, 1), 12 * 8 * 6 - 240],
  ['cylinder', cylinder(5, 4, n), share * Math.PI * 100],
  ['cup', cup(5, 4, 1, n), share * Math.PI * (36 * 5 - 100)],
  ['ring', ring(5, 6, 4, n), share * Math.PI * 44],
];

test.each(cases)('%s', (_name, mesh, volume) => {
  expect(openEdges(mesh)).toBe(0);
  expect(meshVolume(mesh)).toBeCloseTo(volume, 9);
});

// Round in both directions: within the error of the facets, which falls with the square of their number.
const round: readonly (readonly [string, Mesh, number])[] = [
  ['dish', dish(50, 2, n), (2 / 3) * Math.PI * (52 ** 3 - 50 ** 3)],
  ['U of pipe', uPipe(20, 2, 60, 30, 40, n), Math.PI * (144 - 100) * (Math.PI * 60 + 70)],
];

test.each(round)('%s', (_name, mesh, volume) => {
  expect(openEdges(mesh)).toBe(0);
  expect(meshVolume(mesh) / volume).toBeGreaterThan(0.99);
  expect(meshVolume(mesh) / volume).toBeLessThan(1.001);
});

test('flask', () => {
  const mesh = flask(40, 10, 70, 2, n);
  expect(openEdges(mesh)).toBe(0);
  expect(meshVolume(mesh)).toBeGreaterThan(0);
});
