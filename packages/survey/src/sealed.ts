import type { AirSpace } from './liquid/air-space.ts';
import { nearestColumn } from './liquid/grid.ts';

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

/** Looks the air up in the closed hollows of a flooded air space; hollows narrower than a few columns are not seen. */
export function sealedIn({ soup, hollows }: AirSpace): Sealed {
  const regions = hollows.map(({ flood, nodes }) => {
    const { grid, bottom, top, columnOf } = flood.columns;
    const intervals = new Map<number, number[]>();
    for (const n of nodes) {
      const list = intervals.get(columnOf[n]);
      if (list) list.push(bottom[n], top[n]);
      else intervals.set(columnOf[n], [bottom[n], top[n]]);
    }
    return { grid, intervals };
  });
  const [cos, sin] = soup.turn;
  return (x, y, z, dx, dy, dz) =>
    regions.some(({ grid, intervals }) => {
      const far = lift * grid.pitch;
      const px = x + dx * far;
      const py = y + dy * far;
      const pz = z + dz * far;
      const column = nearestColumn(grid, cos * px + sin * py, cos * py - sin * px);
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
