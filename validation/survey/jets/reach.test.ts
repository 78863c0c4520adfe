/** Cones, ranges, exposure and several nozzles against closed forms; random scenes against an oracle. */
import { defaultSettings, measureJetReach } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { assemble, insideOut, motion } from '../../shapes/assemble.ts';
import { box, hollowBox, tray } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { identity, type Mesh, transformed } from '../../shapes/mesh.ts';
import { jets, moved, nozzle, sheet } from './scene.ts';

const turns = [
  { name: 'as drawn', by: identity },
  { name: 'tilted', by: motion([70, -30, 500], [1, 2, 0.5], 37) },
  { name: 'lying', by: motion([0, 10, 20], [1, 0.1, 0], 95) },
] as const;

describe.each(turns)('$name', ({ by }) => {
  test.each([40, 400, 1600])('a cone over a sheet wets a disc of h tan of its half angle, h = %i mm', (h) => {
    for (const cone_deg of [30, 60, 90]) {
      const side = 4 * h;
      const { model, nozzles } = moved(
        assemble({ sheet: sheet(side, side, 3) }),
        [nozzle([0.1 * h, -0.07 * h, h], { cone_deg })],
        by,
      );
      const { measure } = jets(model, ...nozzles);
      const disc = Math.PI * (h * Math.tan((cone_deg * Math.PI) / 360)) ** 2;
      expect(Math.abs((measure.seen_cm2 * 100) / disc - 1)).toBeLessThan(0.003);
      expect(measure.seen_cm2 + measure.unseen_cm2).toBeCloseTo((side * side) / 100, 4);
      expect(measure.places.map((p) => p.because)).toEqual(['aside']);
      expect(measure.nozzles[0].farthest_mm).toBeLessThanOrEqual(
        h / Math.cos((cone_deg * Math.PI) / 360) + 1e-6,
      );
    }
  });

  test.each([40, 400, 1600])('a range r over a sheet at h = %i mm reaches a disc of sqrt(r2 - h2)', (h) => {
    const side = 4 * h;
    const { model, nozzles } = moved(
      assemble({ sheet: sheet(side, side, 5) }),
      [nozzle([0, 0, h], { range_mm: 1.5 * h })],
      by,
    );
    const { measure, field } = jets(model, ...nozzles);
    const disc = Math.PI * (2.25 - 1) * h * h;
    expect(Math.abs((measure.seen_cm2 * 100) / disc - 1)).toBeLessThan(0.003);
    expect(measure.unseen_cm2).toBe(0);
    expect((measure.beyond_cm2 + measure.seen_cm2) / ((side * side) / 100)).toBeCloseTo(1, 6);
    expect([...field].some((n) => Number.isNaN(n))).toBe(true);
  });

  test('of a block one side is seen, five are turned away, and what another part covers does not count', () => {
    const block = box([-50, -50, 0], [50, 50, 100]);
    const base = box([-200, -200, -20], [200, 200, 0]);
    const { model, nozzles } = moved(assemble({ block, base }), [nozzle([0, 0, 500])], by);
    const { measure } = jets(model, ...nozzles);
    const upper = measure.places.find((p) => p.parts[0] === 'block');
    // Four sides: the top is seen, the bottom lies on the base.
    expect(upper?.area_cm2).toBeCloseTo(400, 1);
    expect(upper?.because).toBe('turned');
    expect(upper?.shadedBy).toEqual(['block']);
    // The upper edge of the block throws a square of 50 * 500 / 400 on the base; the block covers its inner part.
    const shadow = measure.places.find((p) => p.parts[0] === 'base' && p.because === 'shaded');
    expect(Math.abs(((shadow?.area_cm2 ?? 0) / (125 * 125 - 100 * 100)) * 100 - 1)).toBeLessThan(0.005);
    expect(shadow?.shadedBy).toEqual(['block']);
  });
});

