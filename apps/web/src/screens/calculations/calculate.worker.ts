/** Runs calculations beside the page, so that a long one never holds up typing. */
import { findCalculation, inputName, runFromText } from '@coveline/engineering';
import type { Question, Reply } from './calculate.ts';

self.onmessage = async ({ data }: MessageEvent<Question>) => self.postMessage(await answer(data));

async function answer({ name, given, locale }: Question): Promise<Reply> {
  const entry = findCalculation(name);
  if (entry === undefined) return { kind: 'fault', message: `There is no calculation "${name}".` };
  const texts: Record<string, string> = {};
  for (const [key, value] of Object.entries(given)) {
    const text = typeof value === 'string' ? value : await value.text().catch(() => null);
    // Moved, changed or deleted since it was chosen.
    if (text === null) return { kind: 'unreadable', file: (value as File).name };
    texts[inputName(key)] = text;
  }
  try {
    return { kind: 'run', run: runFromText(entry, texts, { locale }) };
  } catch (error) {
    return { kind: 'fault', message: (error as Error).message };
  }
}
