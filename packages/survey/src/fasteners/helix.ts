/** Threads that are drawn: a profile about an axis that repeats along it and comes one pitch farther per turn. */
import type { Around } from './axis.ts';

export interface Helix {
  readonly from: number;
  readonly to: number;
  /** Outer (major) radius, mm. */
  readonly radius_mm: number;
  readonly pitch_mm: number;
  readonly inside: boolean;
}

const angles = 8;
/** Stations along the axis per mm of its radius, before the pitch is known. */
const stationsPerRadius = 50;
const mostStations = 6000;
/**
 * Depth of a thread over its pitch: 0.61 for an outer metric thread, 0.54 for an inner one (ISO 68-1; from memory). A
 * slit that winds through a wall, as in a beam coupling, is deeper; a knurl does not repeat along the axis at all.
 */
const depthRange = [0.25, 0.9] as const;
/** Pitch over diameter: 0.25 for M1, 0.06 for fine threads. */
const pitchRange = [0.02, 0.4] as const;
const leastTurns = 2.5;

/**
 * A helical surface about the axis, outside (`inside` false: what is seen from far away) or in a bore (what is seen
 * from the axis), within `reach_mm`. The longest one.
 */
export function helixAbout(near: Around, reach_mm: number, inside: boolean): Helix | undefined {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 2; i < near.corners.length; i += 3) {
    low = Math.min(low, near.corners[i]);
    high = Math.max(high, near.corners[i]);
  }
  const dz = Math.max(reach_mm / stationsPerRadius, (high - low) / mostStations);
  const n = Math.floor((high - low) / dz);
  if (!(n > 20)) return undefined;
  const profiles = Array.from({ length: angles }, (_, k) =>
    section(near, (2 * Math.PI * k) / angles, low + dz / 2, dz, n, inside),
  );
  const stretch = wavy(profiles[0], reach_mm, dz);
  if (!stretch) return undefined;
  const [i0, i1] = stretch;
  const period = periodOf(profiles[0], i0, i1);
  if (period === undefined) return undefined;
  const pitch_mm = period * dz;
  let [least, most] = [Infinity, 0];
  for (const profile of profiles) {
    for (let i = i0; i < i1; i++) {
      if (profile[i] < least) least = profile[i];
      if (profile[i] > most) most = profile[i];
    }
  }
  const depth = most - least;
  if (depth < depthRange[0] * pitch_mm || depth > depthRange[1] * pitch_mm) return undefined;
  if (pitch_mm < 2 * most * pitchRange[0] || pitch_mm > 2 * most * pitchRange[1]) return undefined;
  if ((i1 - i0) * dz < leastTurns * pitch_mm) return undefined;
  if (!winds(profiles, i0, i1, period)) return undefined;
  const from = low + (grown(profiles, i0, -1, period, least + depth / 2) + 0.5) * dz;
  const to = low + (grown(profiles, i1 - 1, 1, period, least + depth / 2) + 0.5) * dz;
  return { from, to, radius_mm: most, pitch_mm, inside };
}

/** Radius of the surface in a half plane that ends on the axis, station by station; 0 where there is none. */
function section(
  { corners: c }: Around,
  angle: number,
  z0: number,
  dz: number,
  n: number,
  inside: boolean,
): Float64Array {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const out = new Float64Array(n);
  const rho = [0, 0, 0];
  const z = [0, 0, 0];
  for (let t = 0; t < c.length; t += 9) {
    let used = 0;
    for (let e = 0; e < 3; e++) {
      const i = t + e * 3;
      const j = t + ((e + 1) % 3) * 3;
      const qi = cos * c[i + 1] - sin * c[i];
      const qj = cos * c[j + 1] - sin * c[j];
      if (qi >= 0 === qj >= 0) continue;
      const s = qi / (qi - qj);
      const pi = cos * c[i] + sin * c[i + 1];
      const pj = cos * c[j] + sin * c[j + 1];
      rho[used] = pi + s * (pj - pi);
      z[used++] = c[i + 2] + s * (c[j + 2] - c[i + 2]);
    }
    if (used !== 2 || z[0] === z[1]) continue;
    const [a, b] = z[0] < z[1] ? [0, 1] : [1, 0];
    const first = Math.max(0, Math.ceil((z[a] - z0) / dz));
    const last = Math.min(n - 1, Math.floor((z[b] - z0) / dz));
    for (let i = first; i <= last; i++) {
      const r = rho[a] + ((z0 + i * dz - z[a]) / (z[b] - z[a])) * (rho[b] - rho[a]);
      if (r <= 0) continue;
      if (out[i] === 0 || (inside ? r < out[i] : r > out[i])) out[i] = r;
    }
  }
  return out;
}

