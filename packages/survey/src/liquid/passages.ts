/**
 * Where air passes between two neighbouring columns.
 *
 * Between two columns, at the heights that the section of the surface covers there, nothing passes: a wall thinner
 * than the pitch, or one that leans, holds. Two intervals are joined at the lowest height, in both of them, that
 * the section leaves free.
 */
export interface Passages {
  /** Passages of strip s: from first[s] to first[s + 1]. */
  readonly first: Uint32Array;
  /** The two intervals, and the lowest height at which air passes from one to the other. */
  readonly a: Uint32Array;
  readonly b: Uint32Array;
  readonly height: Float64Array;
}
