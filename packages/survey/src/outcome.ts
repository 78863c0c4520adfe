import type { Drawing, MeasureName, SurveyMeasures } from './result.ts';

/** What one measure hands back. `measureX(model, settings, control): MeasureOutcome<'x'>`. */
export interface MeasureOutcome<M extends MeasureName & keyof SurveyMeasures> {
  readonly measure: NonNullable<SurveyMeasures[M]>;
  /** One number per triangle, parts in model order, triangles in shape order; NaN where nothing is said. */
  readonly field: Float32Array;
  /** By place id. */
  readonly drawings: ReadonlyMap<string, Drawing>;
  /** What was assumed, repaired or left undecided for the model as a whole; one sentence each. */
  readonly notes: readonly string[];
}
