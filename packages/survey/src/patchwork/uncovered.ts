import { isCovered } from '../flat/cover.ts';
import { boxesMeet } from '../tree/boxes.ts';
import type { Material } from '../tree/inside.ts';

/** Whether another part lies on a surface point of one part, or buries it: as `isCovered`, sparing most looks. */
export type Covered = (x: number, y: number, z: number, nx: number, ny: number, nz: number) => boolean;

/** `boxes`: of all parts, see `partBoxes`. Only where the box of another part is near can anything cover a point. */
export function coverOn(material: Material, boxes: Float64Array, part: number, contact_mm: number): Covered {
  const reach = 2 * contact_mm;
  const near: number[] = [];
  for (let o = 0; o < boxes.length / 6; o++) {
    if (o !== part && boxesMeet(boxes, part * 6, boxes, o * 6, reach)) near.push(o * 6);
  }
  return (x, y, z, nx, ny, nz) => {
    for (const b of near) {
      if (x < boxes[b] - reach || x > boxes[b + 3] + reach) continue;
      if (y < boxes[b + 1] - reach || y > boxes[b + 4] + reach) continue;
      if (z < boxes[b + 2] - reach || z > boxes[b + 5] + reach) continue;
      return isCovered(material, part, x, y, z, nx, ny, nz, contact_mm);
    }
    return false;
  };
}
