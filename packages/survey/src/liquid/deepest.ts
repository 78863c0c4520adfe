import { centroid, nearestInterval } from './middle.ts';
import { heightsOf, type Region } from './regions.ts';
import type { Soup } from './soup.ts';

/** Heights closer than this are one. */
const level_mm = 1e-6;

/**
 * Lowest point of a region, u, v, z: the lowest foot of a column, or a vertex below it that is a corner of the face
 * on which one of the four columns around it stands. On a level floor the middle of the region.
 */
export function deepestPoint({ uvz, triangles }: Soup, region: Region): [number, number, number] {
  const { flood, nodes } = region;
  const { grid, bottom, columnOf, first, floor } = flood.columns;
  const { low } = heightsOf(region);
  const lowest = nearestInterval(region, centroid(region), (n) => bottom[n] <= low + level_mm);
  const i = columnOf[lowest] % grid.nu;
  const best: [number, number, number] = [
    grid.u0 + i * grid.pitch,
    grid.v0 + ((columnOf[lowest] - i) / grid.nu) * grid.pitch,
    bottom[lowest],
  ];
  const inside = new Set(nodes);
  const faces = new Set<number>();
  for (const n of nodes) faces.add(floor[n]);
  const stands = (vertex: number, n: number): boolean => {
    const t = floor[n] * 3;
    return triangles[t] === vertex || triangles[t + 1] === vertex || triangles[t + 2] === vertex;
  };
  for (const face of faces) {
    for (let k = 0; k < 3; k++) {
      const vertex = triangles[face * 3 + k];
      const z = uvz[vertex * 3 + 2];
      if (z >= best[2] - level_mm) continue;
      const ci = Math.floor((uvz[vertex * 3] - grid.u0) / grid.pitch);
      const cj = Math.floor((uvz[vertex * 3 + 1] - grid.v0) / grid.pitch);
      if (ci < 0 || cj < 0 || ci + 1 >= grid.nu || cj + 1 >= grid.nv) continue;
      const around = [0, 1, grid.nu, grid.nu + 1].map((step) => cj * grid.nu + ci + step);
      const belongs = around.some((c) => {
        for (let n = first[c]; n < first[c + 1]; n++) if (inside.has(n) && stands(vertex, n)) return true;
        return false;
      });
      if (!belongs) continue;
      best[0] = uvz[vertex * 3];
      best[1] = uvz[vertex * 3 + 1];
      best[2] = z;
    }
  }
  return best;
}
