import type { Vec3 } from '@coveline/model';
import type { Tree } from '../tree/tree.ts';

/**
 * Corners of a part's triangles and points along their edges, no farther apart than `pitch_mm`; each once, mm.
 * `wanted` spares the triangles that do not matter.
 */
export function edgePoints(
  { corners, slotOf, start }: Tree,
  part: number,
  pitch_mm: number,
  wanted: (corners: Float64Array, at: number) => boolean,
): readonly Vec3[] {
  const points: Vec3[] = [];
  const seen = new Set<string>();
  for (let t = start[part]; t < start[part + 1]; t++) {
    const c = slotOf[t] * 9;
    if (!wanted(corners, c)) continue;
    for (let k = 0; k < 9; k += 3) {
      const a = c + k;
      const b = c + ((k + 3) % 9);
      const length = Math.hypot(
        corners[b] - corners[a],
        corners[b + 1] - corners[a + 1],
        corners[b + 2] - corners[a + 2],
      );
      const key = edgeKey(corners, a, b);
      if (seen.has(key)) continue;
      seen.add(key);
      const steps = Math.max(1, Math.ceil(length / pitch_mm));
      for (let s = 0; s < steps; s++) {
        const f = s / steps;
        points.push([
          corners[a] + (corners[b] - corners[a]) * f,
          corners[a + 1] + (corners[b + 1] - corners[a + 1]) * f,
          corners[a + 2] + (corners[b + 2] - corners[a + 2]) * f,
        ]);
      }
    }
  }
  return points;
}

/** The same for both directions of an edge. */
function edgeKey(c: Float64Array, a: number, b: number): string {
  const one = `${c[a]} ${c[a + 1]} ${c[a + 2]}`;
  const other = `${c[b]} ${c[b + 1]} ${c[b + 2]}`;
  return one < other ? `${one} ${other}` : `${other} ${one}`;
}
