/** One limb asked of a model, without the rest of a survey. */
import type { Model } from '@coveline/model';
import {
  defaultSettings,
  emptySite,
  type Limb,
  type MeasureOutcome,
  measureReach,
  reachOf,
  type Site,
} from '@coveline/survey';

/** A ball of `size` mm with as much touch as its radius, and a way without end unless told. */
export function limbOf(size_mm: number, length_mm = 1e6): Limb {
  return { kind: 'hand', size_mm, length_mm, touch_mm: size_mm / 2 };
}

/** The floor is far below unless told. */
export function asked(
  model: Model,
  limb: Limb,
  site: Partial<Site> = {},
  spacing_mm = 10,
): MeasureOutcome<'handReach'> {
  const settings = {
    ...defaultSettings,
    hand_mm: limb.size_mm,
    tool_mm: limb.size_mm,
    reachSpacing_mm: spacing_mm,
  };
  const around = { ...emptySite, floor_mm: -1e5, ...site };
  return measureReach(reachOf(model, settings, {}, around), limb, settings);
}
