import type { Model, Vec3 } from '@coveline/model';
import { placedPositions } from '@coveline/model';

/** Lowest and highest corner of one part, mm, in the frame of the model. */
export interface Extent {
  readonly low: Vec3;
  readonly high: Vec3;
}

/** Extents of all parts, in the order of the model. A part without vertices collapses to the origin. */
export function extentsOf(model: Model): readonly Extent[] {
  return model.parts.map((_, p) => extentOf(placedPositions(model, p)));
}

/** `positions`: xyz per vertex, mm. */
export function extentOf(positions: Float64Array): Extent {
  if (positions.length === 0) return { low: [0, 0, 0], high: [0, 0, 0] };
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    const axis = i % 3;
    if (positions[i] < low[axis]) low[axis] = positions[i];
    if (positions[i] > high[axis]) high[axis] = positions[i];
  }
  return { low, high };
}

/** Whether two boxes come closer than `within_mm` in every direction. */
export function overlap(a: Extent, b: Extent, within_mm = 0): boolean {
  for (let i = 0; i < 3; i++) {
    if (a.low[i] > b.high[i] + within_mm || b.low[i] > a.high[i] + within_mm) return false;
  }
  return true;
}

/** The box round several boxes; at least one. */
export function around(boxes: readonly Extent[]): Extent {
  const low = [0, 1, 2].map((i) => Math.min(...boxes.map((b) => b.low[i]))) as [number, number, number];
  const high = [0, 1, 2].map((i) => Math.max(...boxes.map((b) => b.high[i]))) as [number, number, number];
  return { low, high };
}

export function boxVolume({ low, high }: Extent): number {
  return (high[0] - low[0]) * (high[1] - low[1]) * (high[2] - low[2]);
}

export function middle({ low, high }: Extent): Vec3 {
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
}
