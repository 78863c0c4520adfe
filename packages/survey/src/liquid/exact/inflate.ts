import type { Solid } from './solid.ts';

/** A vertex at a sharp edge moves farther than its faces; never more than this many times as far. */
const mostStretch = 4;
/** Weight that keeps a vertex of a smooth face from sliding along it. */
const damping = 1e-3;

/**
 * The solid with its faces moved outwards by `by_mm`: each vertex goes where, as nearly as can be, all faces around
 * it have moved that far. Parts that are meant to touch, and miss each other by less than twice that, then do.
 */
export function inflated({ positions, triangles }: Solid, by_mm: number): Solid {
  const count = positions.length / 3;
  // Per vertex the sum over its faces of n n^T (six numbers) and of n, weighted by the angle at the vertex.
  const sums = new Float64Array(count * 9);
  for (let t = 0; t < triangles.length; t += 3) addFace(positions, triangles, t, sums);
  const out = positions.slice();
  for (let v = 0; v < count; v++) {
    const s = sums.subarray(v * 9, v * 9 + 9);
    const ease = damping * (s[0] + s[3] + s[5]);
    if (ease === 0) continue;
    const move = solve(s[0] + ease, s[1], s[2], s[3] + ease, s[4], s[5] + ease, s[6], s[7], s[8]);
    const stretch = Math.min(1, mostStretch / Math.hypot(move[0], move[1], move[2]));
    for (let k = 0; k < 3; k++) out[v * 3 + k] += by_mm * stretch * move[k];
  }
  return { positions: out, triangles };
}

function addFace(p: Float64Array, triangles: Uint32Array, t: number, sums: Float64Array): void {
  const edge = (from: number, to: number): [number, number, number] => {
    const a = triangles[t + from] * 3;
    const b = triangles[t + to] * 3;
    return [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
  };
  const [ab, ac] = [edge(0, 1), edge(0, 2)];
  const n = [ab[1] * ac[2] - ab[2] * ac[1], ab[2] * ac[0] - ab[0] * ac[2], ab[0] * ac[1] - ab[1] * ac[0]];
  const size = Math.hypot(n[0], n[1], n[2]);
  if (size === 0) return;
  const [x, y, z] = [n[0] / size, n[1] / size, n[2] / size];
  for (let c = 0; c < 3; c++) {
    const q = edge(c, (c + 1) % 3);
    const r = edge(c, (c + 2) % 3);
    const w = Math.atan2(size, q[0] * r[0] + q[1] * r[1] + q[2] * r[2]);
    const s = triangles[t + c] * 9;
    sums[s] += w * x * x;
    sums[s + 1] += w * x * y;
    sums[s + 2] += w * x * z;
    sums[s + 3] += w * y * y;
    sums[s + 4] += w * y * z;
    sums[s + 5] += w * z * z;
    sums[s + 6] += w * x;
    sums[s + 7] += w * y;
    sums[s + 8] += w * z;
  }
}

/** Solution of the symmetric system [a b c; b d e; c e f] x = [p q r]. */
function solve(
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
  p: number,
  q: number,
  r: number,
): [number, number, number] {
  const i = d * f - e * e;
  const j = c * e - b * f;
  const k = b * e - c * d;
  const det = a * i + b * j + c * k;
  return [
    (i * p + j * q + k * r) / det,
    (j * p + (a * f - c * c) * q + (b * c - a * e) * r) / det,
    (k * p + (b * c - a * e) * q + (a * d - b * b) * r) / det,
  ];
}
