import type { Vec3 } from '@coveline/model';

/** Colours for the values of a field: `low` and everything below it takes the first colour, `high` the last. */
export interface ColorScale {
  readonly low: number;
  readonly high: number;
  /** sRGB, 0 to 1; at least one. */
  readonly stops: readonly Vec3[];
}

/** Writes the colour of a value as three bytes at `at`. */
export function writeColor(scale: ColorScale, value: number, out: Uint8Array, at: number): void {
  const last = scale.stops.length - 1;
  const along = scale.high === scale.low ? 1 : (value - scale.low) / (scale.high - scale.low);
  const place = Math.min(1, Math.max(0, along)) * last;
  const index = Math.min(last, Math.floor(place));
  const from = scale.stops[index];
  const to = scale.stops[Math.min(last, index + 1)];
  const part = place - index;
  for (let k = 0; k < 3; k++) out[at + k] = Math.round((from[k] + (to[k] - from[k]) * part) * 255);
}
