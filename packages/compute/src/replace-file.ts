import { renameSync, writeFileSync } from 'node:fs';

/** Writes a file in one step: a process that is killed meanwhile leaves the old one or the new one, whole. */
export function replaceFile(path: string, content: string | Uint8Array): void {
  writeFileSync(`${path}.new`, content);
  renameSync(`${path}.new`, path);
}
