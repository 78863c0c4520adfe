/** Branches off a tube in which liquid flows by: lengths and ratios as they were drawn. */
import type { Model } from '@coveline/model';
import { emptySite, type Site, type SurveyMeasures, survey } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { box } from '../../shapes/box.ts';
import { type Body, type Bore, bored, modelOfBodies, orientations, rod, tubes } from './drilled.ts';

type Hollows = Required<NonNullable<SurveyMeasures['hollows']>>;

async function hollowsIn(model: Model, mains: Site['mains'] = []): Promise<Hollows> {
  // Coarse columns: they are for closed hollows only.
  const { result } = await survey(model, {
    measures: ['hollows'],
    site: { ...emptySite, mains },
    settings: { pitch_mm: 8 },
  });
  return result.measures.hollows as Hollows;
}

const wall = 1.5;
/** A straight tube along x of a radius, 8 radii to both sides of the middle. */
const run = (radius: number): Bore => ({
  from: [-8 * radius, 0, 0],
  direction: [1, 0, 0],
  length: 16 * radius,
  radius,
});
const disc = (id: string, from: Bore['from'], direction: Bore['direction'], radius: number): Body => ({
  id,
  mesh: rod({ from, direction, length: 3, radius }),
  bores: [],
});

/** A branch up from the middle of a tube, `leg` mm from the tube's inner wall to a disc on its end. */
function cappedTee(radius: number, branch: number, leg: number): Body[] {
  return [
    tubes(
      'tee',
      [run(radius), { from: [0, 0, 0], direction: [0, 0, 1], length: radius + leg, radius: branch }],
      wall,
    ),
    disc('cap', [0, 0, radius + leg], [0, 0, 1], branch + wall),
  ];
}

// Branch as wide as the main, and narrower ones.
describe.each([
  [13, 13],
  [25, 13],
  [5, 3],
])('main of radius %s mm, branch of radius %s mm', (radius, branch) => {
  test.each([0.5, 1, 1.5, 2, 3, 6])('%s bores long', async (ratio) => {
    const tee = cappedTee(radius, branch, ratio * 2 * branch);
    for (const placement of orientations) {
      for (const drawn of [{}, { cad: false }, { cad: false, noise_mm: 0.02 }]) {
        const { deadLegs, blind } = await hollowsIn(modelOfBodies(tee, { ...drawn, placement }));
        const tolerance = drawn.cad === false ? 0.05 : 1e-4;
        expect(blind).toEqual([]);
        expect(deadLegs).toHaveLength(1);
        const [leg] = deadLegs;
        const near = (value: number, expected: number) =>
          expect(Math.abs(value / expected - 1), `${value} for ${expected}`).toBeLessThan(tolerance);
        near(leg.ratioFromWall, ratio);
        near(leg.ratioFromAxis, ratio + radius / (2 * branch));
        near(leg.fromWall_mm, ratio * 2 * branch);
        near(leg.bore_mm, 2 * branch);
        near(leg.main_mm, 2 * radius);
        expect(leg.parts).toEqual(['cap', 'tee']);
        expect(leg.from).toBe(drawn.cad === false ? 'triangles' : 'cad');
      }
    }
  });
});

const radius = 13;
const tee = (leg: number) => cappedTee(radius, radius, leg);

test('a cap 60 mm from the axis of a 50 mm tube: 2.31 bores of 26 mm from the axis, 1.35 from the wall, by hand', async () => {
  const { deadLegs } = await hollowsIn(modelOfBodies(cappedTee(25, 13, 35)));
  expect(deadLegs[0].ratioFromAxis).toBeCloseTo(2.31, 2);
  expect(deadLegs[0].ratioFromWall).toBeCloseTo(1.35, 2);
});

test('an open branch is no dead leg', async () => {
  const [open] = tee(50);
  expect((await hollowsIn(modelOfBodies([open]))).deadLegs).toEqual([]);
});

test('tee, seal, collar and cap as four parts', async () => {
  const [body] = tee(40);
  const seal = bored('seal', rod({ from: [0, 0, 53], direction: [0, 0, 1], length: 2, radius: 20 }), [
    { from: [0, 0, 52], direction: [0, 0, 1], length: 4, radius: 13.2 },
  ]);
  const collar = bored('collar', rod({ from: [0, 0, 50], direction: [0, 0, 1], length: 8, radius: 26 }), [
    { from: [0, 0, 49], direction: [0, 0, 1], length: 10, radius: 20.2 },
  ]);
  const model = modelOfBodies([body, seal, collar, disc('cap', [0, 0, 55], [0, 0, 1], 20)]);
  const { deadLegs } = await hollowsIn(model);
  expect(deadLegs).toHaveLength(1);
  expect(deadLegs[0].parts).toEqual(['cap', 'seal', 'tee']);
  expect(deadLegs[0].fromWall_mm).toBeCloseTo(42, 3);
  expect(deadLegs[0].bore_mm).toBe(26);
});

test('a seal that is not drawn leaves a slit: the leg is told, and that it was taken as sealed', async () => {
  const [body] = tee(40);
  const { deadLegs } = await hollowsIn(modelOfBodies([body, disc('cap', [0, 0, 54.5], [0, 0, 1], 20)]));
  expect(deadLegs).toHaveLength(1);
  expect(deadLegs[0].fromWall_mm).toBeCloseTo(41.5, 3);
  expect(deadLegs[0].caveats?.join()).toContain('slit of 1.50 mm');
});

test('a disc far before the open end closes nothing', async () => {
  const [body] = tee(40);
  expect((await hollowsIn(modelOfBodies([body, disc('disc', [0, 0, 65], [0, 0, 1], 40)]))).deadLegs).toEqual(
    [],
  );
});

