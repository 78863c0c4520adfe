/** Task: try what would empty a pool, in a process of its own. */
import { readFile } from 'node:fs/promises';
import type { TaskContext } from '@coveline/compute';
import { decodeModel } from '@coveline/model';
import { liquidBasis, type Proposals, proposeFor, type SurveyResult } from '@coveline/survey';
import type { TrialOrder } from './trial-order.ts';

export default async function trialTask(order: TrialOrder, { onProgress }: TaskContext): Promise<Proposals> {
  const model = decodeModel(await readFile(order.model));
  const survey = JSON.parse(await readFile(order.survey, 'utf8')) as SurveyResult;
  const pool = survey.measures.standingLiquid?.places.find((p) => p.id === order.pool);
  if (!pool) throw new RangeError(`The survey has no pool "${order.pool}".`);
  return proposeFor(liquidBasis(model, survey.settings, { onProgress }), pool, { onProgress });
}
