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
export function around(weld: Weld, { origin, direction }: Axis, reach_mm: number): Around {
  const { u, v } = across(direction);
  const { positions: p, triangles, normals, areas } = weld;
  const n = triangles.length / 3;
  const kept: number[] = [];
  const uvz: number[] = [];
  for (let t = 0; t < n; t++) {
    const low = [Infinity, Infinity];
    const high = [-Infinity, -Infinity];
    const at: number[] = [];
    for (let c = 0; c < 3; c++) {
      const i = triangles[t * 3 + c] * 3;
      const [x, y, z] = [p[i] - origin[0], p[i + 1] - origin[1], p[i + 2] - origin[2]];
      const a = x * u[0] + y * u[1] + z * u[2];
      const b = x * v[0] + y * v[1] + z * v[2];
      at.push(a, b, x * direction[0] + y * direction[1] + z * direction[2]);
      low[0] = Math.min(low[0], a);
      low[1] = Math.min(low[1], b);
      high[0] = Math.max(high[0], a);
      high[1] = Math.max(high[1], b);
    }
    if (low[0] > reach_mm || low[1] > reach_mm || high[0] < -reach_mm || high[1] < -reach_mm) continue;
    if (areas[t] === 0) continue;
    kept.push(t);
    uvz.push(...at);
  }
  const turned = new Float64Array(kept.length * 3);
  kept.forEach((t, i) => {
    const [x, y, z] = [normals[t * 3], normals[t * 3 + 1], normals[t * 3 + 2]];
    turned[i * 3] = x * u[0] + y * u[1] + z * u[2];
    turned[i * 3 + 1] = x * v[0] + y * v[1] + z * v[2];
    turned[i * 3 + 2] = x * direction[0] + y * direction[1] + z * direction[2];
  });
  return {
    corners: Float64Array.from(uvz),
    normals: turned,
    areas: Float64Array.from(kept, (t) => areas[t]),
    triangle: Uint32Array.from(kept),
  };
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
