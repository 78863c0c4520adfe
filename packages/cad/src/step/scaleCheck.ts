/** Holds the kernel's body against the vertices in the text: a wrong unit or a lost end shows as a wrong extent. */
import type { Shape } from '@coveline/model';
import type { Body } from './bodies.ts';
import { attributes, type Instance, instance, listOf, numberOf, refOf, refsOf } from './parse.ts';
import type { Part21Index } from './scan.ts';

/** Vertices looked at; enough to span a body, few enough to cost nothing. */
const mostVertices = 20_000;

/** A clause that tells the difference, or undefined where the body reaches to all its vertices and is not far larger. */
export function scaleMismatch(
  index: Part21Index,
  body: Body,
  mmPerUnit: number,
  shape: Shape,
): string | undefined {
  const points = verticesOf(index, body);
  if (points.length < 2) return undefined;
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < shape.positions.length; i++) {
    const axis = i % 3;
    if (shape.positions[i] < low[axis]) low[axis] = shape.positions[i];
    if (shape.positions[i] > high[axis]) high[axis] = shape.positions[i];
  }
  const slack = Math.max(1, Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2])) * 0.01;
  let outside = 0;
  for (const p of points) {
    if (p.some((x, axis) => x * mmPerUnit < low[axis] - slack || x * mmPerUnit > high[axis] + slack))
      outside++;
  }
  return outside > 0
    ? `${outside} of its ${points.length} vertices stand outside what the kernel made of it, so a piece or the scale is lost`
    : undefined;
}

/** End points of the edges of the body's faces, in file units. */
function verticesOf(index: Part21Index, body: Body): number[][] {
  const seen = new Set<number>();
  const out: number[][] = [];
  for (const face of body.faces) {
    const bounds = refsOf(attributes(instance(index, face), 'ADVANCED_FACE', 'FACE_SURFACE')[1]);
    for (const bound of bounds) {
      const loop = instance(index, refOf(attributes(instance(index, bound))[1]));
      for (const oriented of refsOf(attributes(loop, 'EDGE_LOOP')[1])) {
        const curve = instance(index, refOf(attributes(instance(index, oriented), 'ORIENTED_EDGE')[3]));
        for (const end of attributes(curve, 'EDGE_CURVE').slice(1, 3)) {
          if (seen.has(refOf(end))) continue;
          seen.add(refOf(end));
          const p = pointOf(index, instance(index, refOf(end)));
          if (p) out.push(p);
          if (out.length >= mostVertices) return out;
        }
      }
    }
  }
  return out;
}

function pointOf(index: Part21Index, vertex: Instance | undefined): number[] | undefined {
  const at = instance(index, refOf(attributes(vertex, 'VERTEX_POINT')[1]));
  const p = listOf(attributes(at, 'CARTESIAN_POINT')[1]).map(numberOf);
  return p.length === 3 && p.every(Number.isFinite) ? p : undefined;
}
