/**
 * What a survey returns. The JSON part is public (`coveline.survey/1`): keys are stable, additions are free.
 * Lengths in mm, areas in cm2, volumes in mL, angles in degrees; coordinates in the frame that was surveyed (+Z up).
 */
import type { Vec3 } from '@coveline/model';

export type MeasureName =
  | 'standingLiquid'
  | 'flatFaces'
  | 'insideCorners'
  | 'narrowGaps'
  | 'hollows'
  | 'fasteners'
  | 'handReach'
  | 'toolReach'
  | 'jetReach'
  | 'openSky'
  | 'overhead'
  | 'clearances';

/** A located thing that a measure found. */
export interface Place {
  /** Same geometry, same id: kind, a hash of parts and rounded position, and a counter for namesakes. */
  readonly id: string;
  /** Ids of the parts that form it, sorted. */
  readonly parts: readonly string[];
  readonly at_mm: Vec3;
  readonly bounds_mm: readonly [Vec3, Vec3];
  /** What the measure could not decide here, or had to assume; one sentence each. */
  readonly caveats?: readonly string[];
}

export interface Pool extends Place {
  readonly volume_mL: number;
  readonly depth_mm: number;
  /** Area of the liquid's surface. */
  readonly area_cm2: number;
  readonly deepest_mm: Vec3;
  /** Where the liquid first runs over. */
  readonly spill_mm: Vec3;
  /** The same by the second, exact method, where it was asked for and possible. */
  readonly exact_mL?: number;
  /** volume_mL / exact_mL - 1: what the two methods differ by. */
  readonly difference?: number;
}

export interface FlatFace extends Place {
  readonly facing: 'up' | 'down';
  readonly area_cm2: number;
  /** Angle to the horizontal. */
  readonly slope_deg: number;
}

export interface InsideCorner extends Place {
  readonly length_mm: number;
  /** 0 for a sharp edge. */
  readonly radius_mm: number;
  /** Included angle through the air. */
  readonly angle_deg: number;
  readonly from: 'cad' | 'triangles';
  /** From triangles only: a fillet up to this radius could hide in a sharp-looking edge. */
  readonly couldHideRadius_mm?: number;
}

export interface NarrowGap extends Place {
  /** Smallest distance across the air. */
  readonly width_mm: number;
  readonly widest_mm: number;
  /** Deepest point behind the mouth, along the gap. */
  readonly depth_mm: number;
  readonly mouth_mm: number;
  /** Of one of the two walls. */
  readonly area_cm2: number;
}

/** Where two parts touch: a line that soil and liquid find by capillarity. */
export interface Joint extends Place {
  /** Length of the border of the contact that is open to the air. */
  readonly length_mm: number;
  readonly area_cm2: number;
}

export interface ClosedHollow extends Place {
  readonly volume_mL: number;
}

export interface BlindChannel extends Place {
  readonly depth_mm: number;
  readonly mouth_mm: number;
  /** depth / mouth */
  readonly ratio: number;
  readonly from: 'cad' | 'triangles';
}

export interface SurveyMeasures {
  standingLiquid?: { readonly total_mL: number; readonly places: readonly Pool[] };
  flatFaces?: { readonly up_cm2: number; readonly down_cm2: number; readonly places: readonly FlatFace[] };
  insideCorners?: { readonly sharp_mm: number; readonly places: readonly InsideCorner[] };
  narrowGaps?: { readonly places: readonly NarrowGap[]; readonly joints: readonly Joint[] };
  hollows?: { readonly closed: readonly ClosedHollow[]; readonly blind: readonly BlindChannel[] };
}

export interface SurveySettings {
  /** Pitch of the liquid columns. */
  readonly pitch_mm: number;
  /** Pools shallower or smaller than this are not listed; the sum of what was left out is. */
  readonly leastPool_mL: number;
  readonly leastPoolDepth_mm: number;
  /** A face is flat when its slope to the horizontal is below this. */
  readonly flatBelow_deg: number;
  readonly leastFlat_cm2: number;
  /** An inside corner is listed when its radius is below this … */
  readonly cornerRadiusBelow_mm: number;
  /** … and its included angle through the air is below this. */
  readonly cornerAngleBelow_deg: number;
  readonly gapBelow_mm: number;
  /** Distance between the points at which gaps are looked for. */
  readonly gapSpacing_mm: number;
  /** Parts closer than this count as touching. */
  readonly contact_mm: number;
  readonly leastHollow_mL: number;
  /** Bores with one open end are listed from this depth on, as a multiple of the mouth's diameter. */
  readonly leastBlindRatio: number;
}

export interface SurveyResult {
  readonly settings: SurveySettings;
  readonly notes: readonly string[];
  readonly measures: SurveyMeasures;
}

/** What the view and the pictures draw for a place. */
export interface Drawing {
  /** Free triangles, xyz per corner, mm: a pool's surface, the walls of a gap. */
  readonly triangles?: Float32Array;
  /** Polylines, each xyz per point, mm: an inside corner, a joint line. */
  readonly lines?: readonly Float32Array[];
}

export interface SurveyOutcome {
  readonly result: SurveyResult;
  /**
   * Per measure one number per triangle, parts in model order, triangles in shape order; NaN where the measure
   * says nothing. standingLiquid: depth of liquid over the triangle, mm. flatFaces: slope of a flat face, degrees,
   * negative facing down. insideCorners: radius, mm, on fillet faces under the limit. narrowGaps: width, mm.
   * hollows: 1 on the walls of closed hollows, 2 in blind channels.
   */
  readonly fields: Partial<Record<MeasureName, Float32Array>>;
  /** By place id. */
  readonly drawings: ReadonlyMap<string, Drawing>;
}

/** For long work: progress from 0 to 1, and a signal that stops it between steps. */
export interface Control {
  /** An AbortSignal of Node or of the browser. */
  readonly signal?: { readonly aborted: boolean };
  readonly onProgress?: (stage: string, done: number) => void;
  /** Called after each measure with all that is finished, for callers who must be able to keep it. */
  readonly onMeasure?: (soFar: SurveyOutcome) => void;
}
