import type { Vec3 } from '@coveline/model';

export interface MeasuredPoint {
  readonly at: Vec3;
  /** True when it lies on a vertex of the model, which lies on the true surface. */
  readonly snapped: boolean;
  /** True on a plane CAD face, whose triangles follow it exactly. */
  readonly plane: boolean;
}

export interface Measurement {
  readonly from: MeasuredPoint;
  readonly to: MeasuredPoint;
  readonly distance_mm: number;
  readonly along_mm: Vec3;
  /** How far the distance can be off because curved faces are triangles here, mm. */
  readonly uncertainty_mm: number;
}

/** `deviation_mm`: largest distance between a curved face and its triangles. */
export function measurement(from: MeasuredPoint, to: MeasuredPoint, deviation_mm: number): Measurement {
  const along: Vec3 = [to.at[0] - from.at[0], to.at[1] - from.at[1], to.at[2] - from.at[2]];
  const uncertain = [from, to].filter((p) => !p.snapped && !p.plane).length;
  return {
    from,
    to,
    distance_mm: Math.hypot(...along),
    along_mm: along,
    uncertainty_mm: uncertain * deviation_mm,
  };
}
