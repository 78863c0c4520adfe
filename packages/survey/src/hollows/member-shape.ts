/** Which shapes may be members: long, slender. In the frame of the shape. */
import type { Shape, Vec3 } from '@coveline/model';
import { smallestAxis } from '../corners/symmetric3.ts';
import { weldOf } from '../weld/weld.ts';
import { across } from './across.ts';
import { dot } from './vector.ts';

export interface MemberShape {
  /** The direction that its walls run along. */
  readonly axis: Vec3;
  readonly from: number;
  readonly to: number;
  /** The larger of its two widths. */
  readonly width: number;
}

/** A socket or a bush is no member. */
const leastLength_mm = 100;
/** A member is at least this many times as long as wide; a cup or a box is none. */
const slender = 3;

export function memberShape(shape: Shape): MemberShape | undefined {
  const { normals, areas } = weldOf(shape);
  const m = new Float64Array(6);
  for (let t = 0; t < areas.length; t++) {
    const [x, y, z] = [normals[t * 3], normals[t * 3 + 1], normals[t * 3 + 2]];
    m[0] += areas[t] * x * x;
    m[1] += areas[t] * x * y;
    m[2] += areas[t] * x * z;
    m[3] += areas[t] * y * y;
    m[4] += areas[t] * y * z;
    m[5] += areas[t] * z * z;
  }
  const axis = smallestAxis(m);
  const [e1, e2] = across(axis);
  const [[from, to], ...wide] = [axis, e1, e2].map((d) => extentAlong(shape, d));
  const width = Math.max(...wide.map(([low, high]) => high - low));
  return to - from >= leastLength_mm && to - from >= slender * width ? { axis, from, to, width } : undefined;
}

function extentAlong({ positions: p }: Shape, d: Vec3): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < p.length; i += 3) {
    const s = dot([p[i], p[i + 1], p[i + 2]], d);
    if (s < low) low = s;
    if (s > high) high = s;
  }
  return [low, high];
}
