import { type CalculationEntry, inputName } from '@coveline/engineering';
import { longestInput } from '@coveline/project';
import { m } from '../../messages/index.ts';
import type { Given } from './given.ts';
import { capital } from './sentence.ts';

/**
 * What was typed or chosen as texts by the short name of the input, as a machine keeps it. Throws an error with one
 * sentence when a text is too long to be kept or a file cannot be read any more.
 */
export async function typedTexts(given: Given, entry: CalculationEntry): Promise<Record<string, string>> {
  const texts: Record<string, string> = {};
  for (const [key, value] of Object.entries(given)) {
    const text = typeof value === 'string' ? value : await readFile(value);
    if (text.length > longestInput) throw new Error(m.keep.tooLong(capital(entry.inputs[key].label)));
    texts[inputName(key)] = text;
  }
  return texts;
}

function readFile(file: File): Promise<string> {
  return file.text().catch(() => {
    throw new Error(m.calculations.unreadable(file.name));
  });
}