test('two baffles are two places; a second nozzle empties the shadow of the first', () => {
  const parts = {
    sheet: sheet(1000, 400, 1),
    left: box([-220, -30, 200], [-160, 30, 200.01]),
    right: box([160, -30, 200], [220, 30, 200.01]),
  };
  const one = jets(assemble(parts), nozzle([0, 0, 400])).measure;
  const shadows = one.places.filter((p) => p.parts[0] === 'sheet');
  expect(shadows.map((p) => p.shadedBy).sort()).toEqual([['left'], ['right']]);
  for (const p of shadows) expect(Math.abs(p.area_cm2 / 144 - 1)).toBeLessThan(0.004);
  const both = jets(assemble(parts), nozzle([0, 0, 400]), nozzle([0, 150, 400], { id: 'second' }));
  expect(both.measure.places.filter((p) => p.parts[0] === 'sheet')).toEqual([]);
  expect(Math.max(...both.field.filter((n) => !Number.isNaN(n)))).toBe(2);
  expect(both.measure.nozzles.map((n) => n.id)).toEqual(['nozzle', 'second']);
});

test('noise on the vertices does not break the shadow up', () => {
  let seed = 5;
  const next = () => {
    seed = (Math.imul(seed, 1103515245) + 12345) >>> 0;
    return seed / 2 ** 32;
  };
  const rough = sheet(600, 600, 60, () => (next() - 0.5) * 0.1);
  const baffle = box([-75, -75, 300], [75, 75, 300.01]);
  const shadows = jets(assemble({ rough, baffle }), nozzle([0, 0, 600])).measure.places.filter(
    (p) => p.parts[0] === 'rough',
  );
  expect(shadows.length).toBe(1);
  expect(Math.abs(shadows[0].area_cm2 / 900 - 1)).toBeLessThan(0.005);
});

test('a nozzle neither shades itself nor washes itself; what is wrong with one is told', () => {
  const ball = transformed(box([-10, -10, -10], [10, 10, 10]), motion([0, 0, 300]));
  const model = assemble({ sheet: sheet(500, 500, 1), ball });
  const { measure } = jets(model, nozzle([0, 0, 300], { parts: ['ball'] }));
  expect(measure.seen_cm2).toBeCloseTo(2500, 6);
  expect(measure.places.map((p) => p.parts[0])).toEqual(['ball']);
  const collar = box([-100, -100, 200], [100, 100, 205]);
  const own = jets(
    assemble({ sheet: sheet(500, 500, 1), collar, ball }),
    nozzle([0, 0, 300], { parts: ['ball', 'collar'] }),
  );
  expect(own.measure.seen_cm2).toBeCloseTo(2500, 6);
  expect(own.measure.places.map((p) => p.because)).toEqual(['turned', 'turned']);
  const shut = jets(model, nozzle([0, 0, 300]));
  // The inside of the ball is seen from its middle; nothing else is.
  expect(shut.notes.join(' ')).toMatch(/stands in the material of ball/);
  expect(jets(model).notes).toEqual(['Jet reach: no nozzle is given, so nothing was looked for.']);
  const faults = jets(model, nozzle([0, 0, 1], { cone_deg: 0 }), nozzle([0, 0, 1], { range_mm: -1 }));
  expect(faults.notes[0]).toMatch(/its cone of 0 degrees has no opening/);
  expect(faults.notes[1]).toMatch(/its range of -1 mm/);
});

