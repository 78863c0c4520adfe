import type { Model } from '@coveline/model';
import { type Pool, type SurveySettings, survey } from '@coveline/survey';

export interface Standing {
  readonly total_mL: number;
  readonly pools: readonly Pool[];
  readonly notes: readonly string[];
}

/** Standing liquid of a model, everything listed however small. */
export async function poolsIn(model: Model, settings: Partial<SurveySettings> = {}): Promise<Standing> {
  const { result } = await survey(model, {
    settings: { leastPool_mL: 1e-3, leastPoolDepth_mm: 1e-2, ...settings },
    measures: ['standingLiquid'],
  });
  const found = result.measures.standingLiquid;
  if (!found) throw new Error('standing liquid was not measured');
  return { total_mL: found.total_mL, pools: found.places, notes: result.notes };
}