test('where the straight tube is capped and liquid turns into the branch, the capped end is the dead leg', async () => {
  const [body] = tee(40);
  const { deadLegs } = await hollowsIn(modelOfBodies([body, disc('cap', [104, 0, 0], [1, 0, 0], 20)]));
  expect(deadLegs).toHaveLength(1);
  expect(deadLegs[0].fromAxis_mm).toBeCloseTo(104, 3);
  expect(deadLegs[0].fromWall_mm).toBeCloseTo(91, 3);
  expect(deadLegs[0].caveats?.join()).toContain('it turns here');
});

test('with two of three ends capped nothing flows through, unless the main is named', async () => {
  const [body, cap] = tee(40);
  const model = modelOfBodies([body, cap, disc('end', [104, 0, 0], [1, 0, 0], 20)]);
  const unnamed = await hollowsIn(model);
  expect(unnamed.deadLegs).toEqual([]);
  expect(unnamed.blind.map(({ depth_mm }) => depth_mm).sort((a, b) => a - b)[0]).toBeCloseTo(40, 3);
  const { deadLegs } = await hollowsIn(model, [{ id: 'main', parts: ['tee'] }]);
  expect(deadLegs.map(({ fromWall_mm }) => fromWall_mm)).toEqual([expect.closeTo(40, 3)]);
  expect(deadLegs[0].caveats).toBeUndefined();
});

test('opposite branches are two dead legs; a branch of a branch counts from the main', async () => {
  const bores: Bore[] = [
    run(radius),
    { from: [0, 0, 0], direction: [0, 0, 1], length: 60, radius: 8 },
    { from: [0, 0, 0], direction: [0, 0, -1], length: 45, radius: 8 },
    { from: [0, 0, 40], direction: [0, 1, 0], length: 30, radius: 4 },
  ];
  const model = modelOfBodies([
    tubes('cross', bores, wall),
    disc('up', [0, 0, 60], [0, 0, 1], 10),
    disc('down', [0, 0, -45], [0, 0, -1], 10),
    disc('side', [0, 30, 40], [0, 1, 0], 6),
  ]);
  const { deadLegs } = await hollowsIn(model);
  const lengths = new Map(
    deadLegs.map(({ parts, fromAxis_mm }) => [parts.filter((p) => p !== 'cross').join(), fromAxis_mm]),
  );
  expect(lengths.get('up')).toBeCloseTo(60, 3);
  expect(lengths.get('down')).toBeCloseTo(45, 3);
  expect(lengths.get('side')).toBeCloseTo(70, 3);
  expect(lengths.size).toBe(3);
});

test('a slanting branch: along its axis from wall and axis', async () => {
  const c = Math.SQRT1_2;
  const bores: Bore[] = [run(radius), { from: [0, 0, 0], direction: [c, 0, c], length: 90, radius: 8 }];
  const { deadLegs } = await hollowsIn(
    modelOfBodies([tubes('lateral', bores, wall), disc('cap', [90 * c, 0, 90 * c], [c, 0, c], 10)]),
  );
  expect(deadLegs).toHaveLength(1);
  expect(deadLegs[0].fromAxis_mm).toBeCloseTo(90, 3);
  expect(deadLegs[0].fromWall_mm).toBeCloseTo(90 - radius / c, 3);
});

test('an instrument that ends in the branch closes it; one that ends flush leaves none', async () => {
  const [body] = tee(40);
  const probe = (tip: number): Body => ({
    id: 'probe',
    mesh: rod({ from: [0, 0, tip], direction: [0, 0, 1], length: 120, radius }),
    bores: [],
  });
  const { deadLegs } = await hollowsIn(modelOfBodies([body, probe(33)]));
  expect(deadLegs.map(({ fromWall_mm }) => fromWall_mm)).toEqual([expect.closeTo(20, 3)]);
  expect(deadLegs[0].parts).toEqual(['probe', 'tee']);
  expect((await hollowsIn(modelOfBodies([body, probe(radius)]))).deadLegs).toEqual([]);
});

test('a thin probe in a capped branch stands in it', async () => {
  const [body, cap] = tee(40);
  const probe: Body = {
    id: 'probe',
    mesh: rod({ from: [0, 0, 30], direction: [0, 0, 1], length: 60, radius: 5 }),
    bores: [],
  };
  const { deadLegs } = await hollowsIn(modelOfBodies([body, cap, probe]));
  expect(deadLegs).toHaveLength(1);
  expect(deadLegs[0].fromWall_mm).toBeCloseTo(40, 3);
});

test('a shut valve in a branch: a disc across its bore', async () => {
  const [body] = tee(60);
  const plate: Body = {
    id: 'flap',
    mesh: rod({ from: [0, 0, 45], direction: [0, 0, 1], length: 4, radius }),
    bores: [],
  };
  const { deadLegs } = await hollowsIn(modelOfBodies([body, plate]));
  expect(deadLegs.map(({ fromWall_mm }) => fromWall_mm)).toEqual([expect.closeTo(32, 3)]);
});

test('a blind hole drilled into a solid block from the wall of its bore', async () => {
  const block = bored('block', box([-60, -30, -30], [60, 30, 30]), [
    { from: [-70, 0, 0], direction: [1, 0, 0], length: 140, radius: 10 },
    { from: [0, 0, 0], direction: [0, 0, 1], length: 25, radius: 4 },
  ]);
  const { deadLegs, blind } = await hollowsIn(modelOfBodies([block]));
  expect(blind).toEqual([]);
  expect(deadLegs.map(({ fromWall_mm }) => fromWall_mm)).toEqual([expect.closeTo(15, 3)]);
});
