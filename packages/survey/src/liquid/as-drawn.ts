import type { Bins } from './bins.ts';
import { widened } from './box.ts';
import { buildColumns } from './columns.ts';
import { eachNeighbour } from './each-neighbour.ts';
import { own } from './flood.ts';
import type { Grid } from './grid.ts';
import { extentOf, heightsOf, type Region, regionAt } from './regions.ts';
import type { Soup } from './soup.ts';

/** Columns of margin around a region. */
const margin = 2;

/**
 * A region that was found in a soup whose walls stand `by_mm` farther out, in the soup as it is drawn: on the same
 * columns, filled to the same height over its floor. `soup` and `bins` are those as drawn. Undefined where nothing of it
 * is left.
 */
export function asDrawn(
  soup: Soup,
  bins: Bins,
  region: Region,
  by_mm: number,
  contact_mm: number,
): Region | undefined {
  const { columns } = region.flood;
  const outer = columns.grid;
  const box = widened(extentOf(region), margin, outer);
  const grid: Grid = {
    u0: outer.u0 + box.i0 * outer.pitch,
    v0: outer.v0 + box.j0 * outer.pitch,
    pitch: outer.pitch,
    nu: box.i1 - box.i0 + 1,
    nv: box.j1 - box.j0 + 1,
  };
  const near = bins.over(grid, -Infinity, Infinity);
  const drawn = buildColumns(soup, grid, contact_mm, { near });
  const surface = region.level - by_mm;
  // A column in a seam that is open to below has no floor near that of the region.
  const lowest = heightsOf(region).low - stretch * by_mm - contact_mm;
  const meets = (m: number, n: number): boolean =>
    drawn.bottom[m] >= lowest &&
    drawn.bottom[m] < Math.min(columns.top[n], surface) &&
    columns.bottom[n] < Math.min(drawn.top[m], surface);
  const toOuter = (c: number): number =>
    (Math.floor(c / grid.nu) + box.j0) * outer.nu + (c % grid.nu) + box.i0;
  const toInner = (c: number): number =>
    (Math.floor(c / outer.nu) - box.j0) * grid.nu + (c % outer.nu) - box.i0;
  const nodes = new Set<number>();
  for (const n of region.nodes) {
    const c = toInner(columns.columnOf[n]);
    for (let m = drawn.first[c]; m < drawn.first[c + 1]; m++) if (meets(m, n)) nodes.add(m);
  }
  // Columns that stand in what the walls have taken: beside the region, and no air there any more.
  const taken = (m: number): boolean => {
    const c = toOuter(drawn.columnOf[m]);
    for (let n = columns.first[c]; n < columns.first[c + 1]; n++) if (meets(m, n)) return false;
    return drawn.bottom[m] >= lowest && drawn.bottom[m] < surface;
  };
  let shore = [...nodes];
  for (let step = Math.ceil((stretch * by_mm) / grid.pitch); step > 0 && shore.length > 0; step--) {
    const next: number[] = [];
    for (const n of shore) {
      eachNeighbour(drawn, n, surface, (m) => {
        if (nodes.has(m) || !taken(m)) return;
        nodes.add(m);
        next.push(m);
      });
    }
    shore = next;
  }
  if (nodes.size === 0) return undefined;
  const level = new Float64Array(drawn.bottom.length).fill(-Infinity);
  for (const m of nodes) level[m] = surface;
  const flood = { columns: drawn, level, from: own(drawn.bottom.length) };
  return regionAt(flood, Uint32Array.from(nodes).sort(), surface);
}

/** How much farther than its faces a vertex at an edge moves. */
const stretch = 1.5;
