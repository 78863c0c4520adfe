/** Clearance at xyz, mm from the lattice's corner; where it is above `most_mm` anything above that will do. */
export type ClearanceAt = (x: number, y: number, z: number, most_mm: number) => number;

/** An edge between two looks may stand out by no more than this, mm. */
const missed_mm = 0.25;
/** A look that gains less is none, mm. */
const gain_mm = 0.05;
/** Looks are no closer together than this, mm. */
const shortest_mm = 0.2;

/** Where `narrowestAlong` found the least clearance last: xyz, mm from the lattice's corner. */
export const narrowest = new Float64Array(3);

/**
 * The least clearance along the straight line from one point to another, each xyz from `at`, in a list; their own
 * clearances are known. Looks at the middle, where that may miss something at the quarters, and closes in on the
 * least: enough for a wall across the line and for the throat of an opening, which are all that two neighbouring cells
 * have between them.
 */
export function narrowestAlong(
  clearanceAt: ClearanceAt,
  from: Float64Array,
  fromClearance: number,
  to: Float64Array,
  toClearance: number,
): number {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  let least = Math.min(fromClearance, toClearance);
  let at = fromClearance <= toClearance ? 0 : 1;
  const look = (s: number): void => {
    const d = clearanceAt(
      from[0] + (to[0] - from[0]) * s,
      from[1] + (to[1] - from[1]) * s,
      from[2] + (to[2] - from[2]) * s,
      least - gain_mm,
    );
    if (d >= least - gain_mm) return;
    least = d;
    at = s;
  };
  look(0.5);
  // Halfway between two looks an edge at the distance `least` comes nearer by this; a wall is seen from half as far.
  const isSeen = (half: number): boolean => (half * length) ** 2 < 2 * least * missed_mm;
  if (least <= length / 2 || !isSeen(0.25)) {
    look(0.25);
    look(0.75);
    for (let half = 0.125; !isSeen(half); half /= 2) {
      const middle = at;
      if (middle > half) look(middle - half);
      if (middle + half < 1) look(middle + half);
      if (half * length < shortest_mm) break;
    }
  }
  for (let k = 0; k < 3; k++) narrowest[k] = from[k] + (to[k] - from[k]) * at;
  return least;
}
