/** Pools of a flooded air space that are large enough to be listed, by columns. */
import type { Control, SurveySettings } from '../result.ts';
import { step } from '../stopped.ts';
import type { AirSpace } from './air-space.ts';
import { deepestPoint } from './deepest.ts';
import type { Region } from './regions.ts';
import { type Shore, shoreOf } from './shore.ts';
import { regionVolume } from './surface.ts';

export interface Candidate {
  readonly region: Region;
  /** Where it first runs over, u and v in the turned frame. */
  readonly spill: readonly [number, number];
  /** u, v, z. */
  readonly deepest: readonly [number, number, number];
  readonly shore: Shore;
  readonly volume_mL: number;
  /** Indices of the parts around it. */
  readonly parts: readonly number[];
}

export interface Candidates {
  /** Largest first. */
  readonly found: readonly Candidate[];
  /** How many were too small, and what they hold together. */
  readonly left: number;
  readonly leftOut_mL: number;
}

export function candidatesIn(
  { soup, bins, pools }: Pick<AirSpace, 'soup' | 'bins' | 'pools'>,
  settings: SurveySettings,
  control: Control,
): Candidates {
  const found: Candidate[] = [];
  let left = 0;
  let leftOut_mL = 0;
  let done = 0;
  for (const { region, spill } of pools) {
    step(control, 'standing liquid', done++ / pools.length);
    const deepest = deepestPoint(soup, region);
    const shallow = region.level - deepest[2] < settings.leastPoolDepth_mm;
    const shore = shallow ? undefined : shoreOf(soup, bins, region);
    const volume_mL = (shore ? regionVolume(region, shore) : region.volume_mm3) / 1000;
    if (!shore || volume_mL < settings.leastPool_mL) {
      left++;
      leftOut_mL += volume_mL;
      continue;
    }
    found.push({ region, spill, deepest, shore, volume_mL, parts: shore.parts });
  }
  found.sort((a, b) => b.volume_mL - a.volume_mL);
  return { found, left, leftOut_mL };
}
