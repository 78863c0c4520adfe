import type { Region } from './regions.ts';

/** Volume-weighted mean of u and v of a region: may lie beside it, in the middle of a ring say. */
export function centroid({ flood, nodes, level }: Region): [number, number] {
  const { grid, columnOf, bottom, top } = flood.columns;
  let volume = 0;
  let u = 0;
  let v = 0;
  for (const n of nodes) {
    const height = Math.min(top[n], level) - bottom[n];
    const i = columnOf[n] % grid.nu;
    volume += height;
    u += height * i;
    v += (height * (columnOf[n] - i)) / grid.nu;
  }
  return [grid.u0 + (u / volume) * grid.pitch, grid.v0 + (v / volume) * grid.pitch];
}

/** The interval of a region nearest to a place in the ground plan, of those that `among` lets in; the first of equals. */
export function nearestInterval(
  { flood, nodes }: Region,
  [u, v]: readonly [number, number],
  among: (node: number) => boolean,
): number {
  const { grid, columnOf } = flood.columns;
  let nearest = nodes[0];
  let least = Infinity;
  for (const n of nodes) {
    if (!among(n)) continue;
    const i = columnOf[n] % grid.nu;
    const du = grid.u0 + i * grid.pitch - u;
    const dv = grid.v0 + ((columnOf[n] - i) / grid.nu) * grid.pitch - v;
    if (du * du + dv * dv >= least) continue;
    least = du * du + dv * dv;
    nearest = n;
  }
  return nearest;
}
