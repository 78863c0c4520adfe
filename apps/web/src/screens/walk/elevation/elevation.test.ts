import fc from 'fast-check';
import { expect, test } from 'vitest';
import { scaleOf } from './scale.ts';
import { stack } from './stack.ts';

test('heights and positions are each other’s inverse, the floor below the top (seed 5)', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 20_000, noNaN: true }),
      fc.integer({ min: 200, max: 2000 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (tall, size, part) => {
        const scale = scaleOf(tall, size);
        expect(scale.height(scale.y(tall * part))).toBeCloseTo(tall * part, 6);
        expect(scale.y(0)).toBeGreaterThan(scale.y(tall));
      },
    ),
    { seed: 5 },
  );
});

test('labels stand at round heights with room between them', () => {
  const labels = scaleOf(1400, 800).ticks.filter((t) => t.labelled);
  expect(labels.slice(0, 3).map((t) => t.at)).toEqual([0, 100, 200]);
  const far = scaleOf(1400, 300);
  expect(far.y(0) - far.y(far.ticks.filter((t) => t.labelled)[1].at)).toBeGreaterThanOrEqual(44);
});

test('no mark is lost, rows do not overlap, and the chosen one is always shown (seed 6)', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 600, noNaN: true }), { minLength: 1, maxLength: 80 }),
      fc.nat(),
      (tops, n) => {
        const chosen = n % tops.length;
        const spots = stack(tops, chosen);
        const all = spots.flatMap((s) => [...s.shown, ...s.more]).sort((a, b) => a - b);
        expect(all).toEqual(tops.map((_, i) => i));
        expect(spots.some((s) => s.shown.includes(chosen))).toBe(true);
        const rows = spots.map((s) => s.top).sort((a, b) => a - b);
        rows.forEach((row, i) => {
          if (i > 0) expect(row - rows[i - 1]).toBeGreaterThanOrEqual(24);
        });
      },
    ),
    { seed: 6 },
  );
});
