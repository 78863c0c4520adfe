/**
 * A model as bytes, to pass between processes, to keep on disk and to send to the browser.
 *
 * Layout, little-endian: magic "CVMODEL1" (8 bytes), length of the header (uint32), 4 zero bytes, header
 * (UTF-8 JSON, padded with spaces to a multiple of 8), then one block of typed arrays, each 8-byte aligned.
 * In the header every typed array stands as {"$": kind, "at": byte offset in the block, "n": length}.
 */
import type { Model } from './model.ts';

const magic = 'CVMODEL1';

const kinds = { f64: Float64Array, u32: Uint32Array } as const;
type Packed = { $: keyof typeof kinds; at: number; n: number };

export function encodeModel(model: Model): Uint8Array {
  const arrays: { at: number; data: Float64Array | Uint32Array }[] = [];
  let size = 0;
  const header = JSON.stringify(model, (_key, value: unknown) => {
    if (!(value instanceof Float64Array || value instanceof Uint32Array)) return value;
    const at = size;
    arrays.push({ at, data: value });
    size += Math.ceil(value.byteLength / 8) * 8;
    return { $: value instanceof Float64Array ? 'f64' : 'u32', at, n: value.length } satisfies Packed;
  });
  const text = new TextEncoder().encode(header);
  const textLength = Math.ceil(text.length / 8) * 8;
  const out = new Uint8Array(16 + textLength + size).fill(32, 16, 16 + textLength);
  out.set(new TextEncoder().encode(magic), 0);
  new DataView(out.buffer).setUint32(8, textLength, true);
  out.set(text, 16);
  for (const { at, data } of arrays) {
    out.set(new Uint8Array(data.buffer, data.byteOffset, data.byteLength), 16 + textLength + at);
  }
  return out;
}

/** Views into `bytes`, which may be shared, where its alignment allows, copies otherwise. Throws on bytes that are not a packed model. */
export function decodeModel(bytes: Uint8Array): Model {
  const found = new TextDecoder().decode(bytes.slice(0, 8));
  if (found !== magic) throw new Error(`Not a packed model: starts with "${found}", expected "${magic}".`);
  const textLength = new DataView(bytes.buffer, bytes.byteOffset).getUint32(8, true);
  const start = 16 + textLength;
  const aligned = (bytes.byteOffset + start) % 8 === 0 ? bytes : bytes.slice();
  const text = new TextDecoder().decode(bytes.slice(16, start));
  return JSON.parse(text, (_key, value: unknown) => {
    if (!isPacked(value)) return value;
    return new kinds[value.$](aligned.buffer as ArrayBuffer, aligned.byteOffset + start + value.at, value.n);
  }) as Model;
}

function isPacked(value: unknown): value is Packed {
  return typeof value === 'object' && value !== null && '$' in value;
}
