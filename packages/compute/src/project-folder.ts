import { readFile } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { type Project, parseProject } from '@coveline/project';
import { InputError } from './errors.ts';

/** A project on disk: `project.json` beside its model files (docs/formats.md). */
export interface ProjectFolder {
  readonly project: Project;
  /** Path of the model file by revision id. */
  readonly models: ReadonlyMap<string, string>;
}

/** Throws `InputError` with one sentence when the folder holds no project or the project is not as expected. */
export async function readProjectFolder(folder: string): Promise<ProjectFolder> {
  const path = join(folder, 'project.json');
  const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    throw new InputError(
      'no-project',
      `"${path}" cannot be read (${error.code}): a project folder holds a project.json.`,
    );
  });
  const parsed = parseProject(parseJson(text, path));
  if (!parsed.ok) {
    const [first, ...more] = parsed.errors;
    const others = more.length === 0 ? '' : ` (and ${more.length} more)`;
    throw new InputError('bad-project', `"${path}": ${first.replace(/\.$/, '')}${others}.`);
  }
  const models = parsed.project.revisions.map(({ id, file }) => [id, inside(folder, file)] as const);
  return { project: parsed.project, models: new Map(models) };
}

function parseJson(text: string, path: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new InputError('bad-project', `"${path}" is not JSON: ${(error as Error).message}.`);
  }
}

/** A project names its own files only. */
function inside(folder: string, file: string): string {
  const path = resolve(folder, file);
  const way = relative(resolve(folder), path);
  if (way !== '' && !way.startsWith('..') && resolve(way) !== way) return path;
  throw new InputError(
    'bad-project',
    `The model file "${file}" lies outside of the project folder: put it beside project.json.`,
  );
}
