/**
 * JSON with Float32Array leaves, as bytes: to keep on disk and to send to the browser.
 *
 * Layout, little-endian: magic "CVFLOAT1" (8 bytes), length of the header (uint32), 4 zero bytes, header (UTF-8
 * JSON, padded with spaces to a multiple of 8), then the arrays one after the other. In the header an array stands as
 * {"$": index of its first number in the block, "n": length}.
 */
const magic = 'CVFLOAT1';
/** Bytes that tell where the numbers begin. */
export const floatsPrelude = 16;

type Packed = { $: number; n: number };

/** Numbers of the block, by index of the first and count. */
export type FloatsAt = (first: number, count: number) => Float32Array;

export function packFloats(value: unknown): Uint8Array<ArrayBuffer> {
  const arrays: Float32Array[] = [];
  let count = 0;
  const header = JSON.stringify(value, (_key, leaf: unknown) => {
    if (!(leaf instanceof Float32Array)) return leaf;
    arrays.push(leaf);
    count += leaf.length;
    return { $: count - leaf.length, n: leaf.length } satisfies Packed;
  });
  const text = new TextEncoder().encode(header);
  const textLength = Math.ceil(text.length / 8) * 8;
  const out = new Uint8Array(floatsPrelude + textLength + 4 * count).fill(
    32,
    floatsPrelude,
    floatsPrelude + textLength,
  );
  out.set(new TextEncoder().encode(magic));
  new DataView(out.buffer).setUint32(8, textLength, true);
  out.set(text, floatsPrelude);
  let at = floatsPrelude + textLength;
  for (const array of arrays) {
    out.set(new Uint8Array(array.buffer, array.byteOffset, array.byteLength), at);
    at += array.byteLength;
  }
  return out;
}

/** The value again; its arrays are views into `bytes` where the alignment allows. Throws on other bytes. */
export function unpackFloats(bytes: Uint8Array): unknown {
  const block = floatsBegin(bytes);
  const aligned = bytes.byteOffset % 4 === 0 ? bytes : bytes.slice();
  const header = JSON.parse(new TextDecoder().decode(aligned.slice(floatsPrelude, block)));
  return withFloats(
    header,
    (first, count) =>
      new Float32Array(aligned.buffer as ArrayBuffer, aligned.byteOffset + block + 4 * first, count),
  );
}

/** Where the block of numbers begins, from the prelude. The header lies between the two. Throws on other bytes. */
export function floatsBegin(bytes: Uint8Array): number {
  const found = new TextDecoder().decode(bytes.slice(0, 8));
  if (found !== magic) throw new Error(`Not packed numbers: starts with "${found}", expected "${magic}".`);
  return floatsPrelude + new DataView(bytes.buffer, bytes.byteOffset).getUint32(8, true);
}

/** A value of the parsed header, or a part of it, with its arrays in place. */
export function withFloats(value: unknown, floatsAt: FloatsAt): unknown {
  if (Array.isArray(value)) return value.map((one) => withFloats(one, floatsAt));
  if (typeof value !== 'object' || value === null) return value;
  if ('$' in value) return floatsAt((value as Packed).$, (value as Packed).n);
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, withFloats(one, floatsAt)]));
}
