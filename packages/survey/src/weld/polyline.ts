import type { Vec3 } from '@coveline/model';

/** Of a polyline, xyz per point. */
export function lineLength(points: Float64Array): number {
  let length = 0;
  for (let i = 3; i < points.length; i += 3) {
    length += Math.hypot(
      points[i] - points[i - 3],
      points[i + 1] - points[i - 2],
      points[i + 2] - points[i - 1],
    );
  }
  return length;
}

/** The point half-way along the longest piece. */
export function middleOf(pieces: readonly Float64Array[]): Vec3 {
  let best: Vec3 = [0, 0, 0];
  let longest = -1;
  for (const p of pieces) {
    const along = [0];
    for (let i = 3; i < p.length; i += 3) {
      along.push(along[i / 3 - 1] + Math.hypot(p[i] - p[i - 3], p[i + 1] - p[i - 2], p[i + 2] - p[i - 1]));
    }
    const whole = along[along.length - 1];
    if (whole <= longest) continue;
    longest = whole;
    const k = Math.max(
      1,
      along.findIndex((l) => l >= whole / 2),
    );
    const s = (whole / 2 - along[k - 1]) / (along[k] - along[k - 1] || 1);
    const at = (c: number) => p[k * 3 - 3 + c] + s * (p[k * 3 + c] - p[k * 3 - 3 + c]);
    best = [at(0), at(1), at(2)];
  }
  return best;
}

/** Lowest and highest corner of some polylines; infinite the wrong way round when there are none. */
export function boundsOf(pieces: readonly ArrayLike<number>[]): readonly [Vec3, Vec3] {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const piece of pieces) {
    for (let i = 0; i < piece.length; i++) {
      low[i % 3] = Math.min(low[i % 3], piece[i]);
      high[i % 3] = Math.max(high[i % 3], piece[i]);
    }
  }
  return [
    [low[0], low[1], low[2]],
    [high[0], high[1], high[2]],
  ];
}
