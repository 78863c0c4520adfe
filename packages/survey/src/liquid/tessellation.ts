import type { CadFace, Model } from '@coveline/model';
import { facingTriangles } from './depth-field.ts';
import type { Region } from './regions.ts';
import type { Soup } from './soup.ts';

/** Below this share of the volume the triangles are not worth a caveat. */
const worthSaying = 0.01;

/**
 * A caveat where a pool stands on curved CAD faces and is so shallow that the distance of the triangles from the true
 * faces matters: that distance times the ground plan of the curved triangles bounds the error.
 */
export function tessellationCaveat(
  model: Model,
  soup: Soup,
  region: Region,
  near: Uint32Array,
  volume_mL: number,
): string | undefined {
  const { deviation_mm } = model;
  if (deviation_mm === 0) return undefined;
  let bound_mm3 = 0;
  let farthest_mm = 0;
  facingTriangles(soup, region, near, (t) => {
    const face = faceOf(model, soup, t);
    if (!face || face.kind === 'plane') return;
    const off_mm = face.deviation_mm ?? deviation_mm;
    farthest_mm = Math.max(farthest_mm, off_mm);
    bound_mm3 += groundPlan(soup, t) * off_mm;
  });
  const bound_mL = bound_mm3 / 1000;
  if (bound_mL <= worthSaying * volume_mL) return undefined;
  return `It stands on curved faces, and their triangles keep within ${farthest_mm.toPrecision(2)} mm of them: the volume can be off by up to ${bound_mL.toPrecision(2)} mL. Read the model with a finer deviation to narrow this.`;
}

function faceOf(
  { shapes, parts }: Model,
  { part, source, firstOfPart }: Soup,
  t: number,
): CadFace | undefined {
  const { cad } = shapes[parts[part[t]].shape];
  if (!cad || source[t] < 0) return undefined;
  return cad.faces[cad.faceOfTriangle[source[t] - firstOfPart[part[t]]]];
}

function groundPlan({ uvz, triangles }: Soup, t: number): number {
  const a = triangles[t * 3] * 3;
  const b = triangles[t * 3 + 1] * 3;
  const c = triangles[t * 3 + 2] * 3;
  const area = (uvz[b] - uvz[a]) * (uvz[c + 1] - uvz[a + 1]) - (uvz[b + 1] - uvz[a + 1]) * (uvz[c] - uvz[a]);
  return Math.abs(area) / 2;
}
