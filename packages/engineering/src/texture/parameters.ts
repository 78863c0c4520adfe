/** Profile parameters of ISO 4287 and ISO 21920-2 on a roughness profile with zero mean. */

export interface TextureParameters {
  readonly ra: number;
  readonly rq: number;
  /** Mean over sections of highest peak plus deepest valley. */
  readonly rz: number;
  /** Total height over the evaluation length. */
  readonly rt: number;
  readonly rp: number;
  readonly rv: number;
  readonly rsk: number;
  /** Mean width of profile elements, in the unit of the spacing; NaN when there are fewer than two crossings. */
  readonly rsm: number;
}

/** `sections` is the number of section lengths (five by default of the standards). */
export function textureParameters(
  profile: Float64Array,
  spacing: number,
  sections: number,
): TextureParameters {
  const n = profile.length;
  let mean = 0;
  for (const z of profile) mean += z;
  mean /= n;
  let absolute = 0;
  let square = 0;
  let cube = 0;
  let top = Number.NEGATIVE_INFINITY;
  let bottom = Number.POSITIVE_INFINITY;
  for (const z of profile) {
    const h = z - mean;
    absolute += Math.abs(h);
    square += h * h;
    cube += h * h * h;
    top = Math.max(top, h);
    bottom = Math.min(bottom, h);
  }
  let heights = 0;
  for (let s = 0; s < sections; s++) {
    let high = Number.NEGATIVE_INFINITY;
    let low = Number.POSITIVE_INFINITY;
    const from = Math.floor((s * n) / sections);
    const to = Math.floor(((s + 1) * n) / sections);
    for (let i = from; i < to; i++) {
      high = Math.max(high, profile[i]);
      low = Math.min(low, profile[i]);
    }
    heights += high - low;
  }
  const rq = Math.sqrt(square / n);
  return {
    ra: absolute / n,
    rq,
    rz: heights / sections,
    rt: top - bottom,
    rp: top,
    rv: -bottom,
    rsk: rq === 0 ? 0 : cube / n / rq ** 3,
    rsm: meanWidth(profile, mean, spacing, (top - bottom) / 10),
  };
}

/** Mean width between upward crossings that are parted by a height of at least `threshold` (10 % of Rz by default). */
function meanWidth(profile: Float64Array, mean: number, spacing: number, threshold: number): number {
  let armed = false;
  let first = -1;
  let last = -1;
  let count = 0;
  for (let i = 0; i < profile.length; i++) {
    const h = profile[i] - mean;
    if (h < -threshold / 2) armed = true;
    else if (armed && h > threshold / 2) {
      armed = false;
      if (first < 0) first = i;
      else count++;
      last = i;
    }
  }
  return count === 0 ? Number.NaN : ((last - first) * spacing) / count;
}

/** Share of the profile at or above a level `depth` below its highest peak: material ratio Rmr(c), 0 to 1. */
export function materialRatio(profile: Float64Array, depth: number): number {
  let top = Number.NEGATIVE_INFINITY;
  for (const z of profile) top = Math.max(top, z);
  let above = 0;
  for (const z of profile) if (z >= top - depth) above++;
  return above / profile.length;
}
