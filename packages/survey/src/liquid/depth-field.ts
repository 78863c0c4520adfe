import { nearestColumn } from './grid.ts';
import type { Region } from './regions.ts';
import type { Soup } from './soup.ts';

/** A point this many pitches off the face decides whether the face looks into the region. */
const off = 0.6;

/**
 * Calls back for each of the given triangles that faces the region, with the height of the region's level over the
 * triangle's centroid, mm (Infinity in a hollow).
 */
export function facingTriangles(
  { uvz, triangles }: Soup,
  region: Region,
  candidates: Uint32Array,
  found: (triangle: number, depth: number) => void,
): void {
  const { columns } = region.flood;
  const { grid } = columns;
  const inside = new Set(region.nodes);
  for (const t of candidates) {
    const a = triangles[t * 3] * 3;
    const b = triangles[t * 3 + 1] * 3;
    const c = triangles[t * 3 + 2] * 3;
    const z = (uvz[a + 2] + uvz[b + 2] + uvz[c + 2]) / 3;
    if (z > region.level) continue;
    const abu = uvz[b] - uvz[a];
    const abv = uvz[b + 1] - uvz[a + 1];
    const abz = uvz[b + 2] - uvz[a + 2];
    const acu = uvz[c] - uvz[a];
    const acv = uvz[c + 1] - uvz[a + 1];
    const acz = uvz[c + 2] - uvz[a + 2];
    const nu = abv * acz - abz * acv;
    const nv = abz * acu - abu * acz;
    const nz = abu * acv - abv * acu;
    const size = Math.sqrt(nu * nu + nv * nv + nz * nz);
    if (size === 0) continue;
    const step = (off * grid.pitch) / size;
    const column = nearestColumn(
      grid,
      (uvz[a] + uvz[b] + uvz[c]) / 3 + nu * step,
      (uvz[a + 1] + uvz[b + 1] + uvz[c + 1]) / 3 + nv * step,
    );
    if (column < 0) continue;
    const probe = z + nz * step;
    for (let n = columns.first[column]; n < columns.first[column + 1]; n++) {
      // Over a thin film the probe may stand above the surface: what counts is the air that it stands in.
      const open = columns.top[n] > probe || columns.top[n] === Infinity;
      if (inside.has(n) && columns.bottom[n] <= probe && open) {
        found(t, region.level - z);
        break;
      }
    }
  }
}
