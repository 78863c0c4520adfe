import { readFile } from 'node:fs/promises';
import { type Pack, readPack } from '@coveline/catalogue';
import { InputError } from '@coveline/compute';
import { type Project, yardstickOf } from '@coveline/project';

/**
 * The packs of a project with those of some files behind them; one of a name that the project has takes its place.
 * Throws `InputError` with the first problem of a pack that is not sound.
 */
export async function readPacks(paths: readonly string[], project: Project): Promise<Pack[]> {
  let packs = project.packs;
  for (const path of paths) {
    const json = await readJson(path);
    const name = typeof json === 'object' && json !== null && 'name' in json ? json.name : undefined;
    const others = packs.filter((p) => p.name !== name);
    const read = readPack(json, yardstickOf({ ...project, packs: others }).catalogue);
    if ('problems' in read) {
      const [first, ...more] = read.problems;
      const rest = more.length === 0 ? '' : ` (and ${more.length} more)`;
      throw new InputError('bad-pack', `The pack "${path}": ${first.replace(/\.$/, '')}${rest}.`);
    }
    packs = [...others, read.pack];
  }
  return packs;
}

async function readJson(path: string): Promise<unknown> {
  const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    throw new InputError('no-file', `The pack "${path}" cannot be read (${error.code}).`);
  });
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new InputError('bad-pack', `The pack "${path}" is not JSON: ${(error as Error).message}.`);
  }
}
