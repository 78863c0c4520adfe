import type { LengthUnit } from '@coveline/model';
import type { Assembler } from '../assemble.ts';
import { type ReadOptions, unitWords } from '../options.ts';

/** File name without folders and extension. */
export function baseName(fileName: string): string {
  const file = fileName.split(/[\\/]/).pop() ?? fileName;
  return file.replace(/\.[^.]*$/, '') || file;
}

/** Unit of a format that states none: the option, or millimetres with a note that says so. */
export function noteUnit(out: Assembler, options: ReadOptions): LengthUnit {
  if (options.unit) return options.unit;
  out.note(
    'info',
    `The format states no length unit; the file was read as ${unitWords.mm}, so check a known size.`,
  );
  return 'mm';
}
