import type { Model } from '@coveline/model';
import type { ModelHealth } from './health/health.ts';
import type { MeasureOutcome } from './outcome.ts';
import type { Drawing, MeasureName, SurveyMeasures, SurveyOutcome, SurveySettings } from './result.ts';
import { surveyVersion } from './version.ts';

/** Measures that are finished, in whatever order that happened. */
export type Finished = ReadonlyMap<MeasureName, MeasureOutcome<MeasureName & keyof SurveyMeasures>>;

/**
 * Puts finished measures together, always in the order of `order`: the outcome does not tell who was ready first.
 * `asked`: what the caller wanted, for a note on each name that is not in `order`.
 */
export function outcomeOf(
  model: Model,
  settings: SurveySettings,
  health: ModelHealth | undefined,
  order: readonly MeasureName[],
  finished: Finished,
  asked: readonly MeasureName[] = [],
): SurveyOutcome {
  const measures: SurveyMeasures = {};
  const fields: Partial<Record<MeasureName, Float32Array>> = {};
  const drawings = new Map<string, Drawing>();
  const notes = new Set(model.notes.filter(({ level }) => level === 'warning').map(({ text }) => text));
  for (const name of order) {
    const outcome = finished.get(name);
    if (!outcome) continue;
    Object.assign(measures, { [name]: outcome.measure });
    fields[name] = outcome.field;
    for (const [id, drawing] of outcome.drawings) drawings.set(id, drawing);
    for (const note of outcome.notes) notes.add(note);
  }
  for (const name of asked) if (!order.includes(name)) notes.add(`The measure ${name} is not computed yet.`);
  return {
    result: { version: surveyVersion, settings, ...(health && { health }), notes: [...notes], measures },
    fields,
    drawings,
  };
}
