import { DataTexture, LinearFilter, RGBAFormat } from 'three';
import type { Sheet } from './sheet.ts';

const size = 128;

/**
 * Shading as a picture of a lit sphere: soft light from above left, darker towards the rim. Cheap on any GPU,
 * and the same from every side, so that a surface never drowns in its own shadow.
 */
export function matcap(sheet: Sheet): DataTexture {
  const data = new Uint8Array(size * size * 4);
  const light = [-0.38, 0.62, 0.69];
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      const x = ((column + 0.5) / size) * 2 - 1;
      const y = ((row + 0.5) / size) * 2 - 1;
      const inside = Math.min(1, Math.hypot(x, y));
      const z = Math.sqrt(Math.max(0, 1 - inside * inside));
      const facing = Math.max(0, x * light[0] + y * light[1] + z * light[2]);
      const rim = 1 - 0.16 * (1 - z) ** 2;
      const level = (sheet.shade + (sheet.lit - sheet.shade) * facing ** 0.8) * rim;
      const at = (row * size + column) * 4;
      data[at] = data[at + 1] = data[at + 2] = Math.min(255, Math.round(level * 244));
      data[at + 3] = 255;
    }
  }
  const texture = new DataTexture(data, size, size, RGBAFormat);
  texture.magFilter = LinearFilter;
  texture.minFilter = LinearFilter;
  texture.needsUpdate = true;
  return texture;
}
