import type { Project } from '@coveline/project';
import { findSurvey, getMachine, type Store, type SurveyRow, type Tx } from '@coveline/store';
import { surveyVersion } from '@coveline/survey';
import { RequestError } from './problem.ts';

/** The revision as people describe it. Throws 404. */
export function revisionOf(project: Project, id: string): Project['revisions'][number] {
  const revision = project.revisions.find((r) => r.id === id);
  if (!revision) throw new RequestError(404, 'not-found', `The machine has no revision "${id}".`);
  return revision;
}

/** A survey that another version of the program made is not read: what it holds may mean something else now. */
export const isOutdated = (survey: SurveyRow): boolean => survey.version !== surveyVersion;

/** The survey of a revision as it stands now, with its project. Throws 404 while there is none to go by. */
export async function surveyed(
  tx: Tx,
  machine: string,
  revision: string,
): Promise<{ project: Project; survey: SurveyRow }> {
  const { project } = await getMachine(tx, machine);
  const survey = await findSurvey(tx, machine, revision, revisionOf(project, revision).up);
  if (!survey) throw new RequestError(404, 'not-surveyed', 'This revision is not surveyed yet.');
  if (isOutdated(survey))
    throw new RequestError(
      404,
      'not-surveyed',
      'This revision was measured by another version of the program: measure it again.',
    );
  return { project, survey };
}

export async function isSurveyed(store: Store, machine: string, revision: string): Promise<boolean> {
  return await store.transaction(async (tx) => {
    const { project } = await getMachine(tx, machine);
    const found = project.revisions.find((r) => r.id === revision);
    const survey = found && (await findSurvey(tx, machine, revision, found.up));
    return survey != null && !isOutdated(survey);
  });
}
