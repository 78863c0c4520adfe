import type { Weld } from '../weld/weld.ts';
import { across, type Triple } from './round.ts';
import { smallestAxis } from './symmetric3.ts';

export interface FittedCylinder {
  readonly origin: Triple;
  readonly axis: Triple;
  readonly radius_mm: number;
  /** Root mean square distance of the vertices from it. */
  readonly spread_mm: number;
}

/**
 * Cylinder through the vertices of a set of triangles. The axis is the direction that all normals are least along;
 * the radius is that of the circle through the vertices seen along the axis (Kasa's linear fit, 1976, which is exact
 * for points on an arc). `undefined` when the vertices lie on a line when seen so.
 */
export function fitCylinder(weld: Weld, triangles: readonly number[]): FittedCylinder | undefined {
  const { positions: p, triangles: corners, normals, areas } = weld;
  const m = new Float64Array(6);
  const vertices = new Set<number>();
  for (const t of triangles) {
    const [x, y, z] = [normals[t * 3], normals[t * 3 + 1], normals[t * 3 + 2]];
    m[0] += areas[t] * x * x;
    m[1] += areas[t] * x * y;
    m[2] += areas[t] * x * z;
    m[3] += areas[t] * y * y;
    m[4] += areas[t] * y * z;
    m[5] += areas[t] * z * z;
    for (let k = 0; k < 3; k++) vertices.add(corners[t * 3 + k]);
  }
  const axis = smallestAxis(m);
  const { u, v } = across(axis);
  const n = vertices.size;
  const xs: number[] = [];
  const ys: number[] = [];
  for (const i of vertices) {
    const [x, y, z] = [p[i * 3], p[i * 3 + 1], p[i * 3 + 2]];
    xs.push(x * u[0] + y * u[1] + z * u[2]);
    ys.push(x * v[0] + y * v[1] + z * v[2]);
  }
  const mx = xs.reduce((s, x) => s + x, 0) / n;
  const my = ys.reduce((s, y) => s + y, 0) / n;
  let [sxx, sxy, syy, sxr, syr, srr] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const x = xs[i] - mx;
    const y = ys[i] - my;
    const r = x * x + y * y;
    sxx += x * x;
    sxy += x * y;
    syy += y * y;
    sxr += x * r;
    syr += y * r;
    srr += r;
  }
  const det = sxx * syy - sxy * sxy;
  if (!(det > 1e-9 * (sxx + syy) ** 2)) return undefined;
  const cx = (sxr * syy - syr * sxy) / (2 * det);
  const cy = (syr * sxx - sxr * sxy) / (2 * det);
  const radius_mm = Math.sqrt(cx * cx + cy * cy + srr / n);
  let square = 0;
  for (let i = 0; i < n; i++) square += (Math.hypot(xs[i] - mx - cx, ys[i] - my - cy) - radius_mm) ** 2;
  const origin = [0, 1, 2].map((k) => (mx + cx) * u[k] + (my + cy) * v[k]) as unknown as Triple;
  return { origin, axis, radius_mm, spread_mm: Math.sqrt(square / n) };
}
