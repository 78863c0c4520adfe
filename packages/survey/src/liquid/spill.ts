import type { Flood } from './flood.ts';

/** Places, in the turned frame, at which levels were handed down from a finer grid: by interval. */
export type SpillPlaces = Map<number, readonly [number, number]>;

/**
 * Where the liquid of an interval first runs over: back along the way on which its level came, to the passage that
 * set it. `places` says where that lies when the level came from a finer grid. Undefined outside.
 */
export function spillPlace(
  flood: Flood,
  node: number,
  places: SpillPlaces,
): readonly [number, number] | undefined {
  const { level, from, columns } = flood;
  const { grid, columnOf } = columns;
  const at = (n: number): readonly [number, number] => {
    const i = columnOf[n] % grid.nu;
    return [grid.u0 + i * grid.pitch, grid.v0 + ((columnOf[n] - i) / grid.nu) * grid.pitch];
  };
  let n = node;
  while (from[n] !== n && level[from[n]] === level[n]) n = from[n];
  if (from[n] === n) return places.get(n);
  const [u, v] = at(n);
  const [pu, pv] = at(from[n]);
  return [(u + pu) / 2, (v + pv) / 2];
}
