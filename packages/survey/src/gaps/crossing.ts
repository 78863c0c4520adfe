/** Places where surfaces of two parts run through each other, flat: one straight piece for two triangles. */
export interface Crossings {
  /** Two ends, xyz each, mm. */
  readonly ends: number[];
  /** The two triangles, in model order. */
  readonly triangles: number[];
}

/** A corner this near the other plane lies on its outer side: parts that only touch do not cross. */
const touch_mm = 1e-6;

const heightsA = new Float64Array(3);
const heightsB = new Float64Array(3);
const alongA = new Float64Array(2);
const alongB = new Float64Array(2);

/**
 * The straight piece that two triangles have in common, six numbers; false when they have none. `c`: nine coordinates
 * each from `a` and `b` on; `n`: unit normals from `na` and `nb` on. A corner in the other's plane counts as one in
 * front of it, so that two triangles that meet in that plane give their common edge once.
 */
export function crossingOf(
  c: Float64Array,
  a: number,
  b: number,
  n: Float64Array,
  na: number,
  nb: number,
  out: Float64Array,
): boolean {
  if (!straddles(c, a, b, n, nb, heightsA) || !straddles(c, b, a, n, na, heightsB)) return false;
  const dx = n[na + 1] * n[nb + 2] - n[na + 2] * n[nb + 1];
  const dy = n[na + 2] * n[nb] - n[na] * n[nb + 2];
  const dz = n[na] * n[nb + 1] - n[na + 1] * n[nb];
  const square = dx * dx + dy * dy + dz * dz;
  if (square < 1e-18) return false;
  const p = pierce(c, a, heightsA, dx, dy, dz, alongA, pointsA);
  const q = pierce(c, b, heightsB, dx, dy, dz, alongB, pointsB);
  const lowFromA = alongA[p] >= alongB[q];
  const highFromA = alongA[1 - p] <= alongB[1 - q];
  const low = lowFromA ? alongA[p] : alongB[q];
  const high = highFromA ? alongA[1 - p] : alongB[1 - q];
  if (!(low < high)) return false;
  const from = lowFromA ? pointsA : pointsB;
  const to = highFromA ? pointsA : pointsB;
  for (let k = 0; k < 3; k++) {
    out[k] = from[3 * (lowFromA ? p : q) + k];
    out[3 + k] = to[3 * (highFromA ? 1 - p : 1 - q) + k];
  }
  return true;
}

/** Heights of the corners of one triangle over the plane of the other; false when all are on one side. */
function straddles(
  c: Float64Array,
  a: number,
  b: number,
  n: Float64Array,
  nb: number,
  heights: Float64Array,
): boolean {
  let above = 0;
  for (let k = 0; k < 3; k++) {
    const i = a + 3 * k;
    heights[k] =
      (c[i] - c[b]) * n[nb] + (c[i + 1] - c[b + 1]) * n[nb + 1] + (c[i + 2] - c[b + 2]) * n[nb + 2];
    if (heights[k] >= -touch_mm) above++;
  }
  return above === 1 || above === 2;
}

const pointsA = new Float64Array(6);
const pointsB = new Float64Array(6);

/** The two points where the edges of a triangle pass the other's plane; returns the one that comes first along d. */
function pierce(
  c: Float64Array,
  a: number,
  heights: Float64Array,
  dx: number,
  dy: number,
  dz: number,
  along: Float64Array,
  points: Float64Array,
): number {
  let found = 0;
  for (let k = 0; k < 3; k++) {
    const m = (k + 1) % 3;
    const h = heights[k];
    const g = heights[m];
    if (h >= -touch_mm === g >= -touch_mm) continue;
    const s = Math.min(1, Math.max(0, h / (h - g)));
    for (let i = 0; i < 3; i++) {
      points[3 * found + i] = c[a + 3 * k + i] + s * (c[a + 3 * m + i] - c[a + 3 * k + i]);
    }
    along[found] = dx * points[3 * found] + dy * points[3 * found + 1] + dz * points[3 * found + 2];
    found++;
  }
  return along[0] <= along[1] ? 0 : 1;
}
