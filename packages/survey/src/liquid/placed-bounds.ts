import type { Vec3 } from '@coveline/model';
import type { Region } from './regions.ts';
import { fromTurned, type Soup } from './soup.ts';

/** Bounds of a region in the frame of the model, to about half a pitch. `lowest`: its deepest height. */
export function placedBounds(
  soup: Pick<Soup, 'turn'>,
  region: Region,
  lowest: number,
): readonly [Vec3, Vec3] {
  const { grid, columnOf, top } = region.flood.columns;
  const low: [number, number, number] = [Infinity, Infinity, lowest];
  const high: [number, number, number] = [-Infinity, -Infinity, lowest];
  for (const n of region.nodes) {
    const i = columnOf[n] % grid.nu;
    const j = (columnOf[n] - i) / grid.nu;
    const at = fromTurned(
      soup,
      grid.u0 + i * grid.pitch,
      grid.v0 + j * grid.pitch,
      Math.min(top[n], region.level),
    );
    for (let k = 0; k < 3; k++) if (at[k] > high[k]) high[k] = at[k];
    for (let k = 0; k < 2; k++) if (at[k] < low[k]) low[k] = at[k];
  }
  return [low, high];
}
