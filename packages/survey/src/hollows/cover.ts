/** Which sectors of a circle are taken: how much of a bore's wall is there. */
export const sectors = 72;

/** Marks the sectors under the span of a triangle's angles, which is less than half a turn. */
export function cover(covered: Uint8Array, angles: readonly number[]): void {
  const [a, ...others] = angles;
  const spans = others.map((b) => ((((b - a) % (2 * Math.PI)) + 3 * Math.PI) % (2 * Math.PI)) - Math.PI);
  const low = a + Math.min(0, ...spans);
  const high = a + Math.max(0, ...spans);
  const sector = (2 * Math.PI) / sectors;
  for (let s = Math.floor(low / sector); s * sector < high; s++)
    covered[((s % sectors) + sectors) % sectors] = 1;
}

/** Of the circle that must be there: less is an inside fillet or the end of a slot. */
const leastRound = 0.9;

export function isRound(covered: Uint8Array): boolean {
  return covered.reduce((n, c) => n + c, 0) >= leastRound * sectors;
}
