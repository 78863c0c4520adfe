import type { Vector3 } from 'three';

/** The corner nearest to the picked point, when it lies within `reach` of it; otherwise the point itself. */
export function snap(
  point: Vector3,
  corners: readonly Vector3[],
  reach: number,
): { point: Vector3; snapped: boolean } {
  let best: Vector3 | null = null;
  let least = reach;
  for (const corner of corners) {
    const distance = corner.distanceTo(point);
    if (distance <= least) {
      least = distance;
      best = corner;
    }
  }
  return best ? { point: best.clone(), snapped: true } : { point: point.clone(), snapped: false };
}
