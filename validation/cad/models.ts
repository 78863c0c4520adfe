import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Folder of models drawn by others; they are not part of this repository. */
const folder = process.env.COVELINE_CAD ?? fileURLToPath(new URL('../../../shared/cad', import.meta.url));

export const modelsThere = existsSync(folder);

/** Why a test is skipped, for its title. */
export const whyNot = modelsThere
  ? ''
  : ' (skipped: the folder of models is not there; name it in COVELINE_CAD)';

export const modelBytes = (file: string): Uint8Array => new Uint8Array(readFileSync(join(folder, file)));
