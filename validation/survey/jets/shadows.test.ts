/** Jet reach against closed forms. All values follow from the drawing. */
import { describe, expect, test } from 'vitest';
import { assemble, insideOut, motion } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import { identity, transformed } from '../../shapes/mesh.ts';
import { arc, revolve } from '../../shapes/revolve.ts';
import { jets, moved, nozzle, sheet } from './scene.ts';

const turns = [
  { name: 'as drawn', by: identity },
  { name: 'tilted', by: motion([70, -30, 500], [1, 2, 0.5], 37) },
  { name: 'overhead', by: motion([0, 10, 20], [1, 0.1, 0], 171) },
] as const;

describe.each(turns)('$name', ({ by }) => {
  test.each([20, 200, 2000])('a hollow sphere of radius %i mm around a nozzle is seen altogether', (r) => {
    const profile = arc([0, 0], r, -90, 90, 24);
    const { model, nozzles } = moved(
      assemble({ sphere: insideOut(revolve(profile, 48)) }),
      [nozzle([r / 5, -r / 7, r / 9])],
      by,
    );
    const { measure, field } = jets(model, ...nozzles);
    // A polyhedron inscribed in the sphere: a little less than 4 pi r2.
    const whole = (4 * Math.PI * r * r) / 100;
    expect(measure.unseen_cm2).toBe(0);
    expect(measure.seen_cm2 / whole).toBeGreaterThan(0.99);
    expect(measure.seen_cm2).toBeLessThan(whole);
    expect(measure.places).toEqual([]);
    expect([...field].every((n) => n === 1 || Number.isNaN(n))).toBe(true);
  });

  test.each([
    [60, 1],
    [300, 1],
    [300, 40],
    [1500, 7],
    [1500, 150],
  ])(
    'a square baffle halfway up throws a square of twice its side: sheet of %i mm in %i fields',
    (s, fields) => {
      for (const [dx, turn] of [
        [0, 0],
        [s / 11, 29],
      ]) {
        const half = s / 8;
        const flat = box([-half, -half, s / 2], [half, half, s / 2 + s / 1e5]);
        const baffle = transformed(flat, motion([0, 0, 0], [0, 0, 1], turn));
        const { model, nozzles } = moved(
          assemble({ sheet: sheet(s, s, fields), baffle }),
          [nozzle([dx, 0, s])],
          by,
        );
        const { measure } = jets(model, ...nozzles);
        const shadow = measure.places.find((p) => p.parts[0] === 'sheet');
        // The lower edges of the baffle, half way down, throw the border: twice the side, less the share of its thickness.
        const expected = (s / 2) ** 2 / 100;
        expect((shadow?.area_cm2 ?? 0) / expected).toBeGreaterThan(0.998);
        expect((shadow?.area_cm2 ?? 0) / expected).toBeLessThan(1.002);
        expect(shadow?.shadedBy).toEqual(['baffle']);
        expect(shadow?.because).toBe('shaded');
        expect(measure.places.filter((p) => p.parts[0] === 'sheet').length).toBe(1);
      }
    },
  );
});
