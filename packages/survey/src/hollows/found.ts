import type { Drawing, Place } from '../result.ts';

/** A place that has no name yet, with what is drawn for it. */
export interface Found<P extends Place> {
  readonly place: Omit<P, 'id'>;
  /** Triangles of its wall, in model order. */
  readonly triangles: readonly number[];
  readonly drawing: Drawing;
}
