/** Mouths and filter faces for the checks of first air and of what hangs overhead. */

import type { Model } from '@coveline/model';
import { transformPoint, type Vec3 } from '@coveline/model';
import type { FilterFace, Mouth } from '@coveline/survey';
import { movedModel, type Placement } from '../../shapes/mesh.ts';

export const mouth = (radius_mm: number, more: Partial<Mouth> = {}): Mouth => ({
  id: 'mouth',
  parts: ['jar'],
  at_mm: [0, 0, 0],
  outward: [0, 0, 1],
  radius_mm,
  ...more,
});

/** A square face that hangs level over the origin and blows down. */
export const filter = (half: number, height: number, more: Partial<FilterFace> = {}): FilterFace => ({
  id: 'filter',
  parts: [],
  at_mm: [0, 0, height],
  flow: [0, 0, -1],
  across_mm: [half, 0, 0],
  along_mm: [0, half, 0],
  ...more,
});

/** Part of a circle that a strip of half width h through its middle covers: (2/pi)(asin x + x sqrt(1 - x2)), x = h/r. */
export const strip = (x: number): number => (2 / Math.PI) * (Math.asin(x) + x * Math.sqrt(1 - x * x));

/** Part of a circle beyond a line at distance d = x r from its middle: (acos x - x sqrt(1 - x2)) / pi. */
export const segment = (x: number): number => (Math.acos(x) - x * Math.sqrt(1 - x * x)) / Math.PI;

/** Model, mouths and filters moved as a whole. */
export function moved(model: Model, mouths: readonly Mouth[], filters: readonly FilterFace[], by: Placement) {
  const [x, y, z] = transformPoint(by, [0, 0, 0]);
  const turned = (d: Vec3): Vec3 => {
    const [a, b, c] = transformPoint(by, d);
    return [a - x, b - y, c - z];
  };
  return {
    model: movedModel(model, by),
    site: {
      mouths: mouths.map((m) => ({
        ...m,
        at_mm: transformPoint(by, m.at_mm),
        outward: turned(m.outward),
      })),
      filters: filters.map((f) => ({
        ...f,
        at_mm: transformPoint(by, f.at_mm),
        flow: turned(f.flow),
        across_mm: turned(f.across_mm),
        along_mm: turned(f.along_mm),
      })),
    },
  };
}
