/** What one sees of the surface from a column, looking along the strip to the next column. */
import type { Line } from './line.ts';

export interface StripEnd {
  /** Share of the strip from the column to the first piece at the height of the eye, 1 where there is none. */
  share: number;
  /** See `Shore.endHeight`. */
  height: number;
}

const end: StripEnd = { share: 1, height: 0 };

/** Places on the way at which the height of the air is taken, as in the midpoint rule. */
const samples = 4;

/**
 * The end of an interval of air (from `bottom` to `top` at the column, and nowhere above `level`) towards
 * the next column. `sense` 1 looks from
 * the lower to the higher column, -1 back. The heights are only looked at when `profile` is set. The result is
 * overwritten by the next call.
 */
export function endOf(
  line: Line,
  strip: number,
  sense: 1 | -1,
  eye: number,
  bottom: number,
  top: number,
  level: number,
  profile: boolean,
): StripEnd {
  const start = line.at[sense > 0 ? strip : strip + 1];
  const pitch = line.at[strip + 1] - line.at[strip];
  let away = pitch;
  for (let k = line.pieceHead[strip]; k >= 0; k = line.pieceNext[k]) {
    const d = (placeAt(line, k, eye) - start) * sense;
    if (d < away) away = Math.max(0, d);
  }
  end.share = away / pitch;
  end.height = top - bottom;
  if (!profile || away === 0) return end;
  let sum = 0;
  for (let s = 0; s < samples; s++) {
    sum += airAt(line, strip, start + (sense * away * (s + 0.5)) / samples, eye, bottom, top, level);
  }
  end.height = (2 * sum) / samples - (top - bottom);
  return end;
}

/** How far the steepest piece of a strip rises between two heights. */
export function rises(line: Line, strip: number, low: number, high: number): number {
  let most = 0;
  for (let k = line.pieceHead[strip]; k >= 0; k = line.pieceNext[k]) {
    const from = Math.max(low, Math.min(line.pieceFromZ[k], line.pieceToZ[k]));
    const to = Math.min(high, Math.max(line.pieceFromZ[k], line.pieceToZ[k]));
    if (to - from > most) most = to - from;
  }
  return most;
}

/** Mean height of the air over a whole strip. */
export function meanHeight(
  line: Line,
  strip: number,
  eye: number,
  bottom: number,
  top: number,
  level: number,
): number {
  const start = line.at[strip];
  const pitch = line.at[strip + 1] - start;
  let sum = 0;
  for (let s = 0; s < 2 * samples; s++) {
    sum += airAt(line, strip, start + (pitch * (s + 0.5)) / (2 * samples), eye, bottom, top, level);
  }
  return sum / (2 * samples);
}

/** Height of the air around the eye at a place in the strip, up to `level`; `bottom` and `top` where nothing bounds it. */
function airAt(
  line: Line,
  strip: number,
  at: number,
  eye: number,
  bottom: number,
  top: number,
  level: number,
): number {
  let floor = -Infinity;
  let ceiling = Infinity;
  for (let k = line.pieceHead[strip]; k >= 0; k = line.pieceNext[k]) {
    const from = line.pieceFrom[k];
    const to = line.pieceTo[k];
    if (at < from || at > to) continue;
    const z =
      to > from
        ? line.pieceFromZ[k] + ((at - from) / (to - from)) * (line.pieceToZ[k] - line.pieceFromZ[k])
        : line.pieceFromZ[k];
    if (z <= eye && z > floor) floor = z;
    if (z > eye && z < ceiling) ceiling = z;
  }
  return Math.min(level, ceiling === Infinity ? top : ceiling) - (floor === -Infinity ? bottom : floor);
}

/** Where along the line a piece has height z; NaN where it does not reach it. */
function placeAt(line: Line, k: number, z: number): number {
  const p = line.pieceFromZ[k];
  const q = line.pieceToZ[k];
  if ((p < z && q < z) || (p > z && q > z)) return Number.NaN;
  if (p === q) return line.pieceFrom[k];
  return line.pieceFrom[k] + ((z - p) / (q - p)) * (line.pieceTo[k] - line.pieceFrom[k]);
}

/** Part of a height range that is too little to count as a wall of the region, mm. */
const sliver_mm = 1e-6;

/**
 * Pieces of the strip that are seen from the column, looking level, between two heights. Those whose triangle is `known`
 * are not looked at.
 */
export function wallsSeen(
  line: Line,
  strip: number,
  low: number,
  high: number,
  sense: 1 | -1,
  known: (triangle: number) => boolean,
  found: (triangle: number) => void,
): void {
  const start = line.at[sense > 0 ? strip : strip + 1];
  for (let k = line.pieceHead[strip]; k >= 0; k = line.pieceNext[k]) {
    const from = Math.max(low, Math.min(line.pieceFromZ[k], line.pieceToZ[k]));
    const to = Math.min(high, Math.max(line.pieceFromZ[k], line.pieceToZ[k]));
    if (to - from < sliver_mm || known(line.pieceTriangle[k])) continue;
    const z = (from + to) / 2;
    const away = (placeAt(line, k, z) - start) * sense;
    let hidden = false;
    for (let o = line.pieceHead[strip]; o >= 0 && !hidden; o = line.pieceNext[o]) {
      hidden = o !== k && (placeAt(line, o, z) - start) * sense < away;
    }
    if (!hidden) found(line.pieceTriangle[k]);
  }
}
