import type { AirSpace } from './liquid/air-space.ts';
import { type Grid, nearestColumn } from './liquid/grid.ts';

/**
 * Whether the air before a surface point is sealed off from the outside: point xyz, mm, and a unit direction into the
 * air.
 */
export type Sealed = (x: number, y: number, z: number, dx: number, dy: number, dz: number) => boolean;

/** For a model whose hollows are not known. */
export const nothingSealed: Sealed = () => false;

/**
 * Look this many column pitches into the air: about as far as the columns around a point reach, so that the outer
 * side of a thin wall is not taken for the inner one.
 */
const lift = 2;

/** What `Sealed` needs to know of a flooded air space, small enough to pass between threads. */
export interface SealedAir {
  /** Cosine and sine of the turn of the grids. */
  readonly turn: readonly [number, number];
  readonly hollows: readonly {
    readonly grid: Grid;
    /** Per interval of height: its column, and its ends, two numbers. */
    readonly columns: Uint32Array;
    readonly spans: Float64Array;
  }[];
}

export function sealedAirOf({ soup, hollows }: Pick<AirSpace, 'soup' | 'hollows'>): SealedAir {
  return {
    turn: soup.turn,
    hollows: hollows.map(({ flood, nodes }) => {
      const { grid, bottom, top, columnOf } = flood.columns;
      const columns = new Uint32Array(nodes.length);
      const spans = new Float64Array(nodes.length * 2);
      let i = 0;
      for (const n of nodes) {
        columns[i] = columnOf[n];
        spans[2 * i] = bottom[n];
        spans[2 * i++ + 1] = top[n];
      }
      return { grid, columns, spans };
    }),
  };
}

/** Looks the air up in the closed hollows of a flooded air space; hollows narrower than a few columns are not seen. */
export function sealedIn(air: Pick<AirSpace, 'soup' | 'hollows'>): Sealed {
  return sealedFrom(sealedAirOf(air));
}

/** The same from what was passed between threads. */
export function sealedFrom({ turn: [cos, sin], hollows }: SealedAir): Sealed {
  const regions = hollows.map(({ grid, columns, spans }) => {
    const intervals = new Map<number, number[]>();
    for (let i = 0; i < columns.length; i++) {
      const list = intervals.get(columns[i]);
      if (list) list.push(spans[2 * i], spans[2 * i + 1]);
      else intervals.set(columns[i], [spans[2 * i], spans[2 * i + 1]]);
    }
    return { grid, intervals, box: boxOf(grid, columns, spans) };
  });
  return (x, y, z, dx, dy, dz) =>
    regions.some(({ grid, intervals, box }) => {
      const far = lift * grid.pitch;
      const px = x + dx * far;
      const py = y + dy * far;
      const pz = z + dz * far;
      const u = cos * px + sin * py;
      const v = cos * py - sin * px;
      // Most points are far from most hollows.
      if (pz < box[2] || pz > box[5] || u < box[0] || u > box[3] || v < box[1] || v > box[4]) return false;
      const column = nearestColumn(grid, u, v);
      if (column < 0) return false;
      // The column itself may stand in a wall beside the point.
      for (let j = -1; j <= 1; j++) {
        for (let i = -1; i <= 1; i++) {
          const spans = intervals.get(column + j * grid.nu + i) ?? [];
          for (let k = 0; k < spans.length; k += 2) if (pz >= spans[k] && pz <= spans[k + 1]) return true;
        }
      }
      return false;
    });
}

/** Lowest u, v and z of a hollow and its highest ones, wider by the columns around a point that are looked at. */
function boxOf(grid: Grid, columns: Uint32Array, spans: Float64Array): readonly number[] {
  const box = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
  const around = 2 * grid.pitch;
  for (let i = 0; i < columns.length; i++) {
    const u = grid.u0 + (columns[i] % grid.nu) * grid.pitch;
    const v = grid.v0 + Math.floor(columns[i] / grid.nu) * grid.pitch;
    const low = [u - around, v - around, spans[2 * i]];
    const high = [u + around, v + around, spans[2 * i + 1]];
    for (let k = 0; k < 3; k++) {
      box[k] = Math.min(box[k], low[k]);
      box[k + 3] = Math.max(box[k + 3], high[k]);
    }
  }
  return box;
}
