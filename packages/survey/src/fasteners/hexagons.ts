/** Hexagons in a set of flats: six planes at 60 degrees about an axis, at one distance from it. */
import type { Vec3 } from '@coveline/model';
import { cross, dot, minus, unit } from '../hollows/vector.ts';
import type { Weld } from '../weld/weld.ts';
import type { Axis } from './axis.ts';
import type { Flat } from './flats.ts';
import { facingPairs, opposite, type Pair, sameAngle_rad } from './pairs.ts';

export interface Hexagon extends Axis {
  readonly acrossFlats_mm: number;
  /** Where the flats begin and end along the axis, mm from its origin. */
  readonly from: number;
  readonly to: number;
  /** The flats look at the axis: a socket. */
  readonly inward: boolean;
  readonly triangles: ReadonlySet<number>;
}

/** Lengths are the same within this share of the distance across the flats. */
const sameLength = 0.03;
/**
 * Width of a flat over the distance across: 1/sqrt(3) = 0.577 by geometry, less where chamfers or a round cut the edges.
 * Every other facet of a round surface with 12 facets would have 0.27.
 */
const widthRange = [0.4, 0.62] as const;
/** Across flats of sockets from M1.6 up and of nuts up to M64 (ISO 4762, ISO 4032; from memory). */
const sizeRange_mm = [1.2, 100] as const;

export function hexagonsIn(weld: Weld, flats: readonly Flat[]): Hexagon[] {
  const pairs = facingPairs(flats)
    .filter(({ across_mm }) => across_mm >= sizeRange_mm[0] && across_mm <= sizeRange_mm[1])
    .sort((a, b) => a.across_mm - b.across_mm);
  const found: Hexagon[] = [];
  const used = new Set<Pair>();
  for (const [i, p] of pairs.entries()) {
    if (used.has(p)) continue;
    for (let j = i + 1; j < pairs.length && !used.has(p); j++) {
      const q = pairs[j];
      if (q.across_mm > (1 + sameLength) * p.across_mm) break;
      if (used.has(q) || !belong(p, q)) continue;
      for (let k = j + 1; k < pairs.length; k++) {
        const r = pairs[k];
        if (r.across_mm > (1 + sameLength) * p.across_mm) break;
        if (used.has(r) || !belong(p, r) || !belong(q, r)) continue;
        const hexagon = hexagonFrom(weld, [p, q, r]);
        if (!hexagon) continue;
        found.push(hexagon);
        for (const one of [p, q, r]) used.add(one);
        break;
      }
    }
  }
  return found;
}

function belong(p: Pair, q: Pair): boolean {
  if (p.inward !== q.inward) return false;
  const d = minus(p.middle, q.middle);
  if (dot(d, d) > (opposite * p.across_mm) ** 2) return false;
  const angle = Math.acos(Math.min(1, Math.abs(dot(p.normal, q.normal))));
  return Math.abs(angle - Math.PI / 3) < sameAngle_rad;
}

function hexagonFrom(weld: Weld, pairs: readonly [Pair, Pair, Pair]): Hexagon | undefined {
  const first = cross(pairs[0].normal, pairs[1].normal);
  let sum: Vec3 = [0, 0, 0];
  for (const [a, b] of [
    [0, 1],
    [1, 2],
    [2, 0],
  ]) {
    const n = cross(pairs[a].normal, pairs[b].normal);
    const sign = dot(n, first) < 0 ? -1 : 1;
    sum = [sum[0] + sign * n[0], sum[1] + sign * n[1], sum[2] + sign * n[2]];
  }
  const direction = unit(sum);
  if (pairs.some(({ normal }) => Math.abs(dot(normal, direction)) > Math.sin(sameAngle_rad)))
    return undefined;
  const mean: Vec3 = [0, 1, 2].map((k) =>
    pairs.reduce((s, { middle }) => s + middle[k] / 3, 0),
  ) as unknown as Vec3;
  // Each pair tells where the axis stands along its normal; for three normals at 60 degrees the sum of n nT is 1.5 I.
  let origin = mean;
  for (const { normal, middle } of pairs) {
    const off = dot(minus(middle, mean), normal) / 1.5;
    origin = [origin[0] + off * normal[0], origin[1] + off * normal[1], origin[2] + off * normal[2]];
  }
  const acrossFlats_mm = pairs.reduce((s, { across_mm }) => s + across_mm / 3, 0);
  let [from, to] = [Infinity, -Infinity];
  const triangles = new Set<number>();
  for (const { normal, flats } of pairs) {
    const sideways = cross(direction, normal);
    for (const flat of flats) {
      let [left, right] = [Infinity, -Infinity];
      for (const t of flat.triangles) {
        triangles.add(t);
        for (let c = 0; c < 3; c++) {
          const i = weld.triangles[t * 3 + c] * 3;
          const d = minus([weld.positions[i], weld.positions[i + 1], weld.positions[i + 2]], origin);
          const [z, x] = [dot(d, direction), dot(d, sideways)];
          from = Math.min(from, z);
          to = Math.max(to, z);
          left = Math.min(left, x);
          right = Math.max(right, x);
        }
      }
      const width = (right - left) / acrossFlats_mm;
      if (width < widthRange[0] || width > widthRange[1]) return undefined;
    }
  }
  return { origin, direction, acrossFlats_mm, from, to, inward: pairs[0].inward, triangles };
}
