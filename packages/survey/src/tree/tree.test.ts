import type { Model } from '@coveline/model';
import { describe, expect, test } from 'vitest';
import { closestPoint, nearestOnTriangle, newNearest } from './closest.ts';
import { newMaterial, partAt } from './inside.ts';
import { anyHit, firstAlong, firstHit, newHit, newRay } from './ray.ts';
import { buildTree, type Tree } from './tree.ts';

const seed = 20261;

/** Uniform numbers in [0, 1): mulberry32. */
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
      triangles: Uint32Array.from(xyz.slice(0, xyz.length / 3), (_, k) => k),
      hash: `${i}`,
    })),
    parts: soups.map((_, i) => ({ id: `${i}`, name: `${i}`, assembly: [], shape: i, placement: still })),
    unit: 'mm',
    deviation_mm: 0,
    notes: [],
  };
}

function randomSoup(next: () => number, count: number): number[] {
  const xyz: number[] = [];
  for (let t = 0; t < count; t++) {
    const at = [next() * 100, next() * 100, next() * 100];
    const size = next() < 0.05 ? 60 : 6;
    for (let k = 0; k < 3; k++) for (const c of at) xyz.push(c + (next() - 0.5) * size);
  }
  return xyz;
}

/** Every triangle in turn, by Cramer's rule on the barycentric equations: another method than the tree's. */
function slowFirst(tree: Tree, o: number[], d: number[], crossing: number): number {
  let best = Infinity;
  for (let s = 0; s < tree.triangle.length; s++) {
    const p = (k: number) => Array.from(tree.corners.subarray(s * 9 + k * 3, s * 9 + k * 3 + 3));
    const [a, b, c] = [p(0), p(1), p(2)];
    const sub = (u: number[], v: number[]) => u.map((x, i) => x - v[i]);
    const det = (u: number[], v: number[], w: number[]) =>
      u[0] * (v[1] * w[2] - v[2] * w[1]) -
      u[1] * (v[0] * w[2] - v[2] * w[0]) +
      u[2] * (v[0] * w[1] - v[1] * w[0]);
    const [e1, e2, r, m] = [sub(b, a), sub(c, a), sub(o, a), d.map((x) => -x)];
    const whole = det(e1, e2, m);
    if (whole === 0 || -whole * crossing < 0) continue;
    const [u, v, t] = [det(r, e2, m) / whole, det(e1, r, m) / whole, det(e1, e2, r) / whole];
    if (u >= 0 && v >= 0 && u + v <= 1 && t > 0 && t < best) best = t;
  }
  return best;
}

describe(`tree against every triangle in turn, seed ${seed}`, () => {
  const next = random(seed);
  const tree = buildTree(modelOf(randomSoup(next, 300), randomSoup(next, 200)));
  const point = () => [next() * 120 - 10, next() * 120 - 10, next() * 120 - 10];

  test('first hits, any hits and choices of crossing agree on 600 rays', () => {
    const hit = newHit();
    let met = 0;
    for (let i = 0; i < 600; i++) {
      const o = point();
      const d = i % 10 === 0 ? [0, 0, 1] : [next() - 0.5, next() - 0.5, next() - 0.5];
      const expected = slowFirst(tree, o, d, 0);
      const found = firstHit(tree, o[0], o[1], o[2], d[0], d[1], d[2], Infinity, hit);
      expect(found).toBe(expected < Infinity);
      expect(anyHit(tree, o[0], o[1], o[2], d[0], d[1], d[2], Infinity)).toBe(found);
      if (!found) continue;
      met++;
      expect(hit.t).toBeCloseTo(expected, 8);
      expect(tree.part[tree.slotOf[hit.triangle]]).toBe(hit.part);
      expect(anyHit(tree, o[0], o[1], o[2], d[0], d[1], d[2], expected * 0.999)).toBe(false);
      const ray = newRay();
      [ray.ox, ray.oy, ray.oz] = o;
      [ray.dx, ray.dy, ray.dz] = d;
      ray.crossing = -1;
      const entering = slowFirst(tree, o, d, -1);
      expect(firstAlong(tree, ray, hit)).toBe(entering < Infinity);
      if (entering < Infinity) expect(hit.t).toBeCloseTo(entering, 8);
    }
    expect(met).toBeGreaterThan(100);
  });

  test('closest points agree on 400 queries and stay within their bound', () => {
    const out = newNearest();
    const at = new Float64Array(3);
    for (let i = 0; i < 400; i++) {
      const [x, y, z] = point();
      let expected = Infinity;
      for (let s = 0; s < tree.triangle.length; s++)
        expected = Math.min(expected, nearestOnTriangle(tree.corners, s * 9, x, y, z, at));
      expected = Math.sqrt(expected);
      expect(closestPoint(tree, x, y, z, Infinity, out)).toBe(true);
      expect(out.distance).toBeCloseTo(expected, 9);
      expect(Math.hypot(out.x - x, out.y - y, out.z - z)).toBeCloseTo(expected, 9);
      expect(closestPoint(tree, x, y, z, expected * 0.99, out)).toBe(false);
    }
  });

  test('the nearest point of a triangle is as near as the nearest of 5 151 points on it', () => {
    const corners = Float64Array.from({ length: 9 }, () => next() * 10);
    const at = new Float64Array(3);
    for (let i = 0; i < 40; i++) {
      const p = [next() * 30 - 10, next() * 30 - 10, next() * 30 - 10];
      let slow = Infinity;
      for (let a = 0; a <= 100; a++)
        for (let b = 0; a + b <= 100; b++) {
          let d = 0;
          for (let k = 0; k < 3; k++)
            d += (p[k] - (corners[k] * a + corners[3 + k] * b + corners[6 + k] * (100 - a - b)) / 100) ** 2;
          slow = Math.min(slow, Math.sqrt(d));
        }
      const fast = Math.sqrt(nearestOnTriangle(corners, 0, p[0], p[1], p[2], at));
      expect(fast).toBeLessThanOrEqual(slow + 1e-12);
      expect(fast).toBeGreaterThan(slow - 0.2);
    }
  });
});

