import type { Model } from '@coveline/model';
import type {
  Control,
  Drawing,
  MeasureName,
  SurveyMeasures,
  SurveyOutcome,
  SurveySettings,
} from './result.ts';
import { defaultSettings } from './settings.ts';

export interface SurveyRequest {
  readonly settings?: Partial<SurveySettings>;
  /** All when absent. */
  readonly measures?: readonly MeasureName[];
}

/** Computes the asked measures on a model whose +Z points up (see `orient`). */
export async function survey(
  _model: Model,
  { settings }: SurveyRequest = {},
  _control: Control = {},
): Promise<SurveyOutcome> {
  const measures: SurveyMeasures = {};
  const fields: Partial<Record<MeasureName, Float32Array>> = {};
  const drawings = new Map<string, Drawing>();
  return { result: { settings: { ...defaultSettings, ...settings }, notes: [], measures }, fields, drawings };
}
