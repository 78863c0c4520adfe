import { stat } from 'node:fs/promises';
import { InputError, readProjectFolder } from '@coveline/compute';
import { createMachine, listMachines, orderJob, type StoredFile, storeRevisionFile } from '@coveline/store';
import type { Context } from './context.ts';
import { slug } from './slug.ts';

/**
 * Takes in a project folder (`project.json` beside its model files) as a machine and orders its surveys, unless a
 * machine with this address is there already. Throws `InputError` with one sentence when the folder is not one.
 */
export async function seedProject({ store, by }: Context, folder: string): Promise<void> {
  const { project, models } = await readProjectFolder(folder);
  const id = slug(project.name);
  const isThere = (await store.transaction(listMachines)).some((machine) => machine.id === id);
  if (isThere) return;

  const files = new Map<string, StoredFile>();
  for (const [revision, path] of models) {
    const found = await stat(path).catch((error: NodeJS.ErrnoException) => {
      throw new InputError('no-file', `The model file "${path}" cannot be opened (${error.code}).`);
    });
    files.set(revision, { sha256: await store.blobs.putFile(path), size_bytes: found.size });
  }
  await store.transaction(async (tx) => {
    await createMachine(tx, id, project, { by, what: `Took in the project “${project.name}”` });
    for (const [revision, file] of files) {
      await storeRevisionFile(tx, id, revision, file);
      await orderJob(tx, store.engine, { kind: 'survey', machine: id, revision });
    }
  });
}
