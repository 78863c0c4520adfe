/**
 * JSON with Float32Array leaves, as bytes.
 *
 * Layout, little-endian: magic "CVFLOAT1" (8 bytes), length of the header (uint32), 4 zero bytes, header (UTF-8
 * JSON, padded with spaces to a multiple of 8), then the arrays one after the other. In the header an array stands as
 * {"$": index of its first number in the block, "n": length}.
 */
const magic = 'CVFLOAT1';

type Packed = { $: number; n: number };

export function packFloats(value: unknown): Uint8Array {
  const arrays: Float32Array[] = [];
  let count = 0;
  const header = JSON.stringify(value, (_key, leaf: unknown) => {
    if (!(leaf instanceof Float32Array)) return leaf;
    arrays.push(leaf);
    count += leaf.length;
    return { $: count - leaf.length, n: leaf.length } satisfies Packed;
  });
  const text = Buffer.from(header);
  const textLength = Math.ceil(text.length / 8) * 8;
  const out = new Uint8Array(16 + textLength + 4 * count).fill(32, 16, 16 + textLength);
  out.set(Buffer.from(magic));
  new DataView(out.buffer).setUint32(8, textLength, true);
  out.set(text, 16);
  let at = 16 + textLength;
  for (const array of arrays) {
    out.set(new Uint8Array(array.buffer, array.byteOffset, array.byteLength), at);
    at += array.byteLength;
  }
  return out;
}

/** The value again; its arrays are views into `bytes` where the alignment allows. Throws on other bytes. */
export function unpackFloats(bytes: Uint8Array): unknown {
  const found = Buffer.from(bytes.subarray(0, 8)).toString();
  if (found !== magic) throw new Error(`Not packed numbers: starts with "${found}", expected "${magic}".`);
  const aligned = bytes.byteOffset % 4 === 0 ? bytes : bytes.slice();
  const textLength = new DataView(aligned.buffer, aligned.byteOffset).getUint32(8, true);
  const block = aligned.byteOffset + 16 + textLength;
  const text = Buffer.from(aligned.subarray(16, 16 + textLength)).toString();
  return JSON.parse(text, (_key, leaf: unknown) =>
    isPacked(leaf) ? new Float32Array(aligned.buffer as ArrayBuffer, block + 4 * leaf.$, leaf.n) : leaf,
  );
}

function isPacked(leaf: unknown): leaf is Packed {
  return typeof leaf === 'object' && leaf !== null && '$' in leaf;
}
