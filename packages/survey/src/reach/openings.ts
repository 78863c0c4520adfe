import type { Vec3 } from '@coveline/model';
import type { Drawing, Opening } from '../result.ts';
import { closestPoint, newNearest } from '../tree/closest.ts';
import type { Limb } from './limb.ts';
import { narrowest } from './narrowest.ts';
import { inModel, type ReachSpace } from './space.ts';
import { climbedThroat } from './throat.ts';
import { placeOf, type Widest } from './widest.ts';

/** Behind an opening it is at least this much roomier than in it: elsewhere the air only tapers. */
const roomier = 1.1;
/** Openings wider than this many balls are no matter. */
const widestTold = 1.25;
/** A part belongs to an opening when it comes this near to its rim, as a part of its radius. */
const rim = 0.15;
/** Radii of one opening differ by less, mm. */
const alike_mm = 0.5;
const ringPoints = 24;
/** Steps back along the way, to see where it is heading. */
const stepsBack = 4;

const nearest = newNearest();

/** The throats of the widest ways with at least `least_mm2` of surface behind them. `behind`: area per throat, mm2. */
export function openingsOf(
  space: ReachSpace,
  widest: Widest,
  behind: ReadonlyMap<number, number>,
  { size_mm }: Limb,
  least_mm2: number,
): { opening: Omit<Opening, 'id'>; drawing: Drawing; throats: readonly number[] }[] {
  const peak = new Float32Array(space.lattice.cells);
  for (let c = 0; c < peak.length; c++) {
    const throat = widest.throat[c];
    if (throat >= 0) peak[throat] = Math.max(peak[throat], space.clearance.distance[c]);
  }
  const throats = [...behind.keys()]
    .filter(
      (throat) =>
        widest.from[throat] !== throat &&
        2 * widest.radius[throat] <= widestTold * size_mm &&
        peak[throat] > roomier * widest.radius[throat],
    )
    .sort((a, b) => a - b);
  return sameOpening(space, widest, throats).flatMap((same) => {
    const area = (throat: number) => behind.get(throat) ?? 0;
    const whole = same.reduce((sum, throat) => sum + area(throat), 0);
    if (whole < least_mm2) return [];
    const main = same.reduce((most, throat) => (area(throat) > area(most) ? throat : most));
    return [{ ...openingAt(space, widest, main, whole / 100), throats: same }];
  });
}

/** Throats about equally wide and less than a ball apart, one by one, are places in one slot. */
function sameOpening(
  { lattice }: ReachSpace,
  { spot, spots, radius }: Widest,
  throats: readonly number[],
): number[][] {
  const a = new Float64Array(3);
  const b = new Float64Array(3);
  const groups: number[][] = [];
  const left = new Set(throats);
  for (const seed of throats) {
    if (!left.delete(seed)) continue;
    const group = [seed];
    for (let n = 0; n < group.length; n++) {
      placeOf(lattice, spot, spots, group[n], a);
      for (const other of left) {
        placeOf(lattice, spot, spots, other, b);
        const apart = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
        if (apart > 2 * radius[seed] || Math.abs(radius[other] - radius[seed]) > alike_mm) continue;
        left.delete(other);
        group.push(other);
      }
    }
    groups.push(group);
  }
  return groups;
}

function openingAt(space: ReachSpace, widest: Widest, throat: number, behind_cm2: number) {
  const { lattice } = space;
  const { spot, spots, from } = widest;
  const a = new Float64Array(3);
  const b = new Float64Array(3);
  const r = climbedThroat(space, widest, throat);
  const middle = narrowest.slice();
  let back = throat;
  for (let n = 0; n < stepsBack; n++) back = from[back];
  placeOf(lattice, spot, spots, back, a);
  placeOf(lattice, spot, spots, throat, b);
  const ring = circle(middle, [b[0] - a[0], b[1] - a[1], b[2] - a[2]], r);
  const parts = new Set<string>();
  const [cx, cy, cz] = lattice.corner;
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < ring.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      ring[i + k] += lattice.corner[k];
      low[k] = Math.min(low[k], ring[i + k]);
      high[k] = Math.max(high[k], ring[i + k]);
    }
    if (closestPoint(space.tree, ring[i], ring[i + 1], ring[i + 2], rim * r, nearest)) {
      parts.add(space.obstacles.parts[nearest.part].id);
    }
  }
  if (closestPoint(space.tree, middle[0] + cx, middle[1] + cy, middle[2] + cz, r * (1 + rim), nearest)) {
    parts.add(space.obstacles.parts[nearest.part].id);
  }
  const opening: Omit<Opening, 'id'> = {
    parts: [...parts].sort(),
    at_mm: inModel(lattice, middle[0], middle[1], middle[2]),
    bounds_mm: [low as unknown as Vec3, high as unknown as Vec3],
    size_mm: 2 * r,
    behind_cm2,
  };
  return { opening, drawing: { lines: [Float32Array.from(ring)] } };
}

/** A closed ring about a point, square to a direction. */
function circle(middle: Float64Array, along: readonly number[], r: number): Float64Array {
  const length = Math.hypot(...along);
  const n = length > 0 ? along.map((c) => c / length) : [0, 0, 1];
  const least = n.map(Math.abs).indexOf(Math.min(...n.map(Math.abs)));
  const e = [0, 1, 2].map((k) => (k === least ? 1 : 0) - n[least] * n[k]);
  const size = Math.hypot(...e);
  const u = e.map((c) => c / size);
  const v = [n[1] * u[2] - n[2] * u[1], n[2] * u[0] - n[0] * u[2], n[0] * u[1] - n[1] * u[0]];
  const ring = new Float64Array((ringPoints + 1) * 3);
  for (let i = 0; i <= ringPoints; i++) {
    const angle = (2 * Math.PI * (i % ringPoints)) / ringPoints;
    for (let k = 0; k < 3; k++) {
      ring[i * 3 + k] = middle[k] + r * (Math.cos(angle) * u[k] + Math.sin(angle) * v[k]);
    }
  }
  return ring;
}
