/** The little of WebAssembly that the kernel needs: the same in Node and in browsers. */

export interface Memory {
  readonly buffer: ArrayBufferLike;
  /** Adds pages of 64 KB; throws a RangeError when the system does not give them. */
  grow(pages: number): number;
}

declare const WebAssembly: {
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (
    module: object,
    imports: { env: { memory: Memory; abort: () => void } },
  ) => { readonly exports: unknown };
  readonly Memory: new (size: { initial: number; maximum?: number; shared?: true }) => Memory;
};

declare const atob: (base64: string) => string;

/**
 * Shared memory, in pages of 64 KB; throws a RangeError when the system does not give it. Every environment that has
 * threads in its WebAssembly can make one, also a page that is not isolated and so may not send it to a worker (MDN,
 * SharedArrayBuffer, "Security requirements").
 */
export function newSharedMemory(initial: number, maximum: number): Memory {
  return new WebAssembly.Memory({ initial, maximum, shared: true });
}

/** Memory of one thread, in pages of 64 KB, that grows; throws a RangeError when the system does not give it. */
export function newMemory(initial: number): Memory {
  return new WebAssembly.Memory({ initial });
}

export function compile(base64: string): object {
  return new WebAssembly.Module(Uint8Array.from(atob(base64), (c) => c.charCodeAt(0)));
}

const broken = (): never => {
  throw new Error('The kernel stopped: an invariant of its own is broken.');
};

/** `abort`: throws what is to be told when the kernel stops. */
export function exportsOf(module: object, memory: Memory, abort: () => never = broken): unknown {
  return new WebAssembly.Instance(module, { env: { memory, abort } }).exports;
}
