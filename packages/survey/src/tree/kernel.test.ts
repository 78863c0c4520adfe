import type { Model } from '@coveline/model';
import { describe, expect, test } from 'vitest';
import { closestPoint, nearestOnTriangle, newNearest } from './closest.ts';
import { newMaterial, partAt } from './inside.ts';
import { anyHits, closestPoints, firstHits, pointLength, rayLength } from './many.ts';
import { anyHit, firstAlong, firstHit, newHit, newRay, type Ray, someAlong } from './ray.ts';
import { buildTree, type Tree } from './tree.ts';

/** Uniform numbers in [0, 1): mulberry32 (from memory). */
function random(start: number): () => number {
  let a = start;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const still = Float64Array.from([1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1]);

function modelOf(...soups: number[][]): Model {
  return {
    shapes: soups.map((xyz, i) => ({
      positions: Float64Array.from(xyz),
      triangles: Uint32Array.from({ length: xyz.length / 3 }, (_, k) => k),
      hash: `${i}`,
    })),
    parts: soups.map((_, i) => ({ id: `${i}`, name: `${i}`, assembly: [], shape: i, placement: still })),
    unit: 'mm',
    deviation_mm: 0,
    notes: [],
  };
}

/**
 * Every triangle in turn, with the kernel's own rule of what a ray meets in double precision: whatever its boxes and its
 * single precision do, the answer must be this one. Returns slot and t, the first in model order of equally near ones.
 * (That the rule is right is for `tree.test.ts`, which has another.)
 */
function slowFirst(tree: Tree, ray: Ray): { slot: number; t: number } {
  const { corners, part } = tree;
  const o = [ray.ox, ray.oy, ray.oz];
  const d = [ray.dx, ray.dy, ray.dz];
  const size = d.map(Math.abs);
  const w = size[2] >= size[0] && size[2] >= size[1] ? 2 : size[1] >= size[0] ? 1 : 0;
  const [u, v] = [(w + 1) % 3, (w + 2) % 3];
  const cross = (p: number[], q: number[]) => [
    p[1] * q[2] - p[2] * q[1],
    p[2] * q[0] - p[0] * q[2],
    p[0] * q[1] - p[1] * q[0],
  ];
  const dot = (p: number[], q: number[]) => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
  let best = { slot: -1, t: ray.tMax };
  for (let slot = 0; slot < part.length; slot++) {
    const [a, b, c] = [0, 3, 6].map((k) => o.map((x, axis) => corners[slot * 9 + k + axis] - x));
    const [pa, pb, pc] = [a, b, c].map((p) => [p[u] - (d[u] / d[w]) * p[w], p[v] - (d[v] / d[w]) * p[w]]);
    const side = (p: number[], q: number[]) => p[0] * q[1] - p[1] * q[0];
    const sides = [side(pc, pb), side(pa, pc), side(pb, pa)];
    if (!(sides.every((s) => s >= 0) || sides.every((s) => s <= 0))) continue;
    const n = cross(
      b.map((x, k) => x - a[k]),
      c.map((x, k) => x - a[k]),
    );
    const along = dot(n, d);
    if (along === 0 || along * ray.crossing < 0) continue;
    const t = dot(n, a) / along;
    if (!(t > ray.tMin && t < best.t)) continue;
    if (t < ray.skipUntil && part[slot] === ray.skipPart) continue;
    best = { slot, t };
  }
  return best;
}

function slowNearest(tree: Tree, x: number, y: number, z: number): { slot: number; distance: number } {
  const at = new Float64Array(3);
  let best = { slot: -1, square: Infinity };
  for (let slot = 0; slot < tree.part.length; slot++) {
    const square = nearestOnTriangle(tree.corners, slot * 9, x, y, z, at);
    if (square < best.square) best = { slot, square };
  }
  return { slot: best.slot, distance: Math.sqrt(best.square) };
}

/** Triangles of all kinds: small, long, needles, points, lines, doubled ones; some share edges and corners. */
function wildSoup(next: () => number, count: number, scale: number, away: number): number[] {
  const xyz: number[] = [];
  const coordinate = () => (next() < 0.2 ? Math.floor(next() * 5) / 4 : next()) * scale + away;
  const corner = () => [coordinate(), coordinate(), coordinate()];
  while (xyz.length < count * 9) {
    const [a, b, c] = [corner(), corner(), corner()];
    const near = (p: number[], by: number) => p.map((x) => x + (next() - 0.5) * by * scale);
    const kind = Math.floor(next() * 8);
    if (kind === 0) xyz.push(...a, ...a, ...a);
    else if (kind === 1) xyz.push(...a, ...b, ...b);
    else if (kind === 2) xyz.push(...a, ...b, ...near(b, 1e-7));
    else if (kind === 3) xyz.push(...a, ...b, ...c, ...a, ...b, ...c);
    else if (kind === 4) xyz.push(...a, ...b, ...c, ...c, ...b, ...corner());
    else xyz.push(...a, ...near(a, 0.1), ...near(a, 0.1));
  }
  return xyz.slice(0, count * 9);
}

const scales: [string, number, number][] = [
  ['of a machine', 1000, 0],
  ['far from the origin', 1000, 250_000],
  ['finer than single precision', 1, 250_000],
  ['of a micrometre', 1e-3, 0],
  ['tiny', 1e-9, 0],
  ['huge', 1e9, 0],
];

describe.each(scales)('random triangles, coordinates %s, seed 91', (_name, scale, away) => {
  const next = random(91);
  const tree = buildTree(
    modelOf(
      wildSoup(next, 150, scale, away),
      [],
      wildSoup(next, 3, scale, away),
      wildSoup(next, 90, scale, away),
    ),
  );
  const somewhere = () => [0, 1, 2].map(() => (next() * 1.2 - 0.1) * scale + away);
  const corner = () => {
    const at = Math.floor(next() * tree.part.length) * 9 + Math.floor(next() * 3) * 3;
    return [tree.corners[at], tree.corners[at + 1], tree.corners[at + 2]];
  };

  /** Free ones, ones at corners and middles of edges, ones along axes and through whole coordinates. */
  const aimed = (i: number): Ray => {
    const ray = newRay();
    const from = i % 7 === 0 ? corner() : somewhere();
    let to = i % 3 === 0 ? corner() : somewhere();
    if (i % 5 === 0) {
      const axis = i % 3;
      to = from.map((x, k) => (k === axis ? x + (i % 2 ? scale : -scale) : x));
    }
    if (i % 11 === 0) to = corner().map((x, k) => (x + corner()[k]) / 2);
    const stretch = [1, 1 / scale, 1e-5, 1e5][i % 4];
    [ray.ox, ray.oy, ray.oz] = from;
    [ray.dx, ray.dy, ray.dz] = to.map((x, k) => (x - from[k]) * stretch);
    return ray;
  };

  test('first hits, any hits, crossings, bounds and left-out parts are those of every triangle in turn', () => {
    const hit = newHit();
    let met = 0;
    for (let i = 0; i < 500; i++) {
      const ray = aimed(i);
      ray.crossing = ([0, 0, -1, 1] as const)[i % 4];
      const free = slowFirst(tree, ray);
      if (i % 6 === 1 && free.slot >= 0) ray.tMin = free.t;
      if (i % 6 === 2 && free.slot >= 0) ray.tMax = free.t;
      if (i % 6 === 3) ray.tMin = -1;
      if (i % 6 === 4 && free.slot >= 0) [ray.skipPart, ray.skipUntil] = [tree.part[free.slot], free.t * 1.5];
      const expected = slowFirst(tree, ray);
      expect(firstAlong(tree, ray, hit)).toBe(expected.slot >= 0);
      expect(someAlong(tree, ray, newHit())).toBe(expected.slot >= 0);
      if (expected.slot < 0) continue;
      met++;
      expect([hit.slot, hit.triangle, hit.part]).toEqual([
        expected.slot,
        expected.slot,
        tree.part[expected.slot],
      ]);
      expect(hit.t).toBe(expected.t);
    }
    expect(met).toBeGreaterThan(150);
  });

  test('nearest points are those of every triangle in turn, and their bound is inclusive', () => {
    const out = newNearest();
    for (let i = 0; i < 300; i++) {
      const [x, y, z] = i % 5 === 0 ? corner() : somewhere();
      const expected = slowNearest(tree, x, y, z);
      expect(closestPoint(tree, x, y, z, Infinity, out)).toBe(true);
      expect([out.slot, out.distance]).toEqual([expected.slot, expected.distance]);
      if (expected.distance === 0) continue;
      expect(closestPoint(tree, x, y, z, expected.distance * (1 + 1e-9), out)).toBe(true);
      expect(closestPoint(tree, x, y, z, expected.distance * (1 - 1e-9), out)).toBe(false);
    }
  });

  test('many rays and points in one call answer as one by one', () => {
    const [hit, out] = [newHit(), newNearest()];
    const n = 1500;
    const rays = new Float64Array(n * rayLength);
    const points = new Float64Array(n * pointLength);
    for (let i = 0; i < n; i++) {
      const ray = aimed(i);
      rays.set([ray.ox, ray.oy, ray.oz, ray.dx, ray.dy, ray.dz, 0, Infinity], i * rayLength);
      points.set([...somewhere(), scale * 0.05], i * pointLength);
    }
    const first = firstHits(tree, rays);
    const any = anyHits(tree, rays);
    const closest = closestPoints(tree, points);
    for (let i = 0; i < n; i++) {
      const [ox, oy, oz, dx, dy, dz] = rays.subarray(i * rayLength);
      const found = firstHit(tree, ox, oy, oz, dx, dy, dz, Infinity, hit);
      expect([first.slot[i], first.t[i]]).toEqual(found ? [hit.slot, hit.t] : [-1, Infinity]);
      expect(any[i] === 1).toBe(found);
      expect(anyHit(tree, ox, oy, oz, dx, dy, dz, Infinity)).toBe(found);
      const [x, y, z, reach] = points.subarray(i * pointLength);
      const near = closestPoint(tree, x, y, z, reach, out);
      expect([closest.slot[i], closest.distance[i]]).toEqual(
        near ? [out.slot, out.distance] : [-1, Infinity],
      );
      if (near) expect([...closest.xyz.subarray(i * 3, i * 3 + 3)]).toEqual([out.x, out.y, out.z]);
    }
  });
});

test('rays that all but run along a triangle meet it as in double precision, seed 17', () => {
  const next = random(17);
  const ray = newRay();
  const hit = newHit();
  let met = 0;
  for (let i = 0; i < 400; i++) {
    const away = [0, 5000, 90_000][i % 3];
    const corner = () => [0, 1, 2].map(() => next() * 1000 + away);
    const [a, b, c] = [corner(), corner(), corner()];
    const u = b.map((x, k) => x - a[k]);
    const v = c.map((x, k) => x - a[k]);
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    const tilt = 10 ** (-3 - (i % 9)) / Math.hypot(...n);
    const [s, t, way] = [next() / 2, next() / 2, next() * 2 * Math.PI];
    const d = u.map((x, k) => (x * Math.cos(way) + v[k] * Math.sin(way)) / 1000 + n[k] * tilt);
    [ray.ox, ray.oy, ray.oz] = a.map((x, k) => x + u[k] * s + v[k] * t - d[k] * 400);
    [ray.dx, ray.dy, ray.dz] = d;
    const tree = buildTree(modelOf([...a, ...b, ...c]));
    const expected = slowFirst(tree, ray);
    expect([firstAlong(tree, ray, hit), someAlong(tree, ray, newHit())]).toEqual(
      expected.slot < 0 ? [false, false] : [true, true],
    );
    if (expected.slot < 0) continue;
    expect(hit.t).toBe(expected.t);
    met++;
  }
  expect(met).toBeGreaterThan(250);
});

/** A sphere of triangles that share all their edges, wound for air outside. */
function sphere(radius: number, steps: number, at: number[]): number[] {
  const p = (i: number, j: number) => {
    const [a, b] = [(i / steps) * Math.PI, ((j % (2 * steps)) / steps) * Math.PI];
    const r = i === 0 || i === steps ? 0 : Math.sin(a);
    return [r * Math.cos(b), r * Math.sin(b), Math.cos(a)].map((x, k) => x * radius + at[k]);
  };
  const xyz: number[] = [];
  for (let i = 0; i < steps; i++)
    for (let j = 0; j < 2 * steps; j++) {
      if (i > 0) xyz.push(...p(i, j), ...p(i + 1, j), ...p(i, j + 1));
      if (i < steps - 1) xyz.push(...p(i + 1, j), ...p(i + 1, j + 1), ...p(i, j + 1));
    }
  return xyz;
}

test.each([
  [0, 100],
  [400_000, 1],
])(
  'no ray from inside a sphere slips through its edges or corners, %d mm from the origin',
  (away, radius) => {
    const at = [away, -away / 3, away / 7];
    const tree = buildTree(modelOf(sphere(radius, 40, at)));
    const hit = newHit();
    for (let slot = 0; slot < tree.part.length; slot++)
      for (const [a, b] of [
        [0, 0],
        [0, 3],
        [3, 6],
      ]) {
        const d = [0, 1, 2].map(
          (k) => (tree.corners[slot * 9 + a + k] + tree.corners[slot * 9 + b + k]) / 2 - at[k],
        );
        expect(firstHit(tree, at[0], at[1], at[2], d[0], d[1], d[2], Infinity, hit)).toBe(true);
        expect(hit.t).toBeCloseTo(1, 8);
      }
  },
);

test('holders of points in 60 overlapping spheres are those of the distances to their middles, seed 5', () => {
  const next = random(5);
  const middles = Array.from({ length: 60 }, () => [next() * 300, next() * 300, next() * 300]);
  const radii = middles.map(() => 20 + next() * 40);
  const tree = buildTree(modelOf(...middles.map((m, i) => sphere(radii[i], 24, m))));
  const closed = Uint8Array.from(middles, (_, i) => (i % 9 === 4 ? 0 : 1));
  const material = newMaterial(tree, closed);
  let held = 0;
  for (let i = 0; i < 3000; i++) {
    const p = [next() * 300, next() * 300, next() * 300];
    const share = middles.map((m, k) => Math.hypot(p[0] - m[0], p[1] - m[1], p[2] - m[2]) / radii[k]);
    // Between the sphere and its facets nothing is said.
    if (share.some((s) => s > 0.98 && s < 1)) continue;
    const expected = share.findIndex((s, k) => s <= 0.98 && closed[k] === 1);
    expect(partAt(material, p[0], p[1], p[2])).toBe(expected);
    if (expected >= 0) held++;
  }
  expect(held).toBeGreaterThan(500);
});

test('a thousand triangles in one place are all found, and the first in model order is named', () => {
  const one = [0, 0, 0, 10, 0, 0, 0, 10, 0];
  const tree = buildTree(modelOf(Array.from({ length: 1000 }, () => one).flat()));
  const hit = newHit();
  expect(firstHit(tree, 1, 1, 5, 0, 0, -1, Infinity, hit)).toBe(true);
  expect([hit.slot, hit.t]).toEqual([0, 5]);
  const out = newNearest();
  expect(closestPoint(tree, 1, 1, 5, 5, out)).toBe(true);
  expect([out.slot, out.distance]).toEqual([0, 5]);
});

test('a coordinate that is no number, or beyond 1e12 mm, is refused by name of the part', () => {
  expect(() => buildTree(modelOf([0, 0, 0, Number.NaN, 0, 0, 0, 1, 0]))).toThrow(
    /part "0" has a corner at NaN mm/,
  );
  expect(() => buildTree(modelOf([0, 0, 0, 2e12, 0, 0, 0, 1, 0]))).toThrow(/within 1e12 mm/);
});

test('an empty model and one of empty parts meet, hold and are near nothing', () => {
  for (const tree of [buildTree(modelOf()), buildTree(modelOf([], []))]) {
    expect(firstHit(tree, 0, 0, 0, 0, 0, 1, Infinity, newHit())).toBe(false);
    expect(someAlong(tree, newRay(), newHit())).toBe(false);
    expect(closestPoint(tree, 0, 0, 0, Infinity, newNearest())).toBe(false);
    expect(partAt(newMaterial(tree, new Uint8Array(2)), 0, 0, 0)).toBe(-1);
    expect(firstHits(tree, new Float64Array(rayLength)).slot[0]).toBe(-1);
  }
});
