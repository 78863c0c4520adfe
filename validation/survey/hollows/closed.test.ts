/** Closed hollows: volumes of box, sphere and tube, elementary geometry. */
import type { Model } from '@coveline/model';
import { type ClosedHollow, survey } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { box, hollowBox } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { about, type Mesh, modelOf, movedModel, placed } from '../../shapes/mesh.ts';
import { revolve } from '../../shapes/revolve.ts';
import { difference } from '../../shapes/solid.ts';
import { cup } from '../../shapes/vessels.ts';
import { type Body, bored, modelOfBodies, orientations } from './drilled.ts';

async function closedIn(model: Model): Promise<readonly ClosedHollow[]> {
  const { result } = await survey(model, { measures: ['hollows'] });
  if (!result.measures.hollows) throw new Error('hollows were not measured');
  return result.measures.hollows.closed;
}

/** Two shells as one part: the outer, and the inner turned inside out. */
function hollowed(outer: Mesh, inner: Mesh): Mesh {
  const shift = outer.positions.length / 3;
  const turned = [...inner.triangles].map(
    (_, k, all) => all[k % 3 === 0 ? k : k % 3 === 1 ? k + 1 : k - 1] + shift,
  );
  return {
    positions: Float64Array.from([...outer.positions, ...inner.positions]),
    triangles: Uint32Array.from([...outer.triangles, ...turned]),
  };
}

function ball(radius: number, segments: number): Mesh {
  const steps = segments / 2;
  const profile = Array.from({ length: steps + 1 }, (_, k): [number, number] => {
    const a = Math.PI * (k / steps - 0.5);
    return [k === 0 || k === steps ? 0 : radius * Math.cos(a), radius * Math.sin(a)];
  });
  return revolve(profile, segments);
}

function expectVolume(volume_mL: number, expected_mm3: number): void {
  expect(Math.abs((volume_mL * 1000) / expected_mm3 - 1)).toBeLessThan(0.005);
}

describe.each([0, 17, 30, 45])('turned %s', (turn) => {
  test('square tube, level and inclined', async () => {
    for (const tiltY of [0, 4, 30, 90]) {
      const tube = modelOf([{ id: 'tube', mesh: hollowBox(500, 26, 26, 2), placement: placed({ tiltY }) }]);
      const closed = await closedIn(movedModel(tube, about(2, turn)));
      expect(closed).toHaveLength(1);
      expect(closed[0].parts).toEqual(['tube']);
      expectVolume(closed[0].volume_mL, 500 * 26 * 26);
    }
  });
});

test('hollow ball', async () => {
  const closed = await closedIn(modelOf([{ id: 'ball', mesh: hollowed(ball(52, 192), ball(50, 192)) }]));
  expect(closed).toHaveLength(1);
  expectVolume(closed[0].volume_mL, (4 / 3) * Math.PI * 50 ** 3);
});

test('a ball in a machine many times its size', async () => {
  const closed = await closedIn(
    modelOf([
      { id: 'ball', mesh: hollowed(ball(9, 96), ball(8, 96)), placement: placed({ move: [100, 50, 500] }) },
      { id: 'plate', mesh: box([0, 0, 0], [1500, 900, 4]) },
    ]),
  );
  expect(closed).toHaveLength(1);
  expectVolume(closed[0].volume_mL, (4 / 3) * Math.PI * 8 ** 3);
});

test('several parts seal a hollow together', async () => {
  const closed = await closedIn(
    modelOf([
      { id: 'pot', mesh: cup(40, 60, 2, 256) },
      { id: 'lid', mesh: box([-60, -60, 60], [60, 60, 64]) },
    ]),
  );
  expect(closed).toHaveLength(1);
  expect(closed[0].parts).toEqual(['lid', 'pot']);
  expectVolume(closed[0].volume_mL, Math.PI * 1600 * 60);
  expect(closed[0].at_mm[2]).toBeCloseTo(30, 0);
});

test.each([4, 8])('a hole of %s mm opens a tube', async (diameter) => {
  const tube = difference(
    hollowBox(500, 26, 26, 2),
    cylinder(diameter / 2, 20, 48, placed({ move: [200, 13, -10] })),
  );
  for (const turn of [0, 20, 40]) {
    expect(await closedIn(movedModel(modelOf([{ id: 'tube', mesh: tube }]), about(2, turn)))).toEqual([]);
  }
});

test('a solid box and an open tray have no hollow', async () => {
  expect(await closedIn(modelOf([{ id: 'box', mesh: box([0, 0, 0], [50, 50, 50]) }]))).toEqual([]);
  expect(await closedIn(modelOf([{ id: 'cup', mesh: cup(40, 60, 2, 64) }]))).toEqual([]);
});

test.each([
  ['the top', [200, 13, 20], [0, 0, 1]],
  ['a side', [200, 20, 13], [0, 1, 0]],
] as const)(
  'a vent of 1 mm through %s, narrower than the columns, opens a tube',
  async (_name, from, direction) => {
    const tube = bored('tube', hollowBox(500, 26, 26, 2), [{ from, direction, length: 20, radius: 0.5 }]);
    expect(await closedIn(modelOfBodies([tube]))).toEqual([]);
    const { result } = await survey(modelOfBodies([tube], { cad: false }), { measures: ['hollows'] });
    expect(result.measures.hollows?.closed).toEqual([]);
    expect(result.measures.hollows?.openMembers?.map(({ parts }) => parts.join())).toEqual(['tube']);
  },
);

describe.each([20, 60, 200])('a hollow box of %s mm', (size) => {
  test('its volume in three orientations and with noise', async () => {
    const body: Body = { id: 'box', mesh: hollowBox(size, 0.8 * size, 0.6 * size, 2), bores: [] };
    for (const placement of orientations) {
      for (const noise_mm of [0, 0.02]) {
        const closed = await closedIn(modelOfBodies([body], { cad: false, noise_mm, placement }));
        expect(closed).toHaveLength(1);
        expect(Math.abs((closed[0].volume_mL * 1000) / (0.48 * size ** 3) - 1)).toBeLessThan(0.006);
      }
    }
  });
});
