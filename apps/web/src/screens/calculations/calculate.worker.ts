/** Runs calculations beside the page, so that a long one never holds up typing. */
import { findCalculation, inputName, runFromText } from '@coveline/engineering';
import type { Question } from './calculate.ts';

self.onmessage = async ({ data }: MessageEvent<Question>) => {
  const { name, given, locale } = data;
  const entry = findCalculation(name);
  if (entry === undefined) throw new Error(`There is no calculation "${name}".`);
  const texts: Record<string, string> = {};
  for (const [key, value] of Object.entries(given))
    texts[inputName(key)] = typeof value === 'string' ? value : await value.text();
  self.postMessage(runFromText(entry, texts, { locale }));
};

// A promise that fails is no error event of the worker by itself.
self.addEventListener('unhandledrejection', ({ reason }) => {
  throw reason;
});
