import type { Grid } from './grid.ts';
import type { Soup } from './soup.ts';

/** Which triangles each line of columns meets. Rows run along u at constant v, files along v at constant u. */
export interface LineIndex {
  /** Entries of line k: from first[k] to first[k + 1]. */
  readonly first: Uint32Array;
  readonly triangles: Uint32Array;
}

/**
 * `axis` 1 indexes the rows, 0 the files. `subset`: triangle numbers to look at; all when absent. Triangles that
 * miss the grid along the line are left out.
 */
export function lineIndex(soup: Soup, grid: Grid, axis: 0 | 1, subset?: Uint32Array): LineIndex {
  const { uvz, triangles } = soup;
  const lines = axis === 1 ? grid.nv : grid.nu;
  const origin = axis === 1 ? grid.v0 : grid.u0;
  const along = 1 - axis;
  const alongLow = along === 0 ? grid.u0 : grid.v0;
  const alongHigh = alongLow + ((along === 0 ? grid.nu : grid.nv) - 1) * grid.pitch;
  const n = subset ? subset.length : triangles.length / 3;
  const from = new Int32Array(n);
  const to = new Int32Array(n);
  const first = new Uint32Array(lines + 2);
  for (let k = 0; k < n; k++) {
    const t = (subset ? subset[k] : k) * 3;
    const a = triangles[t] * 3;
    const b = triangles[t + 1] * 3;
    const c = triangles[t + 2] * 3;
    to[k] = -1;
    if (uvz[a + along] < alongLow && uvz[b + along] < alongLow && uvz[c + along] < alongLow) continue;
    if (uvz[a + along] > alongHigh && uvz[b + along] > alongHigh && uvz[c + along] > alongHigh) continue;
    const p = uvz[a + axis];
    const q = uvz[b + axis];
    const r = uvz[c + axis];
    // One line too many on either side costs little; one too few would tear the surface.
    const lo = Math.max(0, Math.ceil((Math.min(p, q, r) - origin) / grid.pitch - 1e-6));
    const hi = Math.min(lines - 1, Math.floor((Math.max(p, q, r) - origin) / grid.pitch + 1e-6));
    from[k] = lo;
    to[k] = hi;
    for (let line = lo; line <= hi; line++) first[line + 2]++;
  }
  for (let line = 2; line < first.length; line++) first[line] += first[line - 1];
  const found = new Uint32Array(first[lines + 1]);
  for (let k = 0; k < n; k++) {
    for (let line = from[k]; line <= to[k]; line++) found[first[line + 1]++] = subset ? subset[k] : k;
  }
  return { first: first.subarray(0, lines + 1), triangles: found };
}
