import { encode } from 'fast-png';
import type { Rgb } from './palette.ts';

/** RGB, 0 to 255 a channel, rows from the top. */
export interface Image {
  readonly width: number;
  readonly height: number;
  readonly rgb: Float32Array;
}

export function newImage(width: number, height: number): Image {
  return { width, height, rgb: new Float32Array(width * height * 3) };
}

export function copyImage({ width, height, rgb }: Image): Image {
  return { width, height, rgb: rgb.slice() };
}

/** Lays a tone over the pixel at index `i`. */
export function blend({ rgb }: Image, i: number, tone: Rgb, share: number): void {
  for (let k = 0; k < 3; k++) rgb[i * 3 + k] += (tone[k] - rgb[i * 3 + k]) * share;
}

/** Means of blocks of `factor` by `factor`. */
export function shrink(image: Image, factor: number): Image {
  const width = Math.floor(image.width / factor);
  const height = Math.floor(image.height / factor);
  const out = newImage(width, height);
  const share = 1 / (factor * factor);
  for (let y = 0; y < height * factor; y++) {
    for (let x = 0; x < width * factor; x++) {
      const from = (y * image.width + x) * 3;
      const to = (Math.floor(y / factor) * width + Math.floor(x / factor)) * 3;
      for (let k = 0; k < 3; k++) out.rgb[to + k] += image.rgb[from + k] * share;
    }
  }
  return out;
}

export function toPng({ width, height, rgb }: Image): Uint8Array {
  const data = new Uint8Array(rgb.length);
  for (let i = 0; i < rgb.length; i++) data[i] = Math.max(0, Math.min(255, Math.round(rgb[i])));
  return encode({ width, height, data, channels: 3, depth: 8 });
}
