/** What was recognised in one shape, in its frame. */
import type { FastenerHead, Recognised } from '../result.ts';
import type { Axis } from './axis.ts';

export interface LocalHead extends Axis {
  readonly kind: FastenerHead['kind'];
  readonly acrossFlats_mm?: number;
  readonly diameter_mm?: number;
  /** Where the head begins and ends along the axis, and how far it reaches from it, mm. */
  readonly from: number;
  readonly to: number;
  readonly radius_mm: number;
  readonly by: Recognised;
  /** Counts only with other evidence: many parts of its shape, or its name. */
  readonly weak: boolean;
  readonly caveats: readonly string[];
}

export interface LocalThread extends Axis {
  readonly from: number;
  readonly to: number;
  /** Outer (major) radius, mm. */
  readonly radius_mm: number;
  readonly inside: boolean;
  readonly pitch_mm?: number;
  readonly by: Recognised;
  readonly weak: boolean;
  readonly caveats: readonly string[];
}

export interface LocalFasteners {
  readonly heads: readonly LocalHead[];
  readonly threads: readonly LocalThread[];
}
