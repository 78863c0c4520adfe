/** Flats that stand opposite each other: the sides of a hexagon, the walls of a slot. */
import type { Vec3 } from '@coveline/model';
import { dot, minus, unit } from '../hollows/vector.ts';
import type { Flat } from './flats.ts';

/** Directions are the same within this angle; a drawing's are exact, a noisy mesh's are not. */
export const sameAngle_rad = (3 * Math.PI) / 180;
/** Middles of opposite flats stand opposite each other within this share of their distance. */
export const opposite = 0.2;
/** Opposite flats are of one size, but for what cuts into one of them. */
const mostUnlike = 2;
/** Nothing on a fastener is wider. */
const widest_mm = 100;

export interface Pair {
  /** Unit, from one towards the other or back. */
  readonly normal: Vec3;
  readonly middle: Vec3;
  readonly across_mm: number;
  /** They face each other across the air; otherwise material is between them. */
  readonly inward: boolean;
  readonly flats: readonly [Flat, Flat];
}

/** Flats that stand opposite each other, back to back or face to face, near enough for a hexagon. */
export function facingPairs(flats: readonly Flat[]): Pair[] {
  const sorted = [...flats].sort((a, b) => a.centre[0] - b.centre[0]);
  const pairs: Pair[] = [];
  for (const [i, a] of sorted.entries()) {
    for (let j = i + 1; j < sorted.length; j++) {
      const b = sorted[j];
      const between = minus(b.centre, a.centre);
      if (between[0] > widest_mm) break;
      if (Math.abs(between[1]) > widest_mm || Math.abs(between[2]) > widest_mm) continue;
      if (a.area_mm2 > mostUnlike * b.area_mm2 || b.area_mm2 > mostUnlike * a.area_mm2) continue;
      if (dot(a.normal, b.normal) > -Math.cos(sameAngle_rad)) continue;
      const normal = unit(minus(a.normal, b.normal));
      const across = -dot(between, normal);
      const across_mm = Math.abs(across);
      const aside = Math.sqrt(Math.max(0, dot(between, between) - across * across));
      if (aside > opposite * across_mm) continue;
      const middle: Vec3 = [
        (a.centre[0] + b.centre[0]) / 2,
        (a.centre[1] + b.centre[1]) / 2,
        (a.centre[2] + b.centre[2]) / 2,
      ];
      pairs.push({ normal, middle, across_mm, inward: across < 0, flats: [a, b] });
    }
  }
  return pairs;
}
