/**
 * Refinement along narrow bores that the CAD faces tell of: liquid may drain through them, and columns as wide as the
 * bore, or several columns wide where it leans, do not see that.
 */
import type { Box } from './box.ts';
import { type Flood, spread } from './flood.ts';
import { boxAround, lowerIn, type Refiner } from './refine.ts';
import { sameHeight_mm } from './regions.ts';

/** A bore by both its ends, u and v in the turned frame. */
export interface NarrowBore {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly radius_mm: number;
}

/** Columns across a bore that follow it reliably, however it leans. */
const columnsAcross = 4;
const mostBoreSplit = 16;
/** How far above the lowest line of a level bore a column beside it may stand, mm. */
const aboveLowest_mm = 0.02;
/** Fine columns over one bore, and over all of them: time. */
const mostForOne = 250_000;
const mostForAll = 6_000_000;

/**
 * Lowers the levels of the flood where a finer grid along a narrow bore finds a way out through it. Returns how many
 * bores beside liquid were looked at more coarsely than is safe, or not at all.
 */
export function refineBores(
  refiner: Refiner,
  flood: Flood,
  bores: readonly NarrowBore[],
  pause?: () => void,
): number {
  const { pitch } = flood.columns.grid;
  let spent = 0;
  let unsure = 0;
  for (const { from, to, radius_mm } of bores) {
    pause?.();
    const ends = [boxAround(flood, from), boxAround(flood, to)] as const;
    const level = Math.max(highestLiquid(flood, ends[0]), highestLiquid(flood, ends[1]));
    if (level === -Infinity) continue;
    const box = around(...ends);
    const coarse = (box.i1 - box.i0 + 1) * (box.j1 - box.j0 + 1);
    // A column half a pitch beside the lowest line stands pitch^2 / 8 r above it.
    const finest = Math.min((2 * radius_mm) / columnsAcross, Math.sqrt(8 * radius_mm * aboveLowest_mm));
    const wanted = Math.min(mostBoreSplit, Math.ceil(pitch / finest));
    const split = Math.min(wanted, Math.floor(Math.sqrt(mostForOne / coarse)));
    if (split < wanted) unsure++;
    if (split < 1 || spent > mostForAll) continue;
    spent += coarse * split * split;
    spread(flood, lowerIn(refiner, flood, box, split, level, pause), pause);
  }
  return unsure;
}

function around(a: Box, b: Box): Box {
  return {
    i0: Math.min(a.i0, b.i0),
    i1: Math.max(a.i1, b.i1),
    j0: Math.min(a.j0, b.j0),
    j1: Math.max(a.j1, b.j1),
  };
}

/** -Infinity where no interval of the box keeps liquid. */
function highestLiquid({ columns, level }: Flood, { i0, i1, j0, j1 }: Box): number {
  let highest = -Infinity;
  for (let j = j0; j <= j1; j++) {
    const row = j * columns.grid.nu;
    for (let n = columns.first[row + i0]; n < columns.first[row + i1 + 1]; n++) {
      if (level[n] > columns.bottom[n] + sameHeight_mm && level[n] < Infinity)
        highest = Math.max(highest, level[n]);
    }
  }
  return highest;
}
