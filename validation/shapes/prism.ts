import { type Mesh, meshOf } from './mesh.ts';

export type Corner = readonly [number, number];

/** An outline in the x-y plane (counter-clockwise, need not be convex) drawn upwards from z0 to z1. */
export function prism(outline: readonly Corner[], z0: number, z1: number): Mesh {
  const n = outline.length;
  const triangles: number[][] = [];
  for (const [a, b, c] of ears(outline)) triangles.push([a, c, b], [n + a, n + b, n + c]);
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    triangles.push([i, j, n + j], [i, n + j, n + i]);
  }
  const ring = (z: number) => outline.map(([x, y]) => [x, y, z] as const);
  return meshOf([...ring(z0), ...ring(z1)], triangles);
}

/** Ear clipping of a simple counter-clockwise outline. */
function ears(outline: readonly Corner[]): [number, number, number][] {
  const left = outline.map((_, i) => i);
  const out: [number, number, number][] = [];
  while (left.length > 3) {
    const at = left.findIndex((_, i) => isEar(outline, left, i));
    if (at < 0) throw new Error('The outline crosses itself or runs clockwise.');
    const n = left.length;
    out.push([left[(at + n - 1) % n], left[at], left[(at + 1) % n]]);
    left.splice(at, 1);
  }
  out.push([left[0], left[1], left[2]]);
  return out;
}

function isEar(p: readonly Corner[], left: readonly number[], at: number): boolean {
  const n = left.length;
  const [a, b, c] = [left[(at + n - 1) % n], left[at], left[(at + 1) % n]];
  if (twiceArea(p[a], p[b], p[c]) <= 0) return false;
  return left.every(
    (v) =>
      v === a ||
      v === b ||
      v === c ||
      twiceArea(p[a], p[b], p[v]) < 0 ||
      twiceArea(p[b], p[c], p[v]) < 0 ||
      twiceArea(p[c], p[a], p[v]) < 0,
  );
}

function twiceArea(a: Corner, b: Corner, c: Corner): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
}
