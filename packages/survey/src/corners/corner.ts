/** A stretch of an inside corner in the frame of its shape. */
export interface CornerLine {
  /** xyz per point, mm. */
  readonly points: Float64Array;
  /** Unit direction into the air, xyz per point; zero where it is not known. */
  readonly air: Float64Array;
}

/** An inside corner of a shape, before it is placed and judged by what covers it. */
export interface ShapeCorner {
  readonly lines: readonly CornerLine[];
  readonly length_mm: number;
  /** 0 for a sharp edge. */
  readonly radius_mm: number;
  /** Included angle through the air. */
  readonly angle_deg: number;
  readonly from: 'cad' | 'triangles';
  readonly couldHideRadius_mm?: number;
  /** Triangles of the fillet; empty for a sharp edge. */
  readonly triangles: readonly number[];
}
