import { exactClearance, type ReachSpace } from './space.ts';

/** Halving ends when it gains less than this, or the pieces are this short, mm. */
const gain_mm = 0.02;
const shortest_mm = 0.2;

/** Where `narrowestAlong` found the least clearance last: xyz, mm from the lattice's corner. */
export const narrowest = new Float64Array(3);

/**
 * The least clearance along the straight line from one point to another, each xyz from `at`, in a list; their own
 * clearances are known. Looks at the quarters and closes in on the least: enough for a wall across the line and for
 * the throat of an opening, which are all that two neighbouring cells have between them.
 */
export function narrowestAlong(
  space: ReachSpace,
  from: Float64Array,
  fromClearance: number,
  to: Float64Array,
  toClearance: number,
): number {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  let least = Math.min(fromClearance, toClearance);
  let at = fromClearance <= toClearance ? 0 : 1;
  const look = (s: number): void => {
    const d = exactClearance(
      space,
      from[0] + (to[0] - from[0]) * s,
      from[1] + (to[1] - from[1]) * s,
      from[2] + (to[2] - from[2]) * s,
      least,
    );
    if (d >= least) return;
    least = d;
    at = s;
  };
  for (let s = 0.25; s < 1; s += 0.25) look(s);
  for (let half = 0.125; half * length > shortest_mm; half /= 2) {
    const before = least;
    const middle = at;
    if (middle > half) look(middle - half);
    if (middle + half < 1) look(middle + half);
    if (before - least < gain_mm && half < 0.125) break;
  }
  for (let k = 0; k < 3; k++) narrowest[k] = from[k] + (to[k] - from[k]) * at;
  return least;
}
