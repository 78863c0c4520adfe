import { exactStep, lethalRate } from '../lethality.ts';

export interface SensorResult {
  readonly name: string;
  /** Minutes. */
  readonly exact: number;
  readonly trapezoid: number;
  readonly least: number;
  readonly greatest: number;
  /** Minutes at or above the reference temperature. */
  readonly above: number;
  /** Minutes without data, which count nothing. */
  readonly gap: number;
  readonly samples: number;
}

/**
 * Lethality of one sensor. `seconds` rising, `celsius` with NaN for a missing value. Between two values more than
 * `longestGap` seconds apart nothing is counted: the safe side.
 */
export function evaluateSensor(
  name: string,
  seconds: Float64Array,
  celsius: Float64Array,
  reference: number,
  z: number,
  longestGap: number,
): SensorResult {
  let exact = 0;
  let trapezoid = 0;
  let above = 0;
  let gap = 0;
  let samples = 0;
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  let last = -1;
  let rate = 0;
  for (let i = 0; i < seconds.length; i++) {
    const value = celsius[i];
    if (Number.isNaN(value)) continue;
    samples++;
    if (value < least) least = value;
    if (value > greatest) greatest = value;
    const next = lethalRate(value, reference, z);
    const duration = (last < 0 ? seconds[i] - seconds[0] : seconds[i] - seconds[last]) / 60;
    if (last < 0 || duration * 60 > longestGap) gap += duration;
    else {
      const before = celsius[last];
      exact += exactStep(duration, rate, next, value - before, z);
      trapezoid += (duration * (rate + next)) / 2;
      above += duration * shareAbove(before, value, reference);
    }
    last = i;
    rate = next;
  }
  if (last >= 0) gap += (seconds[seconds.length - 1] - seconds[last]) / 60;
  return { name, exact, trapezoid, least, greatest, above, gap, samples };
}

/** Share of a straight step that lies at or above a level. */
function shareAbove(a: number, b: number, level: number): number {
  if (a >= level && b >= level) return 1;
  if (a < level && b < level) return 0;
  return (Math.max(a, b) - level) / Math.abs(b - a);
}
