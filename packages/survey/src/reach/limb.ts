import type { SurveySettings } from '../result.ts';

/** What reaches: a ball on an arm or handle, with fingers or bristles ahead of it. */
export interface Limb {
  readonly kind: 'hand' | 'tool';
  /** Diameter of the ball that must pass. */
  readonly size_mm: number;
  /** Longest way from the access side to the surface. */
  readonly length_mm: number;
  /** How far beyond the ball it touches. */
  readonly touch_mm: number;
}

export function handOf({ hand_mm, arm_mm, finger_mm }: SurveySettings): Limb {
  return { kind: 'hand', size_mm: hand_mm, length_mm: arm_mm, touch_mm: finger_mm };
}

export function toolOf({ tool_mm, toolLength_mm, bristle_mm }: SurveySettings): Limb {
  return { kind: 'tool', size_mm: tool_mm, length_mm: toolLength_mm, touch_mm: bristle_mm };
}
