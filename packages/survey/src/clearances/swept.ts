/** The cylinder about the hinge in which a door moves. */
import type { Vec3 } from '@coveline/model';
import { dot, minus } from '../sky/vector.ts';
import type { Material } from '../tree/inside.ts';
import { type Axis, wayOf } from './arc.ts';
import { edgePoints } from './edge-points.ts';

/** Lowest and highest point of the door along the hinge. */
export function heights(
  { tree }: Material,
  doorParts: readonly number[],
  axis: Axis,
): readonly [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const p of doorParts) {
    for (const point of edgePoints(tree, p, Infinity, () => true)) {
      const h = dot(minus(point, axis.at), axis.along);
      low = Math.min(low, h);
      high = Math.max(high, h);
    }
  }
  return [low, high];
}

/** Whether a ball around the box of a part comes near the swept cylinder. */
export function isNear(
  boxes: Float64Array,
  part: number,
  axis: Axis,
  width: number,
  low: number,
  high: number,
): boolean {
  const b = part * 6;
  if (!(boxes[b] <= boxes[b + 3])) return false;
  const middle: Vec3 = [
    (boxes[b] + boxes[b + 3]) / 2,
    (boxes[b + 1] + boxes[b + 4]) / 2,
    (boxes[b + 2] + boxes[b + 5]) / 2,
  ];
  const reach =
    Math.hypot(boxes[b + 3] - boxes[b], boxes[b + 4] - boxes[b + 1], boxes[b + 5] - boxes[b + 2]) / 2;
  return nearCylinder(middle, reach, axis, width, low, high);
}

export function isWithinReach(
  c: Float64Array,
  i: number,
  axis: Axis,
  width: number,
  low: number,
  high: number,
): boolean {
  const middle: Vec3 = [
    (c[i] + c[i + 3] + c[i + 6]) / 3,
    (c[i + 1] + c[i + 4] + c[i + 7]) / 3,
    (c[i + 2] + c[i + 5] + c[i + 8]) / 3,
  ];
  let reach = 0;
  for (let k = i; k < i + 9; k += 3) {
    reach = Math.max(reach, Math.hypot(c[k] - middle[0], c[k + 1] - middle[1], c[k + 2] - middle[2]));
  }
  return nearCylinder(middle, reach, axis, width, low, high);
}

function nearCylinder(p: Vec3, reach: number, axis: Axis, width: number, low: number, high: number): boolean {
  const h = dot(minus(p, axis.at), axis.along);
  return h + reach >= low && h - reach <= high && wayOf(axis, p, 1).radius <= width + reach;
}
