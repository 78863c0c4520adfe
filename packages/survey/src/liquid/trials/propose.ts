/** What would empty a pool: a drain hole at its deepest place, or a tilt of the part that it stands on. */
import type { Vec3 } from '@coveline/model';
import type { Control, Pool } from '../../result.ts';
import { step } from '../../stopped.ts';
import { firstHit, newHit } from '../../tree/ray.ts';
import { treeOf } from '../../tree/tree.ts';
import type { LiquidBasis, Trial } from './basis.ts';
import { type DrainHole, type DrainTrial, tryDrain } from './drain.ts';
import { type PartTilt, tryTilt } from './tilt-part.ts';

export interface Proposals {
  /** Id of the part on which the pool stands; absent where nothing is found under it. */
  readonly part?: string;
  /** The narrowest hole that leaves next to nothing, also of what surface tension holds; else the best that was tried. */
  readonly drain?: { readonly hole: DrainHole; readonly trial: DrainTrial; readonly left_mL: number };
  /** The least tilt that leaves next to nothing; else the best that was tried. Absent where none saves anything. */
  readonly tilt?: { readonly tilt: PartTilt; readonly trial: Trial };
}

/** Drills and tilts that a workshop has, mm and degrees (common practice). */
const diameters_mm = [6, 8, 10, 12, 15, 20, 25] as const;
const angles_deg = [1, 2, 3, 5, 8, 12, 20] as const;
/** Of what stands before, the share that may stay. */
const nextToNothing = 0.05;
const stage = 'proposals';
/** Start of the look down to the floor, over it, mm. */
const over_mm = 1;

/** `pool`: of the same model and settings. */
export function proposeFor(basis: LiquidBasis, pool: Pool, control: Control = {}): Proposals {
  step(control, stage, 0);
  const part = partUnder(basis, pool.deepest_mm);
  if (part === undefined) return {};
  const drain = bestDrain(basis, pool, control);
  const tilt = bestTilt(basis, pool, part, control);
  return { part, ...(drain && { drain }), ...(tilt && { tilt }) };
}

function bestDrain(basis: LiquidBasis, pool: Pool, control: Control): Proposals['drain'] {
  let best: Proposals['drain'];
  for (const diameter_mm of diameters_mm) {
    step(control, stage, 0.1);
    const at_mm = holeAt(basis, pool, diameter_mm);
    if (!at_mm) continue;
    const hole: DrainHole = { at_mm, diameter_mm };
    let trial: DrainTrial;
    try {
      trial = tryDrain(basis, hole);
    } catch (error) {
      // A hole that leads nowhere is no proposal; another diameter stands elsewhere.
      if (error instanceof RangeError) continue;
      throw error;
    }
    const held_mL = Math.min(trial.before_mL, (trial.heldHead_mm * pool.area_cm2) / 10);
    const left_mL = trial.after_mL + held_mL;
    if (trial.before_mL === 0 || left_mL >= (best?.left_mL ?? trial.before_mL)) continue;
    best = { hole, trial, left_mL };
    if (left_mL <= Math.max(basis.settings.leastPool_mL, nextToNothing * trial.before_mL)) break;
  }
  return best;
}

/** On the floor, so far from the deepest point towards the middle of the pool that a wall beside it is left whole. */
function holeAt({ model }: LiquidBasis, { deepest_mm, at_mm }: Pool, diameter_mm: number): Vec3 | undefined {
  const [dx, dy] = [at_mm[0] - deepest_mm[0], at_mm[1] - deepest_mm[1]];
  const away = Math.hypot(dx, dy);
  const share = away > 0 ? Math.min(1, diameter_mm / 2 / away) : 0;
  const x = deepest_mm[0] + share * dx;
  const y = deepest_mm[1] + share * dy;
  const z = Math.max(at_mm[2], deepest_mm[2]) + over_mm;
  const hit = newHit();
  return firstHit(treeOf(model), x, y, z, 0, 0, -1, Infinity, hit) ? [x, y, z - hit.t] : undefined;
}

function bestTilt(basis: LiquidBasis, pool: Pool, part: string, control: Control): Proposals['tilt'] {
  const [dx, dy] = [pool.spill_mm[0] - pool.deepest_mm[0], pool.spill_mm[1] - pool.deepest_mm[1]];
  // Right-handed about this axis, the side where it runs over goes down.
  const axis: Vec3 = Math.hypot(dx, dy) > 0 ? [-dy, dx, 0] : [1, 0, 0];
  let best: Proposals['tilt'];
  for (const [k, deg] of angles_deg.entries()) {
    step(control, stage, 0.2 + (0.8 * k) / angles_deg.length);
    const tilt: PartTilt = { part, axis, deg };
    const trial = tryTilt(basis, tilt);
    if (trial.saved_mL <= (best?.trial.saved_mL ?? 0)) continue;
    best = { tilt, trial };
    if (trial.saved_mL >= (1 - nextToNothing) * pool.volume_mL) break;
  }
  return best;
}

function partUnder({ model }: LiquidBasis, [x, y, z]: Vec3): string | undefined {
  const hit = newHit();
  return firstHit(treeOf(model), x, y, z + over_mm, 0, 0, -1, Infinity, hit)
    ? model.parts[hit.part].id
    : undefined;
}
