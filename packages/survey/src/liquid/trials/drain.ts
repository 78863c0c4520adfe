/** A drain hole tried without drilling it: the flood gets one way more, and what changes is counted again. */
import type { Vec3 } from '@coveline/model';
import { eachNeighbour } from '../each-neighbour.ts';
import { type Flood, spread } from '../flood.ts';
import { intervalAt, join } from '../pipes.ts';
import { type Region, regionsOf, sameHeight_mm } from '../regions.ts';
import { type LiquidBasis, type Trial, toTurned, trialOf, trialPools } from './basis.ts';
import { along, type Drilled, drilled } from './bore-through.ts';

export interface DrainHole {
  /** A point on the surface, mm. */
  readonly at_mm: Vec3;
  /** Into the material; straight down when absent. Any length. */
  readonly direction?: Vec3;
  readonly diameter_mm: number;
}

export interface DrainTrial extends Trial {
  /** Ids of the parts that are drilled through. */
  readonly parts: readonly string[];
  readonly exit_mm: Vec3;
  readonly length_mm: number;
  /**
   * Head of water that surface tension holds back at the outlet: what stands lower than this over the outlet may stay in the
   * pool and in the hole, mm.
   */
  readonly heldHead_mm: number;
}

/** A little into the air on either side of the hole, mm. */
const beyond_mm = 0.2;

/** Throws RangeError where the diameter or the direction makes no sense, or where the hole leads nowhere. */
export function tryDrain({ model, settings, air }: LiquidBasis, hole: DrainHole): DrainTrial {
  const { at_mm, diameter_mm } = hole;
  if (!(diameter_mm > 0)) throw new RangeError(`A hole has a diameter above 0 mm; got ${diameter_mm}.`);
  const direction = unit(hole.direction ?? [0, 0, -1]);
  const found = drilled(model, at_mm, direction, diameter_mm);
  if (!found) {
    throw new RangeError(
      `A hole from (${at_mm.map((c) => Math.round(c * 10) / 10).join(', ')}) leads nowhere: there is no material behind that point, or no air behind it within 300 mm.`,
    );
  }
  const { soup, bins, flood: old } = air;
  const flood: Flood = { columns: old.columns, level: old.level.slice(), from: old.from.slice() };
  const inside = intervalAt(flood, toTurned(soup, along(at_mm, direction, -beyond_mm)));
  const outside = intervalAt(flood, toTurned(soup, along(found.exit_mm, direction, beyond_mm)));
  const caveats: string[] = [];
  if (inside < 0 || outside < 0) {
    caveats.push('The air at one end of the hole is narrower than the columns: nothing can be said of it.');
  } else {
    const height = Math.max(found.lowest_mm, found.outlet_mm);
    const mouth = downTo(flood, inside, height, diameter_mm / 2);
    spread(flood, join(flood, { p: mouth, q: outside, height }));
  }
  const { before, after } = changedRegions(old, flood);
  return {
    ...trialOf(trialPools(soup, bins, before, settings), trialPools(soup, bins, after, settings), caveats),
    parts: found.parts.map((p) => model.parts[p].id),
    exit_mm: found.exit_mm,
    length_mm: found.length_mm,
    heldHead_mm: heldHead(found, diameter_mm),
  };
}

/**
 * From an interval down the floor to one that reaches below the mouth's lowest point, for a column beside the axis may
 * stand higher: step by step, no farther than the mouth is wide and a column more.
 */
function downTo({ columns }: Flood, start: number, height: number, radius_mm: number): number {
  const { grid, bottom, columnOf } = columns;
  const place = (n: number): readonly [number, number] => {
    const i = columnOf[n] % grid.nu;
    return [i, (columnOf[n] - i) / grid.nu];
  };
  const [i0, j0] = place(start);
  const reach = radius_mm / grid.pitch + 1.5;
  let at = start;
  while (bottom[at] > height) {
    let lowest = at;
    eachNeighbour(columns, at, bottom[at] + sameHeight_mm, (n) => {
      const [i, j] = place(n);
      if (bottom[n] < bottom[lowest] && Math.hypot(i - i0, j - j0) <= reach) lowest = n;
    });
    if (lowest === at) break;
    at = lowest;
  }
  return at;
}

/** Pools in which a level fell, and what they become. */
function changedRegions(old: Flood, now: Flood): { before: Region[]; after: Region[] } {
  const { bottom } = old.columns;
  const fell: number[] = [];
  for (let n = 0; n < bottom.length; n++) {
    if (old.level[n] !== now.level[n] && old.level[n] > bottom[n] && old.level[n] < Infinity) fell.push(n);
  }
  if (fell.length === 0) return { before: [], after: [] };
  // Levels fall for a pool as a whole, so the pools that changed are made of nothing but what fell.
  const among = Uint32Array.from(fell);
  return { before: regionsOf(old, among), after: regionsOf(now, among) };
}

/** Surface tension over weight of water at 20 degC: 0.0728 N/m over 998 kg/m3 times 9.81 m/s2, mm2 (from memory). */
const capillary_mm2 = 7.44;

/**
 * A drop that hangs at a round mouth bears at most the pressure of a half sphere, four times the surface tension over the
 * diameter (Young and Laplace); the water in the hole itself presses with its own height.
 */
function heldHead({ length_mm }: Drilled, diameter_mm: number): number {
  return Math.max(0, (4 * capillary_mm2) / diameter_mm - length_mm);
}

function unit(direction: Vec3): Vec3 {
  const length = Math.hypot(...direction);
  if (!(length > 0)) throw new RangeError('The direction of a hole has no length.');
  return [direction[0] / length, direction[1] / length, direction[2] / length];
}
