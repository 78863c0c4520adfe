/** Slots and crosses: walls that face each other across the air beside an axis, over a floor or in four arms. */
import type { Vec3 } from '@coveline/model';
import { cross, dot, minus, unit } from '../hollows/vector.ts';
import type { Weld } from '../weld/weld.ts';
import type { Axis } from './axis.ts';
import type { Flat } from './flats.ts';
import { facingPairs, type Pair } from './pairs.ts';

export interface Recess extends Axis {
  readonly kind: 'slot' | 'crossRecess';
  /** Between the walls, and from end to end, mm. */
  readonly width_mm: number;
  readonly length_mm: number;
  /** Along the axis, which points out of the recess, mm from its origin. */
  readonly from: number;
  readonly to: number;
}

/** Slots of M1.6 to M10 screws are 0.4 to 2.5 mm wide (ISO 1207; from memory); a wide margin about them. */
const widthRange_mm = [0.3, 6] as const;
/** Length over width of a slot: a square hole is none. */
const leastLong = 2.5;
const squareSine = Math.sin((3 * Math.PI) / 180);

export function recessesIn(weld: Weld, flats: readonly Flat[]): Recess[] {
  const pairs = facingPairs(flats).filter(
    ({ inward, across_mm }) => inward && across_mm >= widthRange_mm[0] && across_mm <= widthRange_mm[1],
  );
  const crosses = crossesIn(weld, pairs);
  const slots = pairs
    .filter((pair) => !crosses.some(({ arms }) => arms.includes(pair)))
    .flatMap((pair) => slotFrom(weld, flats, pair) ?? []);
  return [...crosses.map(({ recess }) => recess), ...slots];
}

/** A pair with a floor between its walls, long across the axis that the floor gives. */
function slotFrom(
  weld: Weld,
  flats: readonly Flat[],
  { normal, middle, across_mm, flats: walls }: Pair,
): Recess | undefined {
  for (const floor of flats) {
    if (floor === walls[0] || floor === walls[1]) continue;
    if (Math.abs(dot(floor.normal, normal)) > squareSine) continue;
    const up = minus(middle, floor.centre);
    if (Math.abs(dot(up, normal)) > 0.2 * across_mm) continue;
    const direction = floor.normal;
    const height = dot(up, direction);
    if (!(height > 0) || height > 4 * across_mm) continue;
    const along = cross(direction, normal);
    if (Math.abs(dot(up, along)) > across_mm) continue;
    // The floor is as long as the walls and as wide as the slot.
    const [left, right] = extent(weld, floor, middle, normal);
    if (right - left > 1.2 * across_mm || right - left < 0.8 * across_mm) continue;
    const [a, b] = extent(weld, walls[0], middle, along);
    const [low, high] = extent(weld, walls[0], middle, direction);
    if (b - a < leastLong * across_mm || high - low > b - a) continue;
    return {
      kind: 'slot',
      origin: middle,
      direction,
      width_mm: across_mm,
      length_mm: b - a,
      from: low,
      to: high,
    };
  }
  return undefined;
}

/** Two pairs of arms at right angles, each pair of arms in line, all about one axis. */
function crossesIn(weld: Weld, pairs: readonly Pair[]): { recess: Recess; arms: Pair[] }[] {
  const found: { recess: Recess; arms: Pair[] }[] = [];
  const used = new Set<Pair>();
  for (const [i, p] of pairs.entries()) {
    for (let j = i + 1; j < pairs.length && !used.has(p); j++) {
      const q = pairs[j];
      if (used.has(q) || !isOtherArm(p, q)) continue;
      const direction = unit(cross(p.normal, q.normal));
      const between = minus(q.middle, p.middle);
      // Where the two middle planes meet, at the height of the first arm.
      const off = dot(between, q.normal);
      const origin: Vec3 = [0, 1, 2].map((k) => p.middle[k] + off * q.normal[k]) as unknown as Vec3;
      const arms = pairs.filter(
        (arm) =>
          !used.has(arm) &&
          Math.abs(arm.across_mm - p.across_mm) < 0.25 * p.across_mm &&
          Math.abs(dot(arm.normal, direction)) < 0.2 &&
          isArmOf(arm, origin, direction, p.normal),
      );
      const along = [p.normal, q.normal].map(
        (n) => arms.filter((arm) => Math.abs(dot(arm.normal, n)) > 0.99).length,
      );
      if (along[0] < 2 || along[1] < 2) continue;
      for (const arm of arms) used.add(arm);
      found.push({ recess: crossFrom(weld, arms, origin, direction), arms });
    }
  }
  return found;
}

function isOtherArm(p: Pair, q: Pair): boolean {
  if (Math.abs(dot(p.normal, q.normal)) > squareSine) return false;
  if (Math.abs(p.across_mm - q.across_mm) > 0.25 * p.across_mm) return false;
  const d = minus(q.middle, p.middle);
  return dot(d, d) < (6 * p.across_mm) ** 2;
}

/** The middle plane of an arm holds the axis, and its middle stands away from it. */
function isArmOf(arm: Pair, origin: Vec3, direction: Vec3, normal: Vec3): boolean {
  const turn = Math.abs(dot(arm.normal, normal));
  if (turn > squareSine && turn < 1 - squareSine) return false;
  const d = minus(arm.middle, origin);
  const z = dot(d, direction);
  const away = Math.sqrt(Math.max(0, dot(d, d) - z * z));
  return (
    Math.abs(dot(d, arm.normal)) < 0.2 * arm.across_mm &&
    away > 0.4 * arm.across_mm &&
    away < 6 * arm.across_mm &&
    Math.abs(z) < 4 * arm.across_mm
  );
}

function crossFrom(weld: Weld, arms: readonly Pair[], origin: Vec3, direction: Vec3): Recess {
  let [from, to, reach] = [Infinity, -Infinity, 0];
  for (const { flats, normal } of arms) {
    for (const wall of flats) {
      const [low, high] = extent(weld, wall, origin, direction);
      from = Math.min(from, low);
      to = Math.max(to, high);
      reach = Math.max(reach, ...extent(weld, wall, origin, cross(direction, normal)).map(Math.abs));
    }
  }
  return {
    kind: 'crossRecess',
    origin,
    direction,
    width_mm: arms[0].across_mm,
    length_mm: 2 * reach,
    from,
    to,
  };
}

/** Least and greatest way of a flat's corners from a point in a direction, mm. */
function extent(
  { positions: p, triangles }: Weld,
  flat: Flat,
  from: Vec3,
  direction: Vec3,
): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const t of flat.triangles) {
    for (let c = 0; c < 3; c++) {
      const i = triangles[t * 3 + c] * 3;
      const way = dot(minus([p[i], p[i + 1], p[i + 2]], from), direction);
      low = Math.min(low, way);
      high = Math.max(high, way);
    }
  }
  return [low, high];
}