/** The longest stretch in which the profile goes up and down about its local mean all the time: [from, to) in stations. */
function wavy(profile: Float64Array, reach_mm: number, dz: number): [number, number] | undefined {
  const half = Math.max(4, Math.round((0.6 * reach_mm) / dz));
  const n = profile.length;
  const sums = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) sums[i + 1] = sums[i] + profile[i];
  const above = new Int8Array(n);
  for (let i = 0; i < n; i++) {
    const [a, b] = [Math.max(0, i - half), Math.min(n, i + half + 1)];
    const off = profile[i] - (sums[b] - sums[a]) / (b - a);
    above[i] =
      profile[i] === 0 || profile[i] > reach_mm || Math.abs(off) > 0.3 * profile[i] ? 0 : off > 0 ? 1 : -1;
  }
  let best: [number, number] | undefined;
  let start = -1;
  let last = 0;
  let changed = 0;
  for (let i = 0; i <= n; i++) {
    const sign = i < n ? above[i] : 0;
    const broken = sign === 0 || i - changed > 2 * half;
    if (start >= 0 && broken) {
      if (!best || changed - start > best[1] - best[0]) best = [start, changed];
      start = -1;
    }
    if (sign === 0) continue;
    if (start < 0) {
      start = i;
      changed = i;
    } else if (sign !== last) changed = i;
    last = sign;
  }
  return best && best[1] - best[0] > 10 ? best : undefined;
}

/** Stations after which the profile repeats: first high peak of its autocorrelation, between stations by a parabola. */
function periodOf(profile: Float64Array, i0: number, i1: number): number | undefined {
  const most = Math.floor((i1 - i0) / 2);
  const likeness = Float64Array.from({ length: most + 1 }, (_, lag) =>
    correlation(profile, i0, profile, i0 + lag, i1 - i0 - lag),
  );
  let fallen = false;
  for (let lag = 2; lag < most; lag++) {
    if (likeness[lag] < 0) fallen = true;
    if (!fallen || likeness[lag] < 0.6) continue;
    if (likeness[lag] < likeness[lag - 1] || likeness[lag] < likeness[lag + 1]) continue;
    // The peaks at many periods tell one period better than the first does.
    const times = Math.max(1, Math.floor((i1 - i0) / 2 / lag) - 1);
    let period = peak(likeness, lag);
    for (let k = 2; k <= times; k++) {
      const at = Math.round(period * k);
      if (at + 2 >= most) break;
      let top = at;
      for (let i = at - 2; i <= at + 2; i++) if (likeness[i] > likeness[top]) top = i;
      period = peak(likeness, top) / k;
    }
    return period;
  }
  return undefined;
}

function peak(values: Float64Array, i: number): number {
  const [a, b, c] = [values[i - 1], values[i], values[i + 1]];
  const bend = a - 2 * b + c;
  return bend < 0 ? i + (a - c) / (2 * bend) : i;
}

function correlation(a: Float64Array, i: number, b: Float64Array, j: number, n: number): number {
  let [sa, sb] = [0, 0];
  for (let k = 0; k < n; k++) {
    sa += a[i + k];
    sb += b[j + k];
  }
  let [ab, aa, bb] = [0, 0, 0];
  for (let k = 0; k < n; k++) {
    const x = a[i + k] - sa / n;
    const y = b[j + k] - sb / n;
    ab += x * y;
    aa += x * x;
    bb += y * y;
  }
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
}

/** One pitch a turn, one way or the other: rings about the axis stay where they are, a knurl has no period. */
function winds(profiles: readonly Float64Array[], i0: number, i1: number, period: number): boolean {
  const room = Math.ceil(period) + 1;
  const n = i1 - i0 - 2 * room;
  if (n < period) return false;
  return [1, -1].some((hand) =>
    profiles.every((profile, k) => {
      const expected = (((hand * k) / angles) % 1) * period;
      const at = (shift: number) =>
        correlation(profiles[0], i0 + room, profile, i0 + room + Math.round(shift), n);
      const here = Math.max(at(expected), at(expected - Math.sign(expected) * period));
      const against = Math.max(at(expected + period / 2), at(expected - period / 2));
      return here > 0.6 && here > against;
    }),
  );
}

/** The last station from `i` on, going `way`, at which some angle still has a crest within one period. */
function grown(
  profiles: readonly Float64Array[],
  i: number,
  way: 1 | -1,
  period: number,
  crest: number,
): number {
  const n = profiles[0].length;
  let seen = i;
  for (let k = i; k >= 0 && k < n && (k - seen) * way <= period; k += way) {
    const [low, high] = profiles.reduce(([a, b], p) => [Math.min(a, p[k]), Math.max(b, p[k])], [Infinity, 0]);
    if (low === 0) break;
    if (low < crest && high > crest) seen = k;
  }
  return seen;
}
