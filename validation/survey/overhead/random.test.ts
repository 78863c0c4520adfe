/** Random boxes over a mouth: shares by the measures against 40 000 points that are asked box by box. */
import { defaultSettings, measureOpenSky, measureOverhead } from '@coveline/survey';
import { expect, test } from 'vitest';
import { assemble } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import type { Mesh } from '../../shapes/mesh.ts';
import { filter, mouth } from '../sky/scene.ts';

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

type Vec = readonly [number, number, number];
type Box = readonly [Vec, Vec];

/** How far along a ray it enters a box, by its slabs; null when it passes by. */
function enters([low, high]: Box, p: Vec, d: Vec): number | null {
  let from = 0;
  let to = Infinity;
  for (let k = 0; k < 3; k++) {
    if (d[k] === 0) {
      if (p[k] < low[k] || p[k] > high[k]) return null;
      continue;
    }
    const [s, t] = [(low[k] - p[k]) / d[k], (high[k] - p[k]) / d[k]];
    from = Math.max(from, Math.min(s, t));
    to = Math.min(to, Math.max(s, t));
  }
  return from < to ? from : null;
}

/** Share of the disc of radius r, from one radius to another, from which each box is met first. */
function shares(boxes: readonly Box[], d: Vec, r0: number, r1: number): number[] {
  const n = 200;
  const out = boxes.map(() => 0);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      // Rings of equal area.
      const r = Math.sqrt(r0 * r0 + ((r1 * r1 - r0 * r0) * (i + 0.5)) / n);
      const a = (2 * Math.PI * (j + 0.5 + i * 0.618)) / n;
      const p: Vec = [r * Math.cos(a), r * Math.sin(a), 0];
      const met = boxes
        .map((b, k) => ({ k, t: enters(b, p, d) }))
        .filter((m) => m.t !== null)
        .sort((x, y) => x.t! - y.t!)[0];
      if (met) out[met.k] += 1 / (n * n);
    }
  }
  return out;
}

test.each([1, 2, 3, 4, 5, 6])('seed %i', (seed) => {
  const next = random(seed);
  const r = 35;
  const boxes: Box[] = Array.from({ length: 7 }, () => {
    const [x, y, z] = [(next() - 0.5) * 120, (next() - 0.5) * 120, 20 + next() * 250];
    const [a, b, c] = [4 + next() * 30, 4 + next() * 30, 2 + next() * 30];
    return [
      [x - a, y - b, z],
      [x + a, y + b, z + c],
    ];
  });
  const parts: Record<string, Mesh> = {};
  boxes.forEach(([low, high], k) => {
    parts[`box ${k}`] = box(low, high);
  });
  const model = assemble(parts);
  const over = measureOverhead(model, defaultSettings, { mouths: [mouth(r)], filters: [] }).measure.places;
  const straight = shares(boxes, [0, 0, 1], 0, r);
  const ring = shares(boxes, [0, 0, 1], r, r + defaultSettings.besideMouth_mm);
  boxes.forEach(([low], k) => {
    const place = over.find((p) => p.parts[0] === `box ${k}`);
    expect(Math.abs((place?.covers ?? 0) - straight[k])).toBeLessThan(0.005);
    expect(Math.abs((place?.beside ?? 0) - ring[k])).toBeLessThan(0.005);
    if (place) expect(place.height_mm).toBeCloseTo(low[2], 6);
  });

  const [u, v] = [(next() - 0.5) * 0.6, (next() - 0.5) * 0.6];
  const face = filter(2000, 600, { flow: [-u, -v, -1] });
  const [view] = measureOpenSky(model, defaultSettings, { mouths: [mouth(r)], filters: [face] }).measure
    .places;
  const upstream = shares(boxes, [u, v, 1], 0, r);
  boxes.forEach((_, k) => {
    const share = view.interruptedBy.find((i) => i.part === `box ${k}`)?.share ?? 0;
    expect(Math.abs(share - upstream[k])).toBeLessThan(0.005);
  });
  expect(Math.abs(1 - view.open - upstream.reduce((a, b) => a + b, 0))).toBeLessThan(0.005);
});
