/** Starts the geometry kernel once per process. Every drawing function needs it to have run. Its chatter is dropped. */
import { getOC, setOC } from 'replicad';
import start from 'replicad-opencascadejs';

let started: Promise<void> | null = null;

export function startKernel(): Promise<void> {
  started ??= start({ print: () => {} }).then((kernel) => setOC(kernel));
  return started;
}

export type Kernel = ReturnType<typeof getOC>;

/** The kernel itself, for what the drawing library does not offer. Throws before `startKernel` has finished. */
export function kernel(): Kernel {
  return getOC();
}
