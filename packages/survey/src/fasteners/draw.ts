import type { Placement, Shape } from '@coveline/model';
import { across } from '../corners/round.ts';
import type { Drawing } from '../result.ts';
import type { Axis } from './axis.ts';

/** Circles about an axis at the given places along it, in the frame of the model. */
export function drawRings(
  m: Placement,
  { origin, direction }: Axis,
  radius_mm: number,
  places: readonly number[],
): Drawing {
  const { u, v } = across(direction);
  const steps = 24;
  const lines = places.map((z) => {
    const line = new Float32Array((steps + 1) * 3);
    for (let i = 0; i <= steps; i++) {
      const angle = (2 * Math.PI * i) / steps;
      const [c, s] = [radius_mm * Math.cos(angle), radius_mm * Math.sin(angle)];
      const [x, y, w] = [0, 1, 2].map((k) => origin[k] + z * direction[k] + c * u[k] + s * v[k]);
      for (let k = 0; k < 3; k++) line[i * 3 + k] = m[k] * x + m[4 + k] * y + m[8 + k] * w + m[12 + k];
    }
    return line;
  });
  return { lines };
}

/** Writes `value` to the triangles of a shape that lie within `radius_mm` of the axis and reach between `from` and `to`. */
export function paint(
  { positions: p, triangles }: Shape,
  field: Float32Array,
  { origin, direction: d }: Axis,
  { from, to, radius_mm }: { readonly from: number; readonly to: number; readonly radius_mm: number },
  value: number,
): void {
  const slack = 1e-4 + 0.01 * radius_mm;
  for (let t = 0; t < field.length; t++) {
    let [low, high, widest] = [Infinity, -Infinity, 0];
    for (let c = 0; c < 3; c++) {
      const i = triangles[t * 3 + c] * 3;
      const [x, y, z] = [p[i] - origin[0], p[i + 1] - origin[1], p[i + 2] - origin[2]];
      const along = x * d[0] + y * d[1] + z * d[2];
      low = Math.min(low, along);
      high = Math.max(high, along);
      widest = Math.max(widest, x * x + y * y + z * z - along * along);
    }
    if (widest > (radius_mm + slack) ** 2) continue;
    // A face square to the axis at its end belongs to it as well.
    const touches = low < to - slack && high > from + slack;
    const closes = high - low < slack && low > from - slack && high < to + slack;
    if (touches || closes) field[t] = value;
  }
}
