import type { Model } from '@coveline/model';
import { CadError } from './error.ts';
import { limits } from './limits.ts';
import { read3mf } from './mesh/read3mf.ts';
import { readGlb } from './mesh/readGlb.ts';
import { readObj } from './mesh/readObj.ts';
import { readStl } from './mesh/readStl.ts';
import type { ReadOptions } from './options.ts';
import { sniff } from './sniff.ts';
import { readStep } from './step/readStep.ts';

/**
 * Reads a CAD or mesh file into a model in millimetres.
 *
 * `bytes`: the whole file. `fileName`: for messages, and for the format where the content does not tell it.
 * Throws CadError with one sentence for every file that cannot be read. What was lost without making the file useless
 * stands in the notes of the model as a warning. The caller sets limits of time and memory around it.
 */
export async function readModel(
  bytes: Uint8Array,
  fileName: string,
  options: ReadOptions = {},
): Promise<Model> {
  if (bytes.length === 0)
    throw new CadError('empty', `"${fileName}" is empty (0 bytes); export or copy it again.`);
  if (bytes.length > limits.fileBytes) {
    throw new CadError(
      'tooLarge',
      `"${fileName}" has ${Math.round(bytes.length / 2 ** 20)} MB, more than the ${limits.fileBytes >> 20} MB that can be read; export it in parts.`,
    );
  }
  switch (sniff(bytes, fileName)) {
    case 'step':
      return readStep(bytes, options);
    case 'stl':
      return readStl(bytes, fileName, options);
    case 'obj':
      return readObj(bytes, fileName, options);
    case '3mf':
      return read3mf(bytes, fileName, options);
    case 'glb':
      return readGlb(bytes, fileName, options);
  }
}