/** Mulberry32, a small seeded generator (from memory). */
function random(seed: number): () => number {
  let s = seed;
  return () => {
    s = (s + 0x6d2b79f5) | 0;
    let t = Math.imul(s ^ (s >>> 15), 1 | s);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

type Box = readonly [readonly [number, number, number], readonly [number, number, number]];

/** Whether the straight line between two points passes through a box, by its slabs. */
function crosses([low, high]: Box, a: readonly number[], b: readonly number[]): boolean {
  let from = 0;
  let to = 1;
  for (let k = 0; k < 3; k++) {
    const d = b[k] - a[k];
    const [s, t] = [(low[k] - a[k]) / d, (high[k] - a[k]) / d];
    from = Math.max(from, Math.min(s, t));
    to = Math.min(to, Math.max(s, t));
  }
  return from < to;
}

test.each([1, 2, 3, 4, 5])(
  'boxes between three nozzles and a sheet, seed %i: the oracle asks 90 000 points',
  (seed) => {
    const next = random(seed);
    const boxes: Box[] = Array.from({ length: 8 }, () => {
      const [x, y, z] = [(next() - 0.5) * 500, (next() - 0.5) * 500, 30 + next() * 250];
      const [a, b, c] = [10 + next() * 80, 10 + next() * 80, 2 + next() * 40];
      return [
        [x - a, y - b, z],
        [x + a, y + b, z + c],
      ];
    });
    const nozzles = Array.from({ length: 3 }, (_, k) =>
      nozzle([(next() - 0.5) * 600, (next() - 0.5) * 600, 400 + next() * 200], {
        id: `n${k}`,
        direction: [(next() - 0.5) * 0.5, (next() - 0.5) * 0.5, -1],
        cone_deg: 40 + next() * 60,
        range_mm: 500 + next() * 300,
      }),
    );
    const side = 600;
    let seen = 0;
    const n = 300;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        const p = [side * ((i + 0.5) / n - 0.5), side * ((j + 0.5) / n - 0.5), 0];
        const isSeen = nozzles.some(({ at_mm, direction, cone_deg, range_mm }) => {
          const d = [0, 1, 2].map((k) => p[k] - at_mm[k]);
          const far = Math.hypot(...d);
          const along = d.reduce((sum, c, k) => sum + c * direction[k], 0) / far / Math.hypot(...direction);
          return (
            far <= range_mm &&
            along >= Math.cos((cone_deg * Math.PI) / 360) &&
            !boxes.some((b) => crosses(b, p, at_mm))
          );
        });
        if (isSeen) seen++;
      }
    }
    const parts: Record<string, Mesh> = { sheet: sheet(side, side, 1) };
    boxes.forEach(([low, high], k) => {
      parts[`box ${k}`] = box(low, high);
    });
    const { field, measure } = measureJetReach(assemble(parts), defaultSettings, { nozzles });
    const onBoxes = measureJetReach(
      assemble({ ...parts, sheet: sheet(1e-3, 1e-3, 1) }),
      { ...defaultSettings, jetSpacing_mm: 12 },
      { nozzles },
    ).measure.seen_cm2;
    expect(field.length).toBe(2 + 12 * boxes.length);
    const expected = ((seen / n / n) * side * side) / 100;
    expect(Math.abs(measure.seen_cm2 - onBoxes - expected) / 3600).toBeLessThan(0.005);
  },
);

test('air without a nozzle does not count: the inside of a hollow without one, the outside of a vessel with one', async () => {
  const { survey, emptySite } = await import('@coveline/survey');
  const hollow = hollowBox(300, 200, 100, 3);
  const look = async (at: readonly [number, number, number]) =>
    (
      await survey(assemble({ hollow, dish: transformed(tray(100, 100, 30, 2), motion([600, 0, 0])) }), {
        measures: ['jetReach'],
        site: { ...emptySite, nozzles: [nozzle(at)] },
      })
    ).result.measures.jetReach;
  const within = await look([150, 100, 50]);
  const inside_cm2 = (2 * (300 * 200 + 300 * 100 + 200 * 100)) / 100;
  expect(within?.seen_cm2).toBeCloseTo(inside_cm2, 1);
  expect(within?.unseen_cm2).toBe(0);
  const above = await look([150, 100, 900]);
  const outside_cm2 = (2 * (306 * 206 + 306 * 106 + 206 * 106)) / 100;
  const dish_cm2 =
    (2 * (104 * 104 + 2 * 104 * 32) - 104 * 104 + 100 * 100 + 4 * 100 * 30 + 104 * 104 - 100 * 100) / 100;
  expect((above?.seen_cm2 ?? 0) + (above?.unseen_cm2 ?? 0)).toBeLessThan(outside_cm2 + dish_cm2 + 1);
  expect((above?.seen_cm2 ?? 0) + (above?.unseen_cm2 ?? 0)).toBeGreaterThan(outside_cm2);
});

test('a rod throws its shadow on the wall of a vessel around the nozzle', () => {
  const r = 400;
  const wall = cylinder(r, 800, 256);
  const inner = insideOut(wall);
  const rod = cylinder(20, 700, 256, motion([200, 0, 50]));
  const { measure } = jets(assemble({ inner, rod }), nozzle([0, 0, 400]));
  const shadow = measure.places.find((p) => p.parts[0] === 'inner');
  expect(shadow?.shadedBy).toEqual(['rod']);
  // Seen from the nozzle the rod is 2 asin(20 / 200) wide; along the wall that is r times as much, over its height.
  const angle = 2 * Math.asin(0.1);
  const [low, high] = shadow!.bounds_mm;
  expect(high[1] - low[1]).toBeGreaterThan(r * 2 * Math.sin(angle / 2) * 0.99);
  expect(high[1] - low[1]).toBeLessThan(r * 2 * Math.sin(angle / 2) * 1.03);
});
