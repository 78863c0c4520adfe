export interface ElevationScale {
  /** Screen position of a height above the floor, px from the top. */
  readonly y: (height_mm: number) => number;
  /** Height above the floor of a screen position, mm. */
  readonly height: (y: number) => number;
  readonly top: number;
  readonly ticks: readonly { readonly at: number; readonly labelled: boolean }[];
}

const margin_px = 26;
/** Labels are at least this far apart. */
const labelRoom_px = 44;

/** A scale from the floor to the top of the machine over a column of `size_px`, with round steps. */
export function scaleOf(tall_mm: number, size_px: number): ElevationScale {
  const top = Math.max(1, tall_mm);
  const length = Math.max(1, size_px - 2 * margin_px);
  const y = (height: number) => size_px - margin_px - (height / top) * length;
  const least = (labelRoom_px / length) * top;
  const power = 10 ** Math.floor(Math.log10(least));
  const step = [1, 2, 5, 10].map((n) => n * power).find((s) => s >= least)!;
  const ticks = [];
  for (let i = 0; (i * step) / 2 <= top; i++) ticks.push({ at: (i * step) / 2, labelled: i % 2 === 0 });
  return { y, height: (at) => ((size_px - margin_px - at) / length) * top, top, ticks };
}
