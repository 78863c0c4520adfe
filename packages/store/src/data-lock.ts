import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { tryLock } from 'fs-native-extensions';
import { StoreError } from './errors.ts';

/**
 * Takes the folder for this process by a lock of the operating system, which falls with the process however it
 * ends. Two processes on one embedded database lose rows silently. Resolves to the way to give it back.
 */
export async function lockFolder(folder: string): Promise<() => Promise<void>> {
  const file = await open(join(folder, 'lock'), 'a+');
  if (!tryLock(file.fd)) {
    await file.close();
    throw new StoreError(
      'data-in-use',
      `The data folder ${folder} is in use by another process: stop that one or choose another folder.`,
    );
  }
  return () => file.close();
}
