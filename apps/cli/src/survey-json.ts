/** The public JSON of `coveline survey`: schema `coveline.survey/1`. */
import type { FileSurvey } from '@coveline/compute';
import { bounds, type LengthUnit, triangleCount, type Vec3 } from '@coveline/model';
import type { ModelHealth, Site, SurveyMeasures, SurveySettings } from '@coveline/survey';

export interface SurveyJson {
  readonly schema: 'coveline.survey/1';
  readonly model: {
    readonly file: string;
    readonly sha256: string;
    readonly unit: LengthUnit;
    readonly parts: number;
    readonly triangles: number;
    readonly bounds_mm: readonly [Vec3, Vec3];
  };
  readonly settings: SurveySettings;
  readonly seconds: { readonly read: number; readonly survey: number };
  readonly peakMemory_MB: number;
  readonly notes: readonly string[];
  /** What is wrong with the model itself, and what the measures do about it. */
  readonly health?: ModelHealth;
  /** What the survey took to stand around the machine: proposed from geometry and names. */
  readonly site?: Site;
  readonly measures: SurveyMeasures;
}

export function surveyJson(
  file: string,
  { model, outcome, sha256, seconds, peakMemory_MB }: FileSurvey,
): SurveyJson {
  const fromReader = model.notes.map(({ text, part }) => (part === undefined ? text : `${part}: ${text}`));
  // The survey repeats the reader's warnings, without the part.
  const told = new Set(model.notes.map(({ text }) => text));
  return {
    schema: 'coveline.survey/1',
    model: {
      file,
      sha256,
      unit: model.unit,
      parts: model.parts.length,
      triangles: triangleCount(model),
      bounds_mm: bounds(model),
    },
    settings: outcome.result.settings,
    seconds,
    peakMemory_MB,
    notes: [...new Set([...fromReader, ...outcome.result.notes.filter((note) => !told.has(note))])],
    ...(outcome.result.health && { health: outcome.result.health }),
    ...(outcome.result.site && { site: outcome.result.site }),
    measures: outcome.result.measures,
  };
}
