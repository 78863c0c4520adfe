/**
 * The shore of a region: what surface bounds it, and where the liquid's surface meets a wall between two columns.
 */
import type { TriangleBins } from './bins.ts';
import { type Box, widened } from './box.ts';
import { openEnd } from './columns.ts';
import type { Grid } from './grid.ts';
import { Line } from './line.ts';
import { lineIndex } from './line-index.ts';
import { extentOf, type Region } from './regions.ts';
import type { Soup } from './soup.ts';

export interface Shore {
  /** The region's columns with a margin of one; cells and strips below are numbered in it. */
  readonly grid: Grid;
  readonly box: Box;
  /** Per column of the box: the interval that holds the liquid's surface, or -1. */
  readonly surface: Int32Array;
  /**
   * Per column, four ways (+u, -u, +v, -v): share of the pitch from the column to the first wall at the height of
   * the surface; 1 where nothing stands between it and the next column.
   */
  readonly reach: Float32Array;
  /** Indices of the parts whose surface bounds the region, ascending. */
  readonly parts: readonly number[];
}

export function shoreOf(soup: Soup, bins: TriangleBins, region: Region): Shore {
  const { columns } = region.flood;
  const box = widened(extentOf(region), 1, region);
  const { pitch } = columns.grid;
  const grid: Grid = {
    u0: columns.grid.u0 + box.i0 * pitch,
    v0: columns.grid.v0 + box.j0 * pitch,
    pitch,
    nu: box.i1 - box.i0 + 1,
    nv: box.j1 - box.j0 + 1,
  };
  const near = bins.within(
    grid.u0,
    grid.u0 + (grid.nu - 1) * pitch,
    grid.v0,
    grid.v0 + (grid.nv - 1) * pitch,
  );
  const cells = grid.nu * grid.nv;
  const surface = new Int32Array(cells).fill(-1);
  const stack = stacksOf(region, box, grid, surface);
  const reach = new Float32Array(cells * 4).fill(1);
  const parts = new Set<number>();
  for (const n of region.nodes) {
    const floor = columns.floor[n];
    if (floor !== openEnd) parts.add(soup.part[floor]);
    if (region.level > columns.top[n] && columns.ceiling[n] !== openEnd)
      parts.add(soup.part[columns.ceiling[n]]);
  }

  for (const axis of [1, 0] as const) {
    const index = lineIndex(soup, grid, axis, near);
    const line = new Line(grid, axis);
    const lines = axis === 1 ? grid.nv : grid.nu;
    for (let l = 0; l < lines; l++) {
      line.load(soup, index, l);
      for (let k = 0; k + 1 < line.count; k++) {
        if (line.pieceHead[k] < 0) continue;
        const c = axis === 1 ? l * grid.nu + k : k * grid.nu + l;
        const d = axis === 1 ? c + 1 : c + grid.nu;
        const way = axis === 1 ? 0 : 2;
        if (surface[c] >= 0) reach[c * 4 + way] = shareTo(line, k, region.level, 1, pitch);
        if (surface[d] >= 0) reach[d * 4 + way + 1] = shareTo(line, k, region.level, -1, pitch);
        for (const [at, sense] of [
          [c, 1],
          [d, -1],
        ] as const) {
          for (let s = stack.first[at]; s < stack.first[at + 1]; s++) {
            const n = stack.nodes[s];
            wallsSeen(
              line,
              k,
              columns.bottom[n],
              Math.min(columns.top[n], region.level),
              sense,
              (triangle) => {
                parts.add(soup.part[triangle]);
              },
            );
          }
        }
      }
    }
  }
  return { grid, box, surface, reach, parts: [...parts].sort((a, b) => a - b) };
}

/** The region's intervals by column of the box; marks those that hold the surface. */
function stacksOf(region: Region, box: Box, grid: Grid, surface: Int32Array) {
  const { columns } = region.flood;
  const first = new Uint32Array(grid.nu * grid.nv + 1);
  const cellOf = (n: number): number => {
    const c = columns.columnOf[n];
    const i = c % columns.grid.nu;
    return ((c - i) / columns.grid.nu - box.j0) * grid.nu + i - box.i0;
  };
  for (const n of region.nodes) {
    first[cellOf(n) + 1]++;
    if (columns.top[n] > region.level) surface[cellOf(n)] = n;
  }
  for (let c = 1; c < first.length; c++) first[c] += first[c - 1];
  const next = first.slice();
  const nodes = new Uint32Array(region.nodes.length);
  for (const n of region.nodes) nodes[next[cellOf(n)]++] = n;
  return { first, nodes };
}

/** Share of the strip from its lower (sense 1) or higher (sense -1) column to the first piece at height z. */
function shareTo(line: Line, strip: number, z: number, sense: 1 | -1, pitch: number): number {
  const start = line.at[sense > 0 ? strip : strip + 1];
  let least = 1;
  for (let k = line.pieceHead[strip]; k >= 0; k = line.pieceNext[k]) {
    const away = (placeAt(line, k, z) - start) * sense;
    if (away / pitch < least) least = Math.max(0, away / pitch);
  }
  return least;
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

/** Pieces of the strip that are seen from the column, looking level, between two heights. */
function wallsSeen(
  line: Line,
  strip: number,
  low: number,
  high: number,
  sense: 1 | -1,
  found: (triangle: number) => void,
): void {
  const start = line.at[sense > 0 ? strip : strip + 1];
  for (let k = line.pieceHead[strip]; k >= 0; k = line.pieceNext[k]) {
    const from = Math.max(low, Math.min(line.pieceFromZ[k], line.pieceToZ[k]));
    const to = Math.min(high, Math.max(line.pieceFromZ[k], line.pieceToZ[k]));
    if (to - from < sliver_mm) continue;
    const z = (from + to) / 2;
    const away = (placeAt(line, k, z) - start) * sense;
    let hidden = false;
    for (let o = line.pieceHead[strip]; o >= 0 && !hidden; o = line.pieceNext[o]) {
      hidden = o !== k && (placeAt(line, o, z) - start) * sense < away;
    }
    if (!hidden) found(line.pieceTriangle[k]);
  }
}
