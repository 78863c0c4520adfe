import type { Stars } from './merge-tree.ts';
import type { Solid } from './solid.ts';

/**
 * Whether air, not material, lies straight below a vertex that none of its neighbours lies below.
 *
 * The straight way down misses the faces around the vertex; on which side of them it lies follows from the face, or
 * pair of faces, nearest to it in direction: the sign of the pseudonormal (Baerentzen and Aanaes, 2005).
 */
export function airLiesBelow({ positions, triangles }: Solid, star: Stars, vertex: number): boolean {
  const normal = [0, 0, 0];
  let nearest = -Infinity;
  let up = 0;
  for (let k = star.first[vertex]; k < star.first[vertex + 1]; k++) {
    const t = star.triangles[k] * 3;
    const turn = triangles[t] === vertex ? 0 : triangles[t + 1] === vertex ? 1 : 2;
    const q = direction(positions, vertex, triangles[t + ((turn + 1) % 3)]);
    const r = direction(positions, vertex, triangles[t + ((turn + 2) % 3)]);
    normal[0] = q[1] * r[2] - q[2] * r[1];
    normal[1] = q[2] * r[0] - q[0] * r[2];
    normal[2] = q[0] * r[1] - q[1] * r[0];
    const size = Math.hypot(normal[0], normal[1], normal[2]);
    if (size < 1e-14) continue;
    const closeness = closestToDown(q, r, normal, size);
    if (closeness > nearest + 1e-12) {
      nearest = closeness;
      up = normal[2] / size;
    } else if (closeness > nearest - 1e-12) {
      up += normal[2] / size;
    }
  }
  return up < 0;
}

/** Largest cosine with the way down among the directions from the corner into the triangle. */
function closestToDown(
  q: readonly number[],
  r: readonly number[],
  normal: readonly number[],
  size: number,
): number {
  const atEdges = Math.max(-q[2], -r[2]);
  // Foot of the way down in the plane of the face: inside the corner if it is a positive mix of both edges.
  const nz = normal[2] / size;
  const foot = [(nz * normal[0]) / size, (nz * normal[1]) / size, (nz * normal[2]) / size - 1];
  const length = Math.hypot(foot[0], foot[1], foot[2]);
  if (length < 1e-14) return atEdges;
  const fromQ = triple(q, foot, normal);
  const toR = triple(foot, r, normal);
  return fromQ > 0 && toR > 0 ? Math.max(atEdges, length) : atEdges;
}

function triple(a: readonly number[], b: readonly number[], n: readonly number[]): number {
  return (
    (a[1] * b[2] - a[2] * b[1]) * n[0] +
    (a[2] * b[0] - a[0] * b[2]) * n[1] +
    (a[0] * b[1] - a[1] * b[0]) * n[2]
  );
}

function direction(positions: Float64Array, from: number, to: number): [number, number, number] {
  const x = positions[to * 3] - positions[from * 3];
  const y = positions[to * 3 + 1] - positions[from * 3 + 1];
  const z = positions[to * 3 + 2] - positions[from * 3 + 2];
  const length = Math.hypot(x, y, z) || 1;
  return [x / length, y / length, z / length];
}
