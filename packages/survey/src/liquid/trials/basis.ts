/**
 * What trials start from: a model with its air space. A trial changes one thing (a hole drilled, a part tilted) and floods
 * again only what depends on it; the model itself stays as it is.
 */
import type { Model, Vec3 } from '@coveline/model';
import type { Control, SurveySettings } from '../../result.ts';
import { type AirSpace, airSpaceOf } from '../air-space.ts';
import type { Bins } from '../bins.ts';
import { deepestPoint } from '../deepest.ts';
import type { Region } from '../regions.ts';
import { shoreOf } from '../shore.ts';
import { fromTurned, type Soup } from '../soup.ts';
import { regionVolume } from '../surface.ts';

export interface LiquidBasis {
  readonly model: Model;
  readonly settings: SurveySettings;
  readonly air: AirSpace;
}

/** As long as standing liquid by columns; trials on it then take a fraction of a second each. */
export function liquidBasis(model: Model, settings: SurveySettings, control: Control = {}): LiquidBasis {
  return { model, settings, air: airSpaceOf(model, settings, control) };
}

/** A pool before or after a trial, by the columns of the whole model. */
export interface TrialPool {
  readonly volume_mL: number;
  readonly depth_mm: number;
  readonly deepest_mm: Vec3;
}

export interface Trial {
  /** Pools that the trial changes, largest first. Those that it leaves alone are not told. */
  readonly before: readonly TrialPool[];
  readonly after: readonly TrialPool[];
  readonly before_mL: number;
  readonly after_mL: number;
  /** before_mL - after_mL: negative where it makes things worse. */
  readonly saved_mL: number;
  readonly caveats: readonly string[];
}

export function trialOf(
  before: readonly TrialPool[],
  after: readonly TrialPool[],
  caveats: readonly string[],
): Trial {
  const sum = (pools: readonly TrialPool[]): number => pools.reduce((s, { volume_mL }) => s + volume_mL, 0);
  const [before_mL, after_mL] = [sum(before), sum(after)];
  return { before, after, before_mL, after_mL, saved_mL: before_mL - after_mL, caveats };
}

/** Pools of at least the listed volume and depth, largest first. */
export function trialPools(
  soup: Soup,
  bins: Bins,
  regions: readonly Region[],
  { leastPool_mL, leastPoolDepth_mm }: SurveySettings,
): TrialPool[] {
  const pools = regions.map((region): TrialPool => {
    const deepest = deepestPoint(soup, region);
    return {
      volume_mL: regionVolume(region, shoreOf(soup, bins, region)) / 1000,
      depth_mm: region.level - deepest[2],
      deepest_mm: fromTurned(soup, ...deepest),
    };
  });
  return pools
    .filter((pool) => pool.volume_mL >= leastPool_mL && pool.depth_mm >= leastPoolDepth_mm)
    .sort((a, b) => b.volume_mL - a.volume_mL);
}

/** From the frame of the model to that of the columns. */
export function toTurned({ turn: [cos, sin] }: Soup, [x, y, z]: Vec3): Vec3 {
  return [cos * x + sin * y, cos * y - sin * x, z];
}
