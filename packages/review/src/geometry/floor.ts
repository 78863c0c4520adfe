/** The room between the floor and the lowest part that hangs above it. */
import type { Clearance, SurveyMeasures } from '@coveline/survey';
import type { Known } from '../parts/known.ts';
import type { Extent } from './extent.ts';

export interface FloorClearance {
  /** Height of the floor: the lowest point of the machine, mm. */
  readonly floor_mm: number;
  /** Index of the lowest hanging part; null when everything stands on the floor. */
  readonly lowest: number | null;
  readonly clearance_mm: number;
  /** The underside that the survey found; absent where only the boxes of the parts were looked at. */
  readonly place?: Clearance;
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

/** An underside of a part that stands on the floor hangs over it from this height on; what is lower is its own foot. */
const foot_mm = 10;

/**
 * The same by the undersides that the survey found, which also sees cross members of a body that stands. Where it
 * lists none, nothing hangs lower than its limit, and the boxes of the parts tell how high the lowest hangs.
 */
export function surveyedClearance(
  { extents, indexOf }: Known,
  { floor_mm, places }: NonNullable<SurveyMeasures['clearances']>,
  carries: (part: number) => boolean,
): FloorClearance | null {
  const byBoxes = floorClearance(extents, carries);
  if (!byBoxes) return null;
  let found: FloorClearance | null = null;
  for (const place of places) {
    const part = place.kind === 'floor' ? indexOf.get(place.parts[0]) : undefined;
    const clearance_mm = place.distance_mm;
    if (part === undefined || clearance_mm === undefined || carries(part)) continue;
    const stands = extents[part].low[2] - floor_mm <= standing_mm;
    if (stands && clearance_mm <= foot_mm) continue;
    if (found && found.clearance_mm <= clearance_mm) continue;
    found = { ...byBoxes, floor_mm, lowest: part, clearance_mm, place };
  }
  if (found) return found;
  const lifted = byBoxes.floor_mm - floor_mm;
  return { ...byBoxes, floor_mm, clearance_mm: byBoxes.clearance_mm + lifted };
}
