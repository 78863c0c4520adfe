import type { Grid } from './grid.ts';
import type { Soup } from './soup.ts';

/** A small part gets at least this many columns across (as the square root of its footprint over the pitch). */
const leastAcross = 200;
const leastArea_mm2 = 1e-2;
/** Memory for the columns of one survey, bytes. */
const budget = 1.2e9;
/**
 * Bytes per column, per crossing of surface and column, and per line that a triangle meets; the lines of one direction are
 * held at a time. Measured while the columns are built, which takes most: 130 bytes an interval, of which a column has one
 * and every second crossing one more.
 */
const perColumn = 130;
const perCrossing = 65;
const perLine = 4;
/** However little they hold: time. */
const mostColumns = 8e6;
/** Fractions of a pitch by which the lattice is set off, so that it meets no round coordinate. */
const nudge = [0.3819660113, 0.2360679775] as const;

/** The lattice over the whole model with one empty column around it; coarser than asked where memory demands. */
export function gridFor(soup: Soup, asked_mm: number): { grid: Grid; coarsened: boolean } {
  const du = soup.high[0] - soup.low[0];
  const dv = soup.high[1] - soup.low[1];
  // A rail or an upright sheet is taken as at least a thousandth as wide as it is long.
  const least = Math.max(du, dv) / 1000;
  const area = Math.max(Math.max(du, least) * Math.max(dv, least), leastArea_mm2);
  const fine = Math.min(asked_mm, Math.sqrt(area) / leastAcross);
  const { flat, across } = loadOf(soup);
  const columns = (p: number): number => (du / p + 4) * (dv / p + 4);
  const bytes = (p: number): number =>
    perColumn * columns(p) + (perCrossing * flat) / (p * p) + (perLine * across) / p;
  let pitch = fine;
  while (columns(pitch) > mostColumns || bytes(pitch) > budget) pitch *= 1.05;
  const grid = {
    u0: soup.low[0] - (1 + nudge[0]) * pitch,
    v0: soup.low[1] - (1 + nudge[1]) * pitch,
    pitch,
    nu: Math.ceil(du / pitch) + 4,
    nv: Math.ceil(dv / pitch) + 4,
  };
  return { grid, coarsened: pitch > asked_mm * 1.0001 };
}

/** Horizontal projection of all triangles, mm2, and the larger one of the sums of their extents along u and along v, mm. */
function loadOf({ uvz, triangles }: Soup): { flat: number; across: number } {
  let flat = 0;
  const across = [0, 0];
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t] * 3;
    const b = triangles[t + 1] * 3;
    const c = triangles[t + 2] * 3;
    flat += Math.abs(
      (uvz[b] - uvz[a]) * (uvz[c + 1] - uvz[a + 1]) - (uvz[b + 1] - uvz[a + 1]) * (uvz[c] - uvz[a]),
    );
    for (let k = 0; k < 2; k++) {
      const p = uvz[a + k];
      const q = uvz[b + k];
      const r = uvz[c + k];
      across[k] += Math.max(p, q, r) - Math.min(p, q, r);
    }
  }
  return { flat: flat / 2, across: Math.max(...across) };
}
