/**
 * The shore of a region: what surface bounds it, and where and how deep it ends between two columns.
 */
import type { Bins } from './bins.ts';
import { openEnd } from './columns.ts';
import { Line } from './line.ts';
import { lineIndex } from './line-index.ts';
import { neighbours, none, plusU, plusV } from './neighbours.ts';
import { heightsOf, type Region } from './regions.ts';
import type { Soup } from './soup.ts';
import { type Stacks, stacksOf } from './stacks.ts';
import { endOf, meanHeight, rises, wallsSeen } from './strip-profile.ts';

export interface Shore {
  readonly stacks: Stacks;
  /** Triangles near the region and at its height. */
  readonly near: Uint32Array;
  /** See `neighbours`. */
  readonly neighbour: Int32Array;
  /**
   * Per member and way: share of the pitch from the column to the first wall at the height of the member's eye; 1
   * where nothing stands between it and the next column.
   */
  readonly reach: Float32Array;
  /**
   * Per member and way, where the region ends there: the height of the region at the end, mm, such that the mean of
   * it and the height at the column is the true mean height on the way.
   */
  readonly endHeight: Float32Array;
  /**
   * What straight lines from column to column leave out where the height changes steeply between two joined ones, the
   * foot of a leaning wall say: sum over the strips of true minus straight mean height times the square of the pitch,
   * mm3. In both directions, for the error of a cell is the sum of those along its sides.
   */
  readonly between_mm3: number;
  /** Indices of the parts whose surface bounds the region, ascending. */
  readonly parts: readonly number[];
}

/** A face between joined columns that rises by more than this share of the pitch is looked at closely. */
const steep = 0.5;

export function shoreOf(soup: Soup, bins: Bins, region: Region): Shore {
  const { columns } = region.flood;
  const stacks = stacksOf(region);
  const { grid, first, members, eye } = stacks;
  const { low, high } = heightsOf(region);
  const near = bins.over(grid, low, high);
  const neighbour = neighbours(region, stacks);
  const reach = new Float32Array(region.nodes.length * 4).fill(1);
  const endHeight = new Float32Array(region.nodes.length * 4);
  const parts = new Set<number>();
  for (const n of region.nodes) {
    if (columns.floor[n] !== openEnd) parts.add(soup.part[columns.floor[n]]);
    if (region.level > columns.top[n] && columns.ceiling[n] !== openEnd)
      parts.add(soup.part[columns.ceiling[n]]);
  }

  let between = 0;
  const heightOf = (m: number): number =>
    Math.min(columns.top[region.nodes[m]], region.level) - columns.bottom[region.nodes[m]];
  const listed = (triangle: number): boolean => parts.has(soup.part[triangle]);
  const list = (triangle: number): void => {
    parts.add(soup.part[triangle]);
  };
  const look = (line: Line, strip: number, cell: number, way: number): void => {
    for (let k = first[cell]; k < first[cell + 1]; k++) {
      const m = members[k];
      const n = region.nodes[m];
      const bottom = columns.bottom[n];
      const top = Math.min(columns.top[n], region.level);
      const sense = way % 2 === 0 ? 1 : -1;
      const other = neighbour[m * 4 + way];
      if (sense > 0 && other >= 0) {
        const low = Math.min(bottom, columns.bottom[region.nodes[other]]);
        if (rises(line, strip, low, top) > steep * grid.pitch) {
          between +=
            meanHeight(line, strip, eye[m], bottom, top, region.level) - (heightOf(other) + top - bottom) / 2;
        }
      }
      const end = endOf(line, strip, sense, eye[m], bottom, top, region.level, other === none);
      reach[m * 4 + way] = end.share;
      endHeight[m * 4 + way] = end.height;
      wallsSeen(line, strip, bottom, top, sense, listed, list);
    }
  };
  for (const axis of [1, 0] as const) {
    const index = lineIndex(soup, grid, axis, near);
    const line = new Line(grid, axis);
    const forward = axis === 1 ? plusU : plusV;
    const lines = axis === 1 ? grid.nv : grid.nu;
    for (let l = 0; l < lines; l++) {
      line.load(soup, index, l);
      for (let k = 0; k + 1 < line.count; k++) {
        if (line.pieceHead[k] < 0) continue;
        const cell = axis === 1 ? l * grid.nu + k : k * grid.nu + l;
        look(line, k, cell, forward);
        look(line, k, axis === 1 ? cell + 1 : cell + grid.nu, forward + 1);
      }
    }
  }
  return {
    stacks,
    near,
    neighbour,
    reach,
    endHeight,
    between_mm3: between * grid.pitch ** 2,
    parts: [...parts].sort((a, b) => a - b),
  };
}
