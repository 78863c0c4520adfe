/**
 * Every vessel at three sizes and three turns about the vertical, clean and with vertices off by up to 0.01 mm, by columns
 * and exactly. Volumes of cap, cylinder, sphere, torus and wedge: elementary geometry.
 */
import { loadManifoldUnion, survey } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { box, tray } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { about, type Body, type Mesh, modelOf, movedModel, placed, scaled } from '../../shapes/mesh.ts';
import { polygonShare } from '../../shapes/revolve.ts';
import { difference } from '../../shapes/solid.ts';
import { cup, dish, flask, ring, uPipe } from '../../shapes/vessels.ts';

/** Facets lie inside the round surface: with this many segments they lose up to 0.25 % of a sphere. */
const n = 128;
const round = polygonShare(n) * Math.PI;
const cap = (r: number, h: number): number => (Math.PI * h * h * (3 * r - h)) / 3;
const tan = (deg: number): number => Math.tan((deg * Math.PI) / 180);

interface Vessel {
  readonly bodies: readonly Body[];
  /** mm3 */
  readonly holds: number;
}

const vessels: Record<string, Vessel> = {
  'a spherical dish, tilted by 20 degrees': {
    bodies: [{ id: 'dish', mesh: dish(50, 2, n), placement: placed({ tiltX: 20 }) }],
    holds: cap(50, 50 * (1 - Math.sin((20 * Math.PI) / 180))),
  },
  'a tray, tilted by 2 degrees': {
    bodies: [{ id: 'tray', mesh: tray(300, 120, 8, 3), placement: placed({ tiltY: 2 }) }],
    holds: (120 * 8 ** 2) / (2 * tan(2)),
  },
  'a flask with a neck': {
    bodies: [{ id: 'flask', mesh: flask(40, 10, 70, 2, n) }],
    holds: cap(40, 40 + Math.sqrt(1500)) + Math.PI * 100 * (70 - Math.sqrt(1500)),
  },
  'a tank with a side hole': {
    bodies: [
      {
        id: 'tank',
        mesh: difference(cup(50, 100, 2, n), cylinder(4, 40, 64, placed({ tiltY: 90, move: [30, 0, 40] }))),
      },
    ],
    holds: round * 2500 * 36,
  },
  'a U of pipe': {
    bodies: [{ id: 'pipe', mesh: uPipe(20, 1, 60, 40, 36, n) }],
    holds: round * 100 * (Math.PI * 60 + 72),
  },
  'a ring on a plate': {
    bodies: [
      { id: 'plate', mesh: box([-100, -100, -5], [100, 100, 0]) },
      { id: 'ring', mesh: ring(60, 63, 8, n) },
    ],
    holds: round * 3600 * 8,
  },
  'an inverted cup': {
    bodies: [{ id: 'cup', mesh: cup(30, 50, 2, n), placement: placed({ tiltX: 180, move: [0, 0, 60] }) }],
    holds: 0,
  },
};

/** Each coordinate off by up to `by` mm, seeded (a linear congruence after Numerical Recipes, from memory). */
function jittered({ positions, triangles }: Mesh, by: number, seed: number): Mesh {
  let state = seed;
  return {
    positions: positions.map((c) => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return c + by * ((2 * state) / 2 ** 32 - 1);
    }),
    triangles,
  };
}

function sized(bodies: readonly Body[], factor: number, noise_mm: number): Body[] {
  return bodies.map(({ id, mesh, placement }, k) => {
    const moved = placement?.slice();
    if (moved) for (let i = 12; i < 15; i++) moved[i] *= factor;
    return { id, mesh: jittered(scaled(mesh, factor), noise_mm, 7 + k), ...(moved && { placement: moved }) };
  });
}

describe.each(Object.entries(vessels))('%s', (_, { bodies, holds }) => {
  test.each([0.3, 1, 4])('%s times as large, seeds 7 and 8', { timeout: 60_000 }, async (factor) => {
    for (const [turn, noise_mm] of [
      [0, 0],
      [19, 0],
      [45, 0],
      [30, 0.01],
    ] as const) {
      const model = movedModel(modelOf(sized(bodies, factor, noise_mm)), about(2, turn));
      const { result } = await survey(model, {
        measures: ['standingLiquid'],
        settings: { leastPool_mL: 0.05, leastPoolDepth_mm: 0.1 },
        exact: loadManifoldUnion,
      });
      const { total_mL, places } = result.measures.standingLiquid ?? { total_mL: Number.NaN, places: [] };
      if (holds === 0) {
        expect(total_mL).toBe(0);
        continue;
      }
      const expected_mL = (holds * factor ** 3) / 1000;
      const columns_mL = places.reduce((sum, p) => sum + (p.columns_mL ?? 0), 0);
      expect(Math.abs(columns_mL / expected_mL - 1)).toBeLessThan(0.01);
      // Facets, and what the noise takes from a pool of 2.4 mm.
      expect(Math.abs(total_mL / expected_mL - 1)).toBeLessThan(noise_mm > 0 ? 0.006 : 0.003);
      for (const { exact_mL } of places) expect(exact_mL).toBeDefined();
    }
  });
});

test('trays exactly: to a hundredth of a percent, one part or five', async () => {
  const walls: Body[] = [
    { id: 'floor', mesh: box([0, 0, -2], [300, 200, 0]) },
    { id: 'left', mesh: box([-2, -2, -2], [0, 202, 20]) },
    { id: 'right', mesh: box([300, -2, -2], [302, 202, 20]) },
    { id: 'front', mesh: box([0, -2, -2], [300, 0, 20]) },
    { id: 'back', mesh: box([0, 200, -2], [300, 202, 20]) },
  ];
  const one: Body[] = [{ id: 'tray', mesh: tray(300, 200, 20, 2) }];
  for (const bodies of [one, walls]) {
    for (const turn of [0, 33]) {
      const { result } = await survey(movedModel(modelOf(bodies), about(2, turn)), {
        measures: ['standingLiquid'],
        exact: loadManifoldUnion,
      });
      const [pool] = result.measures.standingLiquid?.places ?? [];
      expect(Math.abs((pool.exact_mL ?? 0) / 1200 - 1)).toBeLessThan(1e-4);
      expect(Math.abs((pool.columns_mL ?? 0) / 1200 - 1)).toBeLessThan(0.005);
      expect(Math.abs(pool.area_cm2 / 600 - 1)).toBeLessThan(0.002);
      expect(pool.depth_mm).toBeCloseTo(20, 3);
    }
  }
});
