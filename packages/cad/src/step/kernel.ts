/**
 * The CAD kernel: OCCT compiled to WebAssembly, loaded unmodified from its package or from a given address.
 *
 * Memory that the kernel has taken does not come back, and a trap leaves it in an unknown state, so an instance is
 * thrown away after a trap or when it has grown large; the next use makes a new one.
 */
import init, { type OpenCascadeInstance } from 'replicad-opencascadejs';

export type Kernel = OpenCascadeInstance;

/** Bytes of WebAssembly memory above which an instance is not used again. */
const retireAbove = 1 << 30;

let current: Promise<Kernel> | undefined;

/** `wasmUrl`: where to load the kernel from; by default the file in its own package. */
export function kernel(wasmUrl?: string): Promise<Kernel> {
  current ??= init({
    ...(wasmUrl === undefined ? {} : { locateFile: () => wasmUrl }),
    // The kernel prints its complaints; standard output belongs to the caller, and the reader checks for itself.
    stdin: () => null,
    stdout: drop,
    stderr: drop,
  });
  return current;
}

const drop = () => {};

/** Forgets the instance; the next use loads a fresh one. */
export function resetKernel(): void {
  current = undefined;
}

export function retireIfLarge(oc: Kernel): void {
  if (oc.wasmMemory.buffer.byteLength > retireAbove) resetKernel();
}

/** What went wrong inside the kernel, in its own words, and whether the instance is still good. */
export function kernelFailure(oc: Kernel, thrown: unknown): { text: string; trapped: boolean } {
  // A C++ exception crosses as WebAssembly.Exception, which is no Error; everything else is a trap or a fault of ours.
  if (thrown instanceof Error) return { text: thrown.message, trapped: true };
  try {
    const [type, message] = oc.getExceptionMessage(thrown as Parameters<Kernel['getExceptionMessage']>[0]);
    return { text: message ? `${type}: ${message}` : type, trapped: false };
  } catch {
    return { text: 'an exception without a message', trapped: true };
  }
}
