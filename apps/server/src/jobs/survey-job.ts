import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { modelFile, outcomeFiles, surveyFileInto } from '@coveline/compute';
import { decodeModel, triangleCount } from '@coveline/model';
import { completeJob, getMachine, getRevision, storeSurvey, updateRevision } from '@coveline/store';
import { revisionOf } from '../surveyed.ts';
import type { JobWork } from './run-jobs.ts';
import { inTemporaryFolder } from './temporary-folder.ts';

/** Reads and surveys the file of a revision, stores what came of it, and reviews it once. */
export const surveyJob: JobWork = (context, { id, machine, revision }, signal, report) =>
  inTemporaryFolder(async (folder) => {
    const { store, reviews, upload_MB } = context;
    const { described, stored } = await store.transaction(async (tx) => {
      const { project } = await getMachine(tx, machine);
      return { described: revisionOf(project, revision), stored: await getRevision(tx, machine, revision) };
    });
    const { file, up, unit } = described;
    await surveyFileInto(
      folder,
      { path: store.blobs.path(stored.sha256), fileName: file, up, ...(unit && { unit }) },
      { signal, onProgress: (stage, done) => report(stage, done * 0.95), limits: { size_MB: upload_MB } },
    );

    report('Keeping the results', 0.95);
    const keep = (name: string) => store.blobs.putFile(join(folder, name));
    const row = {
      machine,
      revision,
      up,
      model: await keep(modelFile),
      result: await keep(outcomeFiles.survey),
      fields: await keep(outcomeFiles.fields),
      drawings: await keep(outcomeFiles.drawings),
    };
    const model = decodeModel(await readFile(join(folder, modelFile)));
    const found = { notes: model.notes, parts: model.parts.length, triangles: triangleCount(model) };
    await store.transaction(async (tx) => {
      await storeSurvey(tx, row);
      await updateRevision(tx, machine, revision, found);
    });

    report('Reviewing', 0.98);
    // Turned meanwhile: the job that this ordered reviews it.
    if (await isStill(up)) await reviews.current(machine, revision);
    await store.transaction(async (tx) => {
      await updateRevision(tx, machine, revision, found);
      await completeJob(tx, id);
    });

    async function isStill(up: string): Promise<boolean> {
      const { project } = await store.transaction((tx) => getMachine(tx, machine));
      return revisionOf(project, revision).up === up;
    }
  });
