import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { InputError } from './errors.ts';
import { readProjectFolder } from './project-folder.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'coveline-project-'));
});
afterEach(() => rm(folder, { recursive: true }));

const write = (content: unknown) =>
  writeFile(join(folder, 'project.json'), typeof content === 'string' ? content : JSON.stringify(content));

const project = (file: string) => ({
  schema: 'coveline.project/1',
  name: 'Filler',
  revisions: [{ id: 'a', label: 'A', file }],
});

describe('project folder', () => {
  test('models are found beside project.json', async () => {
    await write(project('a.step'));
    const { models, project: read } = await readProjectFolder(folder);
    expect(models.get('a')).toBe(join(folder, 'a.step'));
    expect(read.brief.careLevel).toBe('raised');
  });

  test.each(['../a.step', '/etc/passwd', '', 'x/../../a.step'])(
    'a model file "%s" outside of it is refused',
    async (file) => {
      await write(project(file));
      await expect(readProjectFolder(folder)).rejects.toThrow(InputError);
    },
  );

  test('a missing, a broken and a wrong project are told apart', async () => {
    await expect(readProjectFolder(folder)).rejects.toThrow(/cannot be read \(ENOENT\)/);
    await write('{');
    await expect(readProjectFolder(folder)).rejects.toThrow(/is not JSON/);
    await write({ ...project('a.step'), name: 7, invented: 'yes' });
    await expect(readProjectFolder(folder)).rejects.toThrow(
      /name: 7 was found, expected a text \(and 1 more\)\./,
    );
  });
});
