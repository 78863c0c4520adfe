/** The room between the floor and the lowest part that hangs above it. */
import type { Extent } from './extent.ts';

export interface FloorClearance {
  /** Height of the floor: the lowest point of the machine, mm. */
  readonly floor_mm: number;
  /** Index of the lowest hanging part; null when everything stands on the floor. */
  readonly lowest: number | null;
  readonly clearance_mm: number;
  /** How far in the middle of the footprint lies from its nearer edges, mm. */
  readonly depth_mm: number;
}

/** A part whose lowest point is this close to the floor stands on it. */
const standing_mm = 2;

/**
 * The machine stands on its lowest points, +Z up. `carries` tells the parts that are feet or legs: what belongs to
 * them may reach the floor or hang low.
 */
export function floorClearance(
  extents: readonly Extent[],
  carries: (part: number) => boolean,
): FloorClearance | null {
  if (extents.length === 0) return null;
  const floor_mm = Math.min(...extents.map((e) => e.low[2]));
  let lowest: number | null = null;
  for (let p = 0; p < extents.length; p++) {
    const stands = extents[p].low[2] - floor_mm <= standing_mm;
    if (stands || carries(p)) continue;
    if (lowest === null || extents[p].low[2] < extents[lowest].low[2]) lowest = p;
  }
  const across = (axis: number) =>
    Math.max(...extents.map((e) => e.high[axis])) - Math.min(...extents.map((e) => e.low[axis]));
  return {
    floor_mm,
    lowest,
    clearance_mm: lowest === null ? 0 : extents[lowest].low[2] - floor_mm,
    depth_mm: Math.min(across(0), across(1)) / 2,
  };
}
