import { readFile, stat } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { type Project, parseProject } from '@coveline/project';
import { createMachine, listMachines, orderJob, type StoredFile, storeRevisionFile } from '@coveline/store';
import type { Context } from './context.ts';
import { RequestError } from './problem.ts';
import { slug } from './slug.ts';

/**
 * Takes in a project folder (`project.json` beside its model files) as a machine and orders its surveys, unless a
 * machine with this address is there already. Throws `RequestError` with one sentence when the folder is not one.
 */
export async function seedProject({ store, by }: Context, folder: string): Promise<void> {
  const imported = await readProject(folder);
  const id = slug(imported.name);
  const isThere = (await store.transaction(listMachines)).some((machine) => machine.id === id);
  if (isThere) return;

  const files = new Map<string, StoredFile>();
  for (const { id: revision, file } of imported.revisions) {
    const path = inside(folder, file);
    files.set(revision, { sha256: await store.blobs.putFile(path), size_bytes: (await stat(path)).size });
  }
  await store.transaction(async (tx) => {
    await createMachine(tx, id, imported, { by, what: `Took in the project “${imported.name}”` });
    for (const [revision, file] of files) {
      await storeRevisionFile(tx, id, revision, file);
      await orderJob(tx, store.engine, { kind: 'survey', machine: id, revision });
    }
  });
}

async function readProject(folder: string): Promise<Project> {
  const path = join(folder, 'project.json');
  const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    throw new RequestError(400, 'no-project', `${path} cannot be read (${error.code}).`);
  });
  const parsed = parseProject(parseJson(text, path));
  if (parsed.ok) return parsed.project;
  throw new RequestError(400, 'bad-project', `${path}: ${parsed.errors[0]}`);
}

function parseJson(text: string, path: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new RequestError(400, 'bad-project', `${path} is not JSON: ${(error as Error).message}.`);
  }
}

/** A project names its own files only. */
function inside(folder: string, file: string): string {
  const path = resolve(folder, file);
  const way = relative(resolve(folder), path);
  if (way.startsWith('..') || resolve(way) === way)
    throw new RequestError(
      400,
      'bad-project',
      `The model file "${file}" lies outside of the project folder.`,
    );
  return path;
}
