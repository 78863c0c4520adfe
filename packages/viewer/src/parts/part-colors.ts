import type { Vec3 } from '@coveline/model';
import type { MergedFaces } from '../geometry/merge-faces.ts';
import { type ColorScale, writeColor } from '../look/color-scale.ts';

/** One value per triangle, parts in model order; NaN where there is nothing to paint. */
export interface PaintedField {
  readonly values: Float32Array;
  readonly scale: ColorScale;
}

/** Writes the colour of every triangle of a part: its own, towards `mark` when selected, under the field. */
export function colorPart(
  faces: MergedFaces,
  part: number,
  base: Vec3,
  mark: Vec3 | null,
  field: PaintedField | null,
): void {
  const ground = base.map((c, k) => Math.round((mark ? c * 0.2 + mark[k] * 0.8 : c) * 255));
  const { color, first } = faces;
  for (let t = first[part]; t < first[part + 1]; t++) {
    const at = t * 12;
    const value = field ? field.values[t] : Number.NaN;
    if (field && !Number.isNaN(value)) writeColor(field.scale, value, color, at);
    else {
      color[at] = ground[0];
      color[at + 1] = ground[1];
      color[at + 2] = ground[2];
    }
    for (let corner = 4; corner < 12; corner += 4) color.copyWithin(at + corner, at, at + 3);
  }
}
