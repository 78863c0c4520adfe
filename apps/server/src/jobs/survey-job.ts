import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { LimitError, modelFile, outcomeFiles, surveyFileInto } from '@coveline/compute';
import { decodeModel, triangleCount } from '@coveline/model';
import { completeJob, getMachine, getRevision, storeSurvey, updateRevision } from '@coveline/store';
import { surveyVersion } from '@coveline/survey';
import type { Context } from '../context.ts';
import { isSurveyed, revisionOf } from '../surveyed.ts';
import type { JobWork } from './run-jobs.ts';
import { inTemporaryFolder } from './temporary-folder.ts';

/** What is surveyed: a revision in one orientation. */
interface Subject {
  readonly machine: string;
  readonly revision: string;
  readonly up: string;
}

/** Reads and surveys the file of a revision, stores what came of it, and reviews it once. */
export const surveyJob: JobWork = (context, { id, machine, revision }, signal, report) =>
  inTemporaryFolder(async (folder) => {
    const { store, limits, upload_MB } = context;
    const { described, site, stored } = await store.transaction(async (tx) => {
      const { project } = await getMachine(tx, machine);
      return {
        described: revisionOf(project, revision),
        site: project.site[revision] ?? {},
        stored: await getRevision(tx, machine, revision),
      };
    });
    const { file, up, unit } = described;
    const subject = { machine, revision, up };
    try {
      await surveyFileInto(
        folder,
        { path: store.blobs.path(stored.sha256), fileName: file, up, ...(unit && { unit }), site },
        {
          signal,
          onProgress: (stage, done) => report(stage, done * 0.95),
          limits: { ...limits, size_MB: upload_MB },
        },
      );
    } catch (error) {
      const hasPart = error instanceof LimitError && existsSync(join(folder, outcomeFiles.survey));
      if (!hasPart) throw error;
      await keepResults(context, folder, subject);
      throw new LimitError(error.limit, `${error.message} What was finished is kept.`, error.finished);
    }
    report('Keeping the results', 0.95);
    await keepResults(context, folder, subject);
    await store.transaction((tx) => completeJob(tx, id));
  });

async function keepResults({ store, reviews }: Context, folder: string, subject: Subject): Promise<void> {
  const { machine, revision } = subject;
  const keep = (name: string) => store.blobs.putFile(join(folder, name));
  const row = {
    ...subject,
    model: await keep(modelFile),
    result: await keep(outcomeFiles.survey),
    fields: await keep(outcomeFiles.fields),
    drawings: await keep(outcomeFiles.drawings),
    version: surveyVersion,
  };
  const model = decodeModel(await readFile(join(folder, modelFile)));
  const found = { notes: model.notes, parts: model.parts.length, triangles: triangleCount(model) };
  await store.transaction((tx) => storeSurvey(tx, row));
  // Turned meanwhile: the survey that this ordered brings its own review.
  if (await isSurveyed(store, machine, revision)) await reviews.current(machine, revision);
  await store.transaction((tx) => updateRevision(tx, machine, revision, found));
}
