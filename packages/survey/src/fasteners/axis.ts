/** A straight line in the frame of a shape, and what lies about it. */
import type { Vec3 } from '@coveline/model';
import { across } from '../corners/round.ts';
import type { Weld } from '../weld/weld.ts';

export interface Axis {
  readonly origin: Vec3;
  /** Unit. */
  readonly direction: Vec3;
}

/** Triangles about an axis, in its own frame: two coordinates across it, the third along it from its origin. */
export interface Around {
  /** Nine per triangle, mm. */
  readonly corners: Float64Array;
  /** Three per triangle, unit. */
  readonly normals: Float64Array;
  /** mm2 */
  readonly areas: Float64Array;
  /** Number of each triangle in its shape. */
  readonly triangle: Uint32Array;
}

/** Triangles of a shape that come within `reach_mm` of the axis, all along it. */
export function around(weld: Weld, axis: Axis, reach_mm: number): Around {
  const { normals, areas } = weld;
  const { u, v } = across(axis.direction);
  const w = axis.direction;
  const { kept, corners } = reached(weld, axis, reach_mm);
  const turned = new Float64Array(kept.length * 3);
  for (let i = 0; i < kept.length; i++) {
    const n = kept[i] * 3;
    turned[i * 3] = normals[n] * u[0] + normals[n + 1] * u[1] + normals[n + 2] * u[2];
    turned[i * 3 + 1] = normals[n] * v[0] + normals[n + 1] * v[1] + normals[n + 2] * v[2];
    turned[i * 3 + 2] = normals[n] * w[0] + normals[n + 1] * w[1] + normals[n + 2] * w[2];
  }
  return { corners, normals: turned, areas: Float64Array.from(kept, (t) => areas[t]), triangle: kept };
}

/** Numbers of the triangles in reach, and their corners in the frame of the axis. */
function reached({ positions: p, triangles, areas }: Weld, { origin, direction: w }: Axis, reach_mm: number) {
  const { u, v } = across(w);
  const [ox, oy, oz] = origin;
  const [ux, uy, uz] = u;
  const [vx, vy, vz] = v;
  // Every vertex once, for the shapes that are asked about many axes have many triangles.
  const n = p.length / 3;
  const a = new Float64Array(n);
  const b = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const x = p[i * 3] - ox;
    const y = p[i * 3 + 1] - oy;
    const z = p[i * 3 + 2] - oz;
    a[i] = x * ux + y * uy + z * uz;
    b[i] = x * vx + y * vy + z * vz;
  }
  const found = new Uint32Array(areas.length);
  let used = 0;
  for (let t = 0; t < areas.length; t++) {
    const [i, j, k] = [triangles[t * 3], triangles[t * 3 + 1], triangles[t * 3 + 2]];
    if (a[i] > reach_mm && a[j] > reach_mm && a[k] > reach_mm) continue;
    if (b[i] > reach_mm && b[j] > reach_mm && b[k] > reach_mm) continue;
    if (a[i] < -reach_mm && a[j] < -reach_mm && a[k] < -reach_mm) continue;
    if (b[i] < -reach_mm && b[j] < -reach_mm && b[k] < -reach_mm) continue;
    if (areas[t] > 0) found[used++] = t;
  }
  const kept = found.slice(0, used);
  const corners = new Float64Array(used * 9);
  for (let q = 0; q < used * 3; q++) {
    const i = triangles[kept[(q / 3) | 0] * 3 + (q % 3)];
    corners[q * 3] = a[i];
    corners[q * 3 + 1] = b[i];
    corners[q * 3 + 2] = (p[i * 3] - ox) * w[0] + (p[i * 3 + 1] - oy) * w[1] + (p[i * 3 + 2] - oz) * w[2];
  }
  return { kept, corners };
}

/** Where a line parallel to the axis, at (a, b) across it, meets the triangles: places along it, ascending, mm. */
export function crossings({ corners: c }: Around, a: number, b: number): number[] {
  const found: number[] = [];
  for (let t = 0; t < c.length; t += 9) {
    const [ax, ay, bx, by, cx, cy] = [
      c[t] - a,
      c[t + 1] - b,
      c[t + 3] - a,
      c[t + 4] - b,
      c[t + 6] - a,
      c[t + 7] - b,
    ];
    const w0 = bx * cy - by * cx;
    const w1 = cx * ay - cy * ax;
    const w2 = ax * by - ay * bx;
    const inside = (w0 >= 0 && w1 >= 0 && w2 >= 0) || (w0 <= 0 && w1 <= 0 && w2 <= 0);
    const whole = w0 + w1 + w2;
    if (inside && whole !== 0) found.push((w0 * c[t + 2] + w1 * c[t + 5] + w2 * c[t + 8]) / whole);
  }
  return found.sort((x, y) => x - y);
}
