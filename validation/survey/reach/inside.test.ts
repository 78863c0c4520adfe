/** Boxes in boxes, doors, sides, and a slow second method on random scenes. */
import { emptySite, survey } from '@coveline/survey';
import { expect, test } from 'vitest';
import { assemble } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import type { Mesh, Point } from '../../shapes/mesh.ts';
import { difference } from '../../shapes/solid.ts';
import { asked, limbOf } from './asked.ts';

const room = (low: Point, high: Point, wall: number, ...cut: Mesh[]): Mesh =>
  difference(
    box([low[0] - wall, low[1] - wall, low[2] - wall], [high[0] + wall, high[1] + wall, high[2] + wall]),
    box(low, high),
    ...cut,
  );

test('a box in a box: the hand gets into the outer one, and stops at the opening of the inner one', () => {
  const outer = room([0, 0, 0], [700, 700, 700], 4, box([280, 280, 600], [430, 430, 800]));
  const inner = room([250, 250, 100], [450, 450, 300], 4, box([300, 300, 250], [400, 400, 350]));
  const { measure } = asked(assemble({ outer, inner }), limbOf(120), {}, 15);
  // The inside of the inner box, and the middle of the 96 mm under it, above and below.
  expect(measure.places).toHaveLength(3);
  const [place, ...under] = measure.places;
  for (const { largest_mm } of under) expect(Math.abs(largest_mm - 96)).toBeLessThan(1.5);
  expect(place.parts).toEqual(['inner']);
  expect(place.because).toBe('narrow');
  expect(Math.abs(place.largest_mm - 100)).toBeLessThan(1);
  const through = measure.openings.find(({ id }) => id === place.opening);
  expect(through?.parts).toEqual(['inner']);
  // The inside, but for what a touch through the opening gets to: less than a third.
  expect(place.area_cm2).toBeLessThan(6 * 4 * 100);
  expect(place.area_cm2).toBeGreaterThan(6 * 4 * 100 * 0.66);
}, 120_000);

test('air that is sealed off does not count; the same box with its door away is reached', async () => {
  const shell = room([0, 0, 0], [400, 400, 400], 4, box([100, 100, 390], [300, 300, 410]));
  const door = box([95, 95, 404], [305, 305, 410]);
  const model = assemble({ shell, door });
  const request = { measures: ['handReach'] as const, settings: { reachSpacing_mm: 15 } };
  const shut = (await survey(model, { ...request, site: { ...emptySite, floor_mm: -1000 } })).result.measures
    .handReach;
  expect(shut?.unreached_cm2).toBe(0);
  const hinge = { at_mm: [95, 95, 404], axis: [0, 1, 0] } as const;
  const open = await survey(model, {
    ...request,
    site: { ...emptySite, floor_mm: -1000, doors: [{ id: 'lid', parts: ['door'], hinge }] },
  });
  const reach = open.result.measures.handReach;
  // At cells of 15 mm the ball may stand a cell short of a corner of three walls, whose tip is 104 of 119 mm from it.
  expect(reach?.unreached_cm2).toBeLessThan(0.004 * (reach?.reached_cm2 ?? 0));
  // Outside and inside of the shell, less the opening on both sides, and its edge.
  const shell_cm2 = (6 * 408 ** 2 + 6 * 400 ** 2 - 2 * 200 ** 2 + 4 * 200 * 4) / 100;
  expect(Math.abs((reach?.reached_cm2 ?? 0) / shell_cm2 - 1)).toBeLessThan(0.005);
  expect(open.result.notes.join(' ')).toContain('as if open');
  expect((shut?.reached_cm2 ?? 0) < shell_cm2 - 6 * 1600 + 1000).toBe(true);
}, 120_000);

/** Mulberry32 (from memory). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

type Block = readonly [Point, Point];

/** Distance to the nearest of some blocks, 0 inside. */
function clear(blocks: readonly Block[], p: readonly number[]): number {
  let least = Infinity;
  for (const [low, high] of blocks) {
    let square = 0;
    for (let k = 0; k < 3; k++) square += Math.max(low[k] - p[k], 0, p[k] - high[k]) ** 2;
    least = Math.min(least, square);
  }
  return Math.sqrt(least);
}

