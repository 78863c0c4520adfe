import type { SurveySettings } from './result.ts';

/** Defaults: limits of the strictest common practice, so that a review can only relax them. */
export const defaultSettings: SurveySettings = {
  pitch_mm: 2,
  leastPool_mL: 0.1,
  leastPoolDepth_mm: 0.1,
  flatBelow_deg: 3,
  leastFlat_cm2: 1,
  cornerRadiusBelow_mm: 6,
  cornerAngleBelow_deg: 135,
  gapBelow_mm: 3,
  gapSpacing_mm: 4,
  contact_mm: 0.02,
  leastHollow_mL: 0.05,
  leastBlindRatio: 0.5,
};
