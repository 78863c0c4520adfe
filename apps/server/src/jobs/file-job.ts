import { writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { runInChild } from '@coveline/compute';
import { completeJob, updateRevision } from '@coveline/store';
import { type FileOrder, type FileSummary, filePdf, fileReview } from './file-order.ts';
import type { JobWork } from './run-jobs.ts';
import { inTemporaryFolder } from './temporary-folder.ts';

const task = pathToFileURL(createRequire(import.meta.url).resolve('@coveline/server/file-task')).href;

/** Makes the PDF of a revision in a child process and stores it. */
export const makeFileJob: JobWork = ({ store, reviews, limits }, { id, machine, revision }, signal, report) =>
  inTemporaryFolder(async (folder) => {
    report('Reviewing', 0);
    const { review, project, survey } = await reviews.current(machine, revision);
    await writeFile(join(folder, fileReview), JSON.stringify(review));
    const order: FileOrder = {
      project,
      revision,
      model: store.blobs.path(survey.model),
      survey: store.blobs.path(survey.result),
      fields: store.blobs.path(survey.fields),
      drawings: store.blobs.path(survey.drawings),
      today: new Date().toISOString().slice(0, 10),
    };
    const { result } = await runInChild<FileSummary>(task, order, folder, {
      signal,
      limits,
      onProgress: (stage, done) => report(stage, done * 0.95),
    });
    const pdf = await store.blobs.putFile(join(folder, filePdf));
    await store.transaction(async (tx) => {
      await updateRevision(tx, machine, revision, { pdf });
      await completeJob(tx, id, result.warnings);
    });
  });
