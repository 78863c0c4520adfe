import { createHash, randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { access, mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** Files by the SHA-256 of their content. A name, once there, always means the same bytes. */
export interface Blobs {
  /** Path of a blob; it need not exist. */
  readonly path: (sha256: string) => string;
  /** Writes the stream to disk while hashing it. Nothing stays when the stream fails. */
  readonly receive: (content: AsyncIterable<Uint8Array>) => Promise<{ sha256: string; bytes: number }>;
  readonly putFile: (path: string) => Promise<string>;
  readonly putText: (text: string) => Promise<string>;
}

export async function openBlobs(folder: string): Promise<Blobs> {
  const incoming = join(folder, 'incoming');
  // What a process left there when it died belongs to nothing; two servers on one folder each use their own.
  await mkdir(incoming, { recursive: true });

  const path = (sha256: string) => join(folder, sha256.slice(0, 2), sha256);

  async function receive(content: AsyncIterable<Uint8Array>): Promise<{ sha256: string; bytes: number }> {
    const temporary = join(incoming, randomUUID());
    const hash = createHash('sha256');
    let bytes = 0;
    const file = await open(temporary, 'wx');
    try {
      try {
        for await (const chunk of content) {
          hash.update(chunk);
          bytes += chunk.length;
          await file.writeFile(chunk);
        }
        await file.sync();
      } finally {
        await file.close();
      }
      const sha256 = hash.digest('hex');
      await keep(temporary, path(sha256));
      return { sha256, bytes };
    } finally {
      await rm(temporary, { force: true });
    }
  }

  return {
    path,
    receive,
    putFile: async (file) => (await receive(createReadStream(file))).sha256,
    putText: async (text) => (await receive(single(Buffer.from(text)))).sha256,
  };
}

async function* single(chunk: Uint8Array): AsyncIterable<Uint8Array> {
  yield chunk;
}

async function keep(temporary: string, target: string): Promise<void> {
  const known = await access(target).then(
    () => true,
    () => false,
  );
  if (known) return;
  await mkdir(dirname(target), { recursive: true });
  await rename(temporary, target);
  const folder = await open(dirname(target), 'r');
  await folder.sync().finally(() => folder.close());
}
