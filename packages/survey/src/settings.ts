import type { SurveySettings } from './result.ts';

/** Defaults: limits of the strictest common practice, so that a review can only relax them. */
export const defaultSettings: SurveySettings = {
  pitch_mm: 2,
  leastPool_mL: 0.1,
  leastPoolDepth_mm: 0.1,
  sealedBelow_mm: 0,
  flatBelow_deg: 3,
  leastFlat_cm2: 1,
  cornerRadiusBelow_mm: 6,
  cornerAngleBelow_deg: 135,
  gapBelow_mm: 3,
  gapSpacing_mm: 4,
  contact_mm: 0.02,
  leastHollow_mL: 0.05,
  leastBlindRatio: 0.5,
  // Breadth of a hand with its thumb, 95th percentile (EN 547-3, from memory).
  hand_mm: 120,
  // Reach of an arm, 5th percentile (EN 547-3, from memory): openings take the large hand, reaches the short arm.
  arm_mm: 615,
  // Length of an index finger, 5th percentile (EN 547-3, from memory).
  finger_mm: 59,
  // Head, length and bristles of a cleaning brush (common practice).
  tool_mm: 30,
  toolLength_mm: 900,
  bristle_mm: 20,
  reachSpacing_mm: 10,
  leastUnreached_cm2: 5,
  jetSpacing_mm: 20,
  leastShadow_cm2: 1,
  // Our choice: about the drift of a drop beside a jar in still air.
  besideMouth_mm: 25,
  // The upper end of the 150 to 300 mm that guidance gives for the room under a machine (Moerman and Kastelein).
  floorBelow_mm: 300,
  leastUnderside_cm2: 1,
  // A walk way (the same source).
  wallBelow_mm: 500,
};
