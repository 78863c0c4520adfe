import { describe, expect, it } from 'vitest';
import { openEdges, signedVolume } from './check.ts';
import { fillHoles } from './fillHoles.ts';
import { weld } from './weld.ts';

/** A fan of n triangles around the z axis from a tip at height 1 down to a rim of radius 1, and the base below it. */
function cone(n: number): { positions: Float64Array; triangles: number[]; base: number[] } {
  const positions = new Float64Array((n + 2) * 3);
  positions[2] = 1;
  for (let i = 0; i < n; i++) {
    positions[(i + 2) * 3] = Math.cos((2 * Math.PI * i) / n);
    positions[(i + 2) * 3 + 1] = Math.sin((2 * Math.PI * i) / n);
  }
  const triangles: number[] = [];
  const base: number[] = [];
  for (let i = 0; i < n; i++) {
    const a = 2 + i;
    const b = 2 + ((i + 1) % n);
    triangles.push(0, a, b);
    base.push(1, b, a);
  }
  return { positions, triangles, base };
}

describe('holes in a mesh', () => {
  it('a closed mesh has none', () => {
    const { positions, triangles, base } = cone(12);
    const whole = Uint32Array.from([...triangles, ...base]);
    expect(openEdges(whole, 14)).toBe(0);
    expect(fillHoles(positions, whole).triangles).toHaveLength(0);
  });

  it.each([3, 12, 60])('a missing base of %i sides is closed flat, wound like the rest', (n) => {
    const { positions, triangles } = cone(n);
    const filling = fillHoles(positions, Uint32Array.from(triangles));
    expect(filling.rims).toHaveLength(1);
    expect(filling.triangles).toHaveLength((n - 2) * 3);
    const polygon = (n / 2) * Math.sin((2 * Math.PI) / n);
    expect(filling.area).toBeCloseTo(polygon, 9);
    const all = Uint32Array.from([...triangles, ...filling.triangles]);
    expect(openEdges(all, positions.length / 3)).toBe(0);
    expect(signedVolume(positions, all)).toBeCloseTo(polygon / 3, 9);
  });

  it('two holes that touch in a vertex are two holes', () => {
    const { positions, triangles, base } = cone(12);
    const all = Uint32Array.from([...triangles, ...base]);
    // Leaves out two triangles that share only the vertex 5.
    const kept: number[] = [];
    for (let i = 0; i < all.length; i += 3) {
      const t = [all[i], all[i + 1], all[i + 2]];
      if (
        !(t.includes(0) && t.includes(4) && t.includes(5)) &&
        !(t.includes(1) && t.includes(5) && t.includes(6))
      ) {
        kept.push(...t);
      }
    }
    expect(all.length - kept.length).toBe(6);
    const filling = fillHoles(positions, Uint32Array.from(kept));
    expect(filling.rims.map((rim) => rim.length)).toEqual([3, 3]);
    expect(openEdges(Uint32Array.from([...kept, ...filling.triangles]), 14)).toBe(0);
  });
});

describe('welding', () => {
  it('joins vertices at one place, drops flattened triangles, keeps round numbers with noise together', () => {
    const noise = 1e-12;
    const positions = Float64Array.from([
      0,
      0,
      0,
      1,
      0,
      0,
      0.05,
      1,
      0,
      1 + noise,
      -noise,
      noise,
      0.05 - noise,
      1,
      0,
      2,
      2,
      0,
    ]);
    const { triangles, kept, vertexOf } = weld(
      positions,
      Uint32Array.from([0, 1, 2, 3, 5, 4, 1, 3, 5]),
      1e-5,
    );
    expect([...vertexOf]).toEqual([0, 1, 2, 1, 2, 3]);
    expect([...triangles]).toEqual([0, 1, 2, 1, 3, 2]);
    expect([...kept]).toEqual([0, 1]);
  });

  it('keeps apart what is further apart than a cell, also far from the origin', () => {
    const positions = Float64Array.from([1e6, 0, 0, 1e6 + 1e-4, 0, 0, -1e6, 0, 0]);
    expect(weld(positions, Uint32Array.from([0, 1, 2]), 1e-5).positions).toHaveLength(9);
  });
});
