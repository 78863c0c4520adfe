import type { Part, Shape } from '@coveline/model';
import { facetBend } from '../weld/bend.ts';
import { facetsOf } from '../weld/facets.ts';
import { cavityTriangles } from '../weld/shells.ts';
import { weldOf } from '../weld/weld.ts';

/**
 * A curved face counts as flat near its crest only from this radius on. Our own choice: with 3 degrees, the nearly
 * level strip is then at least 52 mm wide; on the round tubes and bars of a frame it is a few millimetres, and drops
 * run off its sides.
 */
export const flatRadius_mm = 500;

/** Which triangles of a placed part lie nearly level. */
export interface Level {
  /** Slope per triangle, degrees; NaN where not level, curved or in a sealed cavity. */
  readonly slopes: Float64Array;
  /** Per triangle: 1 when it faces up. */
  readonly up: Uint8Array;
  /** Area of nearly level strips on curved faces that were left out, mm2. */
  readonly crest_mm2: number;
}

export function levelTriangles(shape: Shape, part: Part, below_deg: number): Level {
  const weld = weldOf(shape);
  const { facetOf, normals } = facetsOf(weld);
  const bend = facetBend(weld);
  const cavity = cavityTriangles(weld);
  const n = weld.triangles.length / 3;
  const slopes = new Float64Array(n).fill(Number.NaN);
  const up = new Uint8Array(n);
  const world = new Float64Array(3);
  let crest_mm2 = 0;
  for (let t = 0; t < n; t++) {
    if (cavity[t] || weld.areas[t] === 0) continue;
    const face = shape.cad?.faces[shape.cad.faceOfTriangle[t]];
    const plane = face?.kind === 'plane' ? face.axis?.direction : undefined;
    const f = facetOf[t] * 3;
    if (plane) turnInto(world, part, plane[0], plane[1], plane[2]);
    else turnInto(world, part, normals[f], normals[f + 1], normals[f + 2]);
    const slope = (Math.atan2(Math.hypot(world[0], world[1]), Math.abs(world[2])) * 180) / Math.PI;
    if (!(slope < below_deg)) continue;
    if (face?.kind !== 'plane' && radiusAt(face?.radius_mm, bend[facetOf[t]]) < flatRadius_mm) {
      crest_mm2 += weld.areas[t];
      continue;
    }
    slopes[t] = slope;
    up[t] = world[2] > 0 ? 1 : 0;
  }
  return { slopes, up, crest_mm2 };
}

function radiusAt(exact: number | undefined, bend: number): number {
  return exact ?? (bend === 0 ? Infinity : 1 / Math.abs(bend));
}

/** A direction of the shape's frame in the frame of the model. */
function turnInto(out: Float64Array, { placement: m }: Part, x: number, y: number, z: number): void {
  for (let k = 0; k < 3; k++) out[k] = m[k] * x + m[4 + k] * y + m[8 + k] * z;
}
