/**
 * Columns against the exact merge tree, two methods that share no code but the shapes: on random solids full of
 * undercuts, holes and ledges, and on seams.
 */
import { loadManifoldUnion, survey } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { box, tray } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { type Mesh, modelOf, placed, transformed } from '../../shapes/mesh.ts';
import { difference, union } from '../../shapes/solid.ts';
import { poolsIn } from './pools-in.ts';

/** Mulberry32, a small seeded generator (from memory). */
function random(seed: number): () => number {
  return () => {
    seed = (seed + 0x6d2b79f5) | 0;
    let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A block with pockets and bores at all angles. */
function undercut(next: () => number): Mesh {
  const somewhere = () =>
    placed({
      turn: next() * 360,
      tiltX: (next() - 0.5) * 120,
      tiltY: (next() - 0.5) * 120,
      move: [next() * 160, next() * 120, 10 + next() * 80],
    });
  const pockets = Array.from({ length: 7 }, (_, k) =>
    k % 2 === 0
      ? transformed(box([-15, -10, 0], [15, 10, 60]), somewhere())
      : cylinder(5 + next() * 12, 90, 32, somewhere()),
  );
  return difference(box([0, 0, 0], [160, 120, 90]), ...pockets);
}

const seeds = Array.from({ length: 20 }, (_, k) => k + 1);

test(`random solids, seeds ${seeds[0]} to ${seeds.at(-1)}`, { timeout: 120_000 }, async () => {
  const off: number[] = [];
  for (const seed of seeds) {
    const mesh = undercut(random(seed));
    const { result } = await survey(modelOf([{ id: 'block', mesh }]), {
      measures: ['standingLiquid'],
      exact: loadManifoldUnion,
    });
    for (const { exact_mL, columns_mL, volume_mL } of result.measures.standingLiquid?.places ?? []) {
      expect(volume_mL).toBe(exact_mL);
      if (exact_mL !== undefined && columns_mL !== undefined && Math.max(exact_mL, columns_mL) > 0.5) {
        off.push(Math.abs(columns_mL - exact_mL) / Math.max(exact_mL, columns_mL));
      }
    }
    // What the columns find and the exact method does not is told, and would count as wholly off.
    for (const note of result.notes) if (note.includes('they drain')) off.push(1);
  }
  off.sort((a, b) => a - b);
  expect(off.length).toBeGreaterThan(20);
  expect(off[Math.floor(off.length * 0.5)]).toBeLessThan(0.005);
  expect(off[Math.floor(off.length * 0.9)]).toBeLessThan(0.03);
});

describe('a seam between floor and wall', () => {
  const withSeam = (gap: number) => {
    const walls = difference(tray(200, 100, 30, 2), box([-5, -5, -5], [205, 105, 0]));
    return modelOf([
      { id: 'floor', mesh: box([-2, -2, -2 - gap], [202, 102, -gap]) },
      { id: 'walls', mesh: walls },
    ]);
  };

  test('below the contact distance it holds', async () => {
    const { total_mL } = await poolsIn(withSeam(0.01));
    expect(Math.abs(total_mL / 600 - 1)).toBeLessThan(0.005);
  });

  test('above it, it drains', async () => {
    const { total_mL } = await poolsIn(withSeam(0.05));
    expect(total_mL).toBe(0);
  });

  test('the contact distance is a setting', async () => {
    const { total_mL } = await poolsIn(withSeam(0.05), { contact_mm: 0.1 });
    expect(Math.abs(total_mL / 600 - 1)).toBeLessThan(0.005);
  });
});

test('parts that overlap count once', async () => {
  const one = union(tray(100, 80, 20, 2), box([30, 30, -1], [50, 50, 40]));
  const two = modelOf([
    { id: 'tray', mesh: tray(100, 80, 20, 2) },
    { id: 'post', mesh: box([30, 30, -1], [50, 50, 40]) },
  ]);
  const expected = 100 * 80 * 20 - 20 * 20 * 20;
  for (const model of [two, modelOf([{ id: 'one', mesh: one }])]) {
    expect(Math.abs(((await poolsIn(model)).total_mL * 1000) / expected - 1)).toBeLessThan(0.005);
  }
});
