import type { Machine } from '@coveline/api';
import { findSurvey, getMachine } from '@coveline/store';
import type { Context } from './context.ts';
import { machineAnswer } from './machine-answer.ts';
import { isOutdated } from './surveyed.ts';

/** A machine whose numbers of findings follow from what is set on it now. */
export async function currentMachine({ store, reviews }: Context, id: string): Promise<Machine> {
  const surveyed = await store.transaction(async (tx) => {
    const { project } = await getMachine(tx, id);
    const found = [];
    for (const { id: revision, up } of project.revisions) {
      const survey = await findSurvey(tx, id, revision, up);
      if (survey && !isOutdated(survey)) found.push(revision);
    }
    return found;
  });
  for (const revision of surveyed) await reviews.current(id, revision);
  return await store.transaction((tx) => machineAnswer(tx, id));
}
