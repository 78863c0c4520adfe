import type { Shape } from '@coveline/model';
import { triangleNormals } from './corner-normals.ts';

/** An edge between two triangles is drawn when their normals differ by more than this, without CAD edges. */
const drawnFromCosine = Math.cos((28 * Math.PI) / 180);

/**
 * Edges to draw: two points per segment, xyz each, frame of the shape. The CAD edges where the model has them,
 * without the tangent ones, which an engineer's drawing leaves out too; otherwise borders and sharp turns.
 */
export function featureEdges(shape: Shape): Float32Array {
  return shape.cad ? cadEdges(shape) : sharpEdges(shape);
}

function cadEdges(shape: Shape): Float32Array {
  const edges = shape.cad!.edges.filter((e) => e.turn !== 'tangent');
  const segments = edges.reduce((sum, e) => sum + Math.max(0, e.points.length / 3 - 1), 0);
  const out = new Float32Array(segments * 6);
  let at = 0;
  for (const { points } of edges) {
    for (let i = 0; i + 5 < points.length; i += 3) {
      out.set(points.subarray(i, i + 6), at);
      at += 6;
    }
  }
  return out;
}

function sharpEdges({ positions, triangles }: Shape): Float32Array {
  const normals = triangleNormals(positions, triangles);
  const vertices = positions.length / 3;
  /** Edge to the triangle that was met first. Keys stay exact up to 9e7 vertices. */
  const seen = new Map<number, number>();
  const out: number[] = [];
  const push = (a: number, b: number) => {
    out.push(positions[a * 3], positions[a * 3 + 1], positions[a * 3 + 2]);
    out.push(positions[b * 3], positions[b * 3 + 1], positions[b * 3 + 2]);
  };
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const a = triangles[i + k];
      const b = triangles[i + ((k + 1) % 3)];
      const key = Math.min(a, b) * vertices + Math.max(a, b);
      const first = seen.get(key);
      if (first === undefined) {
        seen.set(key, i);
        continue;
      }
      seen.delete(key);
      const dot =
        normals[first] * normals[i] +
        normals[first + 1] * normals[i + 1] +
        normals[first + 2] * normals[i + 2];
      if (dot < drawnFromCosine) push(a, b);
    }
  }
  for (const key of seen.keys()) push(Math.floor(key / vertices), key % vertices);
  return new Float32Array(out);
}
