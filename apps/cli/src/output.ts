/** Writes results: JSON to a file or, for "-", to standard output and nothing else there. */
import { writeFile } from 'node:fs/promises';
import { UsageError } from './failure.ts';

export async function writeJson(target: string, value: unknown): Promise<void> {
  const text = `${JSON.stringify(value, null, 2)}\n`;
  if (target === '-') await print(text);
  else await writeOut(target, text);
}

/** Waits until the text is handed over, so that a pipe gets all of it before the process ends. */
export function print(text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    process.stdout.write(text, (error) => (error ? reject(error) : resolve()));
  });
}

export async function writeOut(path: string, data: string | Uint8Array): Promise<void> {
  try {
    await writeFile(path, data);
  } catch (error) {
    throw new UsageError(
      `Could not write "${path}": ${(error as NodeJS.ErrnoException).code ?? 'unknown error'}.`,
    );
  }
}
