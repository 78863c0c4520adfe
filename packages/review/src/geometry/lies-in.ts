import type { Place } from '@coveline/survey';

/** Boxes of places come from different measures and agree to this. */
const tolerance_mm = 3;

/** Whether a place lies in the box of another one and on a part of it. */
export function liesIn(inner: Place, outer: Place): boolean {
  const [low, high] = inner.bounds_mm;
  const [from, to] = outer.bounds_mm;
  return (
    inner.parts.some((id) => outer.parts.includes(id)) &&
    [0, 1, 2].every((i) => from[i] - tolerance_mm <= low[i] && high[i] <= to[i] + tolerance_mm)
  );
}