/** An axis-parallel box, 12 triangles, wound for air outside; `air` inside when turned over. */
function boxSoup(low: number[], high: number[], turnedOver = false): number[] {
  const xyz: number[] = [];
  for (let axis = 0; axis < 3; axis++)
    for (const side of [0, 1]) {
      const [u, v] = [(axis + 1) % 3, (axis + 2) % 3];
      const corner = (a: number, b: number) => {
        const p = [0, 0, 0];
        p[axis] = side ? high[axis] : low[axis];
        p[u] = a ? high[u] : low[u];
        p[v] = b ? high[v] : low[v];
        return p;
      };
      const quad = [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)];
      if ((side === 0) !== turnedOver) quad.reverse();
      xyz.push(...quad[0], ...quad[1], ...quad[2], ...quad[0], ...quad[2], ...quad[3]);
    }
  return xyz;
}

test('a point lies in the part that holds it, also where parts overlap, and a cavity is air', () => {
  const hollow = [...boxSoup([0, 0, 0], [10, 10, 10]), ...boxSoup([2, 2, 2], [8, 8, 8], true)];
  const bar = boxSoup([-5, 4, 4], [5, 6, 6]);
  const material = newMaterial(buildTree(modelOf(hollow, bar)), Uint8Array.from([1, 1]));
  expect(partAt(material, 1, 5, 1)).toBe(0);
  expect(partAt(material, 5, 5, 3)).toBe(-1);
  expect(partAt(material, 4, 5, 5)).toBe(1);
  expect(partAt(material, 1, 5, 5)).toBe(0);
  expect(partAt(material, -2, 5, 5)).toBe(1);
  expect(partAt(material, 20, 5, 5)).toBe(-1);
  expect(partAt(material, 5, 5, -1)).toBe(-1);
});

test('no ray slips through the edges of a closed box', () => {
  const tree = buildTree(modelOf(boxSoup([-1, -1, -1], [1, 1, 1])));
  const hit = newHit();
  for (let i = 0; i < 200; i++) {
    const a = (i / 200) * 2 * Math.PI;
    // Along edges, diagonals and corners among others.
    const d = [Math.cos(a), Math.sin(a), i % 3 === 0 ? 0 : Math.abs(Math.cos(a))];
    expect(firstHit(tree, 0, 0, 0, d[0], d[1], d[2], Infinity, hit)).toBe(true);
  }
});

test('an empty model meets nothing', () => {
  const tree = buildTree(modelOf());
  expect(firstHit(tree, 0, 0, 0, 0, 0, 1, Infinity, newHit())).toBe(false);
  expect(closestPoint(tree, 0, 0, 0, Infinity, newNearest())).toBe(false);
});
