/**
 * Random manifolds of a bored block, held against an oracle that knows what was drilled: which bores meet, which end
 * inside the block, and how far each of their ends is from the flow.
 */
import { survey } from '@coveline/survey';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { box } from '../../shapes/box.ts';
import { type Bore, bored, modelOfBodies } from './drilled.ts';

const half = 60;
/** A main right through along x, and bores from it upwards and downwards at places that stay apart. */
const branch = fc.record({
  radius: fc.integer({ min: 3, max: 9 }),
  /** Times its bore, from the wall of the main; Infinity: right through the block. */
  ratio: fc.oneof(fc.constant(Infinity), fc.double({ min: 0.4, max: 2, noNaN: true })),
  up: fc.boolean(),
});
const block = fc.record({
  main: fc.integer({ min: 9, max: 14 }),
  branches: fc.array(branch, { minLength: 1, maxLength: 4 }),
});

test('every closed bore off the main is one dead leg with its lengths, every open one none (seed 11)', async () => {
  await fc.assert(
    fc.asyncProperty(block, fc.boolean(), async ({ main, branches }, cad) => {
      const bores: Bore[] = branches.map(({ radius, ratio, up }, k) => ({
        from: [-75 + 50 * k, 0, 0],
        direction: [0, 0, up ? 1 : -1],
        length: ratio === Infinity ? half + 10 : main + ratio * 2 * radius,
        radius,
      }));
      const run: Bore = { from: [-120, 0, 0], direction: [1, 0, 0], length: 240, radius: main };
      const body = bored('block', box([-110, -30, -half], [110, 30, half]), [run, ...bores]);
      const { result } = await survey(modelOfBodies([body], { cad }), {
        measures: ['hollows'],
        settings: { pitch_mm: 8 },
      });
      const { deadLegs = [], blind = [] } = result.measures.hollows ?? {};
      const drilled = branches.filter(({ ratio }) => ratio < Infinity);
      expect(blind).toEqual([]);
      expect(deadLegs).toHaveLength(drilled.length);
      const expected = drilled.map(({ ratio }) => ratio).sort((a, b) => a - b);
      const found = deadLegs.map(({ ratioFromWall }) => ratioFromWall).sort((a, b) => a - b);
      expected.forEach((ratio, k) => {
        expect(Math.abs(found[k] / ratio - 1)).toBeLessThan(cad ? 1e-4 : 0.05);
      });
    }),
    { seed: 11, numRuns: 40 },
  );
}, 60_000);
