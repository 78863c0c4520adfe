import type { Vec3 } from '@coveline/model';
import type { Drawing } from '../result.ts';
import { across } from './across.ts';
import { along, minus, unit } from './vector.ts';

const segments = 48;

/** A channel as lines: its axis from mouth to end, and circles of its bore at the ends of every straight piece. */
export function pathDrawing(axis: readonly (readonly [Vec3, Vec3])[], radius: number): Drawing {
  const lines = axis.flatMap(([a, b]) => [
    Float32Array.of(...a, ...b),
    circle(a, unit(minus(b, a)), radius),
    circle(b, unit(minus(b, a)), radius),
  ]);
  return { lines };
}

/** A closed line around a point, square to a unit direction. */
export function circle(at: Vec3, direction: Vec3, radius: number): Float32Array {
  const [e1, e2] = across(direction);
  const line = new Float32Array(3 * (segments + 1));
  for (let k = 0; k <= segments; k++) {
    const angle = (2 * Math.PI * k) / segments;
    line.set(along(along(at, e1, radius * Math.cos(angle)), e2, radius * Math.sin(angle)), 3 * k);
  }
  return line;
}
