/**
 * Closes the holes of a mesh with triangles between the vertices that are there.
 *
 * The kernel's mesher leaves out slivers narrower than the deviation now and then, and with them the mesh is no body
 * any more. Each hole is closed by the triangles of least total area over its rim (G. Barequet, M. Sharir, Filling gaps
 * in the boundary of a polyhedron, CAGD 12, 1995): dynamic programming, O(n³) in the length of the rim.
 */
export interface Filling {
  /** Three vertex indices per new triangle. */
  readonly triangles: Uint32Array;
  /** Per new triangle: index into `rims`. */
  readonly holeOfTriangle: Uint32Array;
  /** Vertices around each closed hole, in the winding of its triangles. */
  readonly rims: readonly (readonly number[])[];
  readonly area: number;
}

/** Rims longer than this are left open: the time grows with the cube, and no sliver has one. */
const longestRim = 400;

export function fillHoles(positions: Float64Array, triangles: Uint32Array): Filling {
  const rims = rimsOf(triangles, positions.length / 3);
  const out: number[] = [];
  const hole: number[] = [];
  const closed: number[][] = [];
  let area = 0;
  for (const rim of rims) {
    if (rim.length > longestRim) continue;
    const { corners, area: added } = leastArea(rim, positions);
    for (let i = 0; i < corners.length; i += 3) hole.push(closed.length);
    out.push(...corners);
    closed.push(rim);
    area += added;
  }
  return { triangles: Uint32Array.from(out), holeOfTriangle: Uint32Array.from(hole), rims: closed, area };
}

/** Loops of half-edges that miss their neighbour, reversed so that a triangle on them closes the mesh. */
function rimsOf(triangles: Uint32Array, vertexCount: number): number[][] {
  const balance = new Map<number, number>();
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const a = triangles[i + k];
      const b = triangles[i + ((k + 1) % 3)];
      const key = a < b ? a * vertexCount + b : b * vertexCount + a;
      balance.set(key, (balance.get(key) ?? 0) + (a < b ? 1 : -1));
    }
  }
  const next = new Map<number, number[]>();
  const add = (from: number, to: number) => {
    const list = next.get(from);
    if (list) list.push(to);
    else next.set(from, [to]);
  };
  for (const [key, n] of balance) {
    const a = Math.floor(key / vertexCount);
    const b = key % vertexCount;
    // One more a→b than b→a: the missing half-edges run b→a.
    for (let i = 0; i < n; i++) add(b, a);
    for (let i = 0; i < -n; i++) add(a, b);
  }
  const rims: number[][] = [];
  for (const start of next.keys()) {
    for (;;) {
      const rim = walkRim(start, next);
      if (!rim) break;
      if (rim.length >= 3) rims.push(rim);
    }
  }
  return rims;
}

/** Follows half-edges from `start`; a loop is cut off where the walk meets itself, so that rims are simple. */
function walkRim(start: number, next: Map<number, number[]>): number[] | undefined {
  const path: number[] = [];
  const at = new Map<number, number>();
  let vertex = start;
  for (;;) {
    const met = at.get(vertex);
    if (met !== undefined) {
      const rim = path.slice(met);
      // The tail before the loop goes back, to be walked again.
      for (let i = 0; i < met; i++) next.get(path[i])?.push(path[i + 1]);
      return rim;
    }
    const to = next.get(vertex)?.pop();
    if (to === undefined) return undefined;
    at.set(vertex, path.length);
    path.push(vertex);
    vertex = to;
  }
}

function leastArea(rim: readonly number[], p: Float64Array): { corners: number[]; area: number } {
  const n = rim.length;
  const cost = new Float64Array(n * n);
  const split = new Int32Array(n * n);
  for (let span = 2; span < n; span++) {
    for (let i = 0; i + span < n; i++) {
      const k = i + span;
      let best = Number.POSITIVE_INFINITY;
      for (let m = i + 1; m < k; m++) {
        const sum = cost[i * n + m] + cost[m * n + k] + triangleArea(p, rim[i], rim[m], rim[k]);
        if (sum < best) {
          best = sum;
          split[i * n + k] = m;
        }
      }
      cost[i * n + k] = best;
    }
  }
  const corners: number[] = [];
  const open: [number, number][] = [[0, n - 1]];
  while (open.length > 0) {
    const [i, k] = open.pop()!;
    if (k - i < 2) continue;
    const m = split[i * n + k];
    corners.push(rim[i], rim[m], rim[k]);
    open.push([i, m], [m, k]);
  }
  return { corners, area: cost[n - 1] };
}

function triangleArea(p: Float64Array, a: number, b: number, c: number): number {
  const ux = p[b * 3] - p[a * 3];
  const uy = p[b * 3 + 1] - p[a * 3 + 1];
  const uz = p[b * 3 + 2] - p[a * 3 + 2];
  const vx = p[c * 3] - p[a * 3];
  const vy = p[c * 3 + 1] - p[a * 3 + 1];
  const vz = p[c * 3 + 2] - p[a * 3 + 2];
  return Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2;
}
