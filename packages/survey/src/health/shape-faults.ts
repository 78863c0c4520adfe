import type { Weld } from '../weld/weld.ts';

export interface Border {
  /** Sides of triangles without a neighbour. */
  readonly edges: number;
  readonly length_mm: number;
  /** Corners that lie in the middle of such a side. */
  readonly tJunctions: number;
}

export function borderOf({ triangles, positions, twin, areas, tolerance_mm }: Weld): Border {
  const starts: number[] = [];
  const ends: number[] = [];
  let length_mm = 0;
  for (let h = 0; h < triangles.length; h++) {
    if (twin[h] >= 0 || areas[(h / 3) | 0] === 0) continue;
    const a = triangles[h];
    const b = triangles[h % 3 === 2 ? h - 2 : h + 1];
    starts.push(a);
    ends.push(b);
    length_mm += distance(positions, a, b);
  }
  return { edges: starts.length, length_mm, tJunctions: junctions(positions, starts, ends, tolerance_mm) };
}

/** Corners of the border within `tolerance` of a border side and away from its ends. Sorted by x, so that few are tried. */
function junctions(
  positions: Float64Array,
  starts: readonly number[],
  ends: readonly number[],
  tolerance: number,
): number {
  const corners = [...new Set([...starts, ...ends])].sort((a, b) => positions[a * 3] - positions[b * 3]);
  const xs = corners.map((v) => positions[v * 3]);
  const found = new Set<number>();
  starts.forEach((a, i) => {
    const b = ends[i];
    const low = Math.min(positions[a * 3], positions[b * 3]) - tolerance;
    const high = Math.max(positions[a * 3], positions[b * 3]) + tolerance;
    for (let k = firstAtLeast(xs, low); k < xs.length && xs[k] <= high; k++) {
      const v = corners[k];
      if (v !== a && v !== b && liesWithin(positions, v, a, b, tolerance)) found.add(v);
    }
  });
  return found.size;
}

function firstAtLeast(sorted: readonly number[], value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

function liesWithin(p: Float64Array, v: number, a: number, b: number, tolerance: number): boolean {
  const length = distance(p, a, b);
  if (length <= 2 * tolerance) return false;
  let along = 0;
  for (let k = 0; k < 3; k++)
    along += ((p[v * 3 + k] - p[a * 3 + k]) * (p[b * 3 + k] - p[a * 3 + k])) / length;
  if (along <= tolerance || along >= length - tolerance) return false;
  const from = distance(p, a, v);
  return from * from - along * along <= tolerance * tolerance;
}

function distance(p: Float64Array, a: number, b: number): number {
  return Math.hypot(p[a * 3] - p[b * 3], p[a * 3 + 1] - p[b * 3 + 1], p[a * 3 + 2] - p[b * 3 + 2]);
}

/** Triangles lower than the weld tolerance over their longest side. */
export function slivers({ triangles, positions, areas, tolerance_mm }: Weld): number {
  let count = 0;
  for (let t = 0; t < areas.length; t++) {
    const [a, b, c] = [triangles[t * 3], triangles[t * 3 + 1], triangles[t * 3 + 2]];
    const longest = Math.max(distance(positions, a, b), distance(positions, b, c), distance(positions, c, a));
    if (2 * areas[t] < tolerance_mm * longest || longest === 0) count++;
  }
  return count;
}