/** Middles of cells of 5 mm that a ball's centre gets to from outside, by a plain flood over exact distances. */
function slowReach(blocks: readonly Block[], radius: number, side: number) {
  const h = 5;
  const margin = Math.ceil((2 * radius) / h);
  const n = side / h + 2 * margin;
  const place = (c: number) =>
    [c % n, Math.floor(c / n) % n, Math.floor(c / n / n)].map((i) => (i - margin + 0.5) * h);
  const free = new Uint8Array(n ** 3);
  for (let c = 0; c < free.length; c++) free[c] = clear(blocks, place(c)) >= radius ? 1 : 0;
  const got: number[] = [];
  for (let c = 0; c < free.length; c++) {
    if (free[c] === 1 && place(c).some((x) => x > side || x < 0)) {
      free[c] = 2;
      got.push(c);
    }
  }
  for (let at = 0; at < got.length; at++) {
    for (const d of [1, -1, n, -n, n * n, -n * n]) {
      const c = got[at] + d;
      if (free[c] !== 1) continue;
      free[c] = 2;
      got.push(c);
    }
  }
  return got.filter((c) => place(c).every((x) => x > -radius * 2 && x < side + radius * 2)).map(place);
}

test.each([1, 2])(
  'random blocks against a flood of small cells and straight looks, seed %s',
  (seed) => {
    const next = random(seed);
    const side = 320;
    const size = 70;
    const blocks: Block[] = [];
    for (let n = 0; n < 9; n++) {
      const low = [0, 1, 2].map(() => next() * (side - 60));
      const high = low.map((c) => Math.min(side, c + 20 + next() * 180));
      blocks.push([low as unknown as Point, high as unknown as Point]);
    }
    const meshes = Object.fromEntries(blocks.map(([low, high], n) => [`block ${n}`, box(low, high)]));
    const { measure } = asked(assemble(meshes), limbOf(size), {
      access: [
        { id: 'a', outward: [1, 0, 0] },
        { id: 'b', outward: [-1, 0, 0] },
        { id: 'c', outward: [0, 1, 0] },
        { id: 'd', outward: [0, -1, 0] },
        { id: 'e', outward: [0, 0, 1] },
        { id: 'f', outward: [0, 0, -1] },
      ],
    });
    const centres = slowReach(blocks, size / 2, side);
    let exposed = 0;
    let reached = 0;
    for (let n = 0; n < 1500; n++) {
      // A random point of a random face, weighted by area through rejection.
      const [low, high] = blocks[Math.floor(next() * blocks.length)];
      const axis = Math.floor(next() * 3);
      const up = next() < 0.5;
      const [u, v] = [0, 1, 2].filter((k) => k !== axis);
      if (next() > ((high[u] - low[u]) * (high[v] - low[v])) / 200 ** 2) continue;
      const p = low.map((c, k) => (k === axis ? (up ? high[k] : c) : c + next() * (high[k] - c)));
      const q = p.map((c, k) => (k === axis ? c + (up ? 0.05 : -0.05) : c));
      if (clear(blocks, q) === 0) continue;
      exposed++;
      if (centres.some((c) => Math.hypot(...c.map((x, k) => x - q[k])) <= size && sees(blocks, q, c)))
        reached++;
    }
    const share = measure.reached_cm2 / (measure.reached_cm2 + measure.unreached_cm2);
    expect(exposed).toBeGreaterThan(200);
    // Three standard deviations of the sample, and the width of the cells of both methods.
    const slow = reached / exposed;
    const chance = 3 * Math.sqrt((slow * (1 - slow)) / exposed);
    expect(Math.abs(share - slow)).toBeLessThan(chance + 0.03);
  },
  120_000,
);

/** Nothing of the blocks stands between two points (slabs). */
function sees(blocks: readonly Block[], from: readonly number[], to: readonly number[]): boolean {
  return blocks.every(([low, high]) => {
    let enter = 0;
    let leave = 1;
    for (let k = 0; k < 3; k++) {
      const d = to[k] - from[k];
      const a = (low[k] - from[k]) / d;
      const b = (high[k] - from[k]) / d;
      enter = Math.max(enter, Math.min(a, b));
      leave = Math.min(leave, Math.max(a, b));
    }
    return enter >= leave;
  });
}
