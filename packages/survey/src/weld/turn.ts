import { following } from './pair.ts';
import type { Weld } from './weld.ts';

/**
 * How the surface turns at a half-edge, radians: positive over an outer edge, negative into an inside corner, 0 where
 * it is flat. `normals` are three per triangle (or per group, by `groupOf`), unit length.
 */
export function turnAt(weld: Weld, h: number, normals: Float64Array, groupOf?: Uint32Array): number {
  const { positions: p, triangles, twin } = weld;
  const t = (h / 3) | 0;
  const o = (twin[h] / 3) | 0;
  const m = (groupOf ? groupOf[t] : t) * 3;
  const n = (groupOf ? groupOf[o] : o) * 3;
  const a = triangles[h] * 3;
  const b = triangles[following(h)] * 3;
  const ex = p[b] - p[a];
  const ey = p[b + 1] - p[a + 1];
  const ez = p[b + 2] - p[a + 2];
  const length = Math.sqrt(ex * ex + ey * ey + ez * ez);
  if (length === 0) return 0;
  const cx = normals[m + 1] * normals[n + 2] - normals[m + 2] * normals[n + 1];
  const cy = normals[m + 2] * normals[n] - normals[m] * normals[n + 2];
  const cz = normals[m] * normals[n + 1] - normals[m + 1] * normals[n];
  const sine = (cx * ex + cy * ey + cz * ez) / length;
  const cosine = normals[m] * normals[n] + normals[m + 1] * normals[n + 1] + normals[m + 2] * normals[n + 2];
  return Math.atan2(sine, cosine);
}

export function edgeLength(weld: Weld, h: number): number {
  const { positions: p, triangles } = weld;
  const a = triangles[h] * 3;
  const b = triangles[following(h)] * 3;
  return Math.hypot(p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]);
}
