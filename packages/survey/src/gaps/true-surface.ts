import type { CadFace, Model } from '@coveline/model';

/**
 * The CAD surfaces behind the triangles of a model, for exact distances: the triangles of a shaft and of its bore
 * stand off the true surfaces by more than the gap between them may be wide.
 */
export interface TrueSurfaces {
  readonly model: Model;
  /** Per part: first triangle in model order. */
  readonly start: Uint32Array;
}

/**
 * Moves a point of a triangle (model order) to the true surface, and writes position and outward normal, six numbers.
 * Returns false, and writes nothing, where the triangle is not on a CAD cylinder or torus of known place.
 */
export function ontoTrueSurface(
  { model, start }: TrueSurfaces,
  part: number,
  triangle: number,
  x: number,
  y: number,
  z: number,
  out: Float64Array,
): boolean {
  const { shape, placement: m } = model.parts[part];
  const { cad } = model.shapes[shape];
  if (!cad) return false;
  const face = cad.faces[cad.faceOfTriangle[triangle - start[part]]];
  if (!isExact(face)) return false;
  const [dx, dy, dz] = [x - m[12], y - m[13], z - m[14]];
  const lx = m[0] * dx + m[1] * dy + m[2] * dz;
  const ly = m[4] * dx + m[5] * dy + m[6] * dz;
  const lz = m[8] * dx + m[9] * dy + m[10] * dz;
  if (!project(face, lx, ly, lz)) return false;
  for (let k = 0; k < 3; k++) {
    out[k] = m[k] * local[0] + m[4 + k] * local[1] + m[8 + k] * local[2] + m[12 + k];
    out[3 + k] = m[k] * local[3] + m[4 + k] * local[4] + m[8 + k] * local[5];
  }
  return true;
}

function isExact({ kind, axis, radius_mm, majorRadius_mm }: CadFace): boolean {
  if (axis === undefined || radius_mm === undefined) return false;
  return kind === 'cylinder' || (kind === 'torus' && majorRadius_mm !== undefined);
}

const local = new Float64Array(6);

/** Nearest point of the face's whole surface and the normal there, in the frame of the shape. */
function project(face: CadFace, x: number, y: number, z: number): boolean {
  const { origin: o, direction: d } = face.axis!;
  const [px, py, pz] = [x - o[0], y - o[1], z - o[2]];
  const along = px * d[0] + py * d[1] + pz * d[2];
  let cx = px - along * d[0];
  let cy = py - along * d[1];
  let cz = pz - along * d[2];
  const off = Math.hypot(cx, cy, cz);
  if (off < 1e-9) return false;
  // From the centre line of the tube to the point.
  if (face.kind === 'torus') {
    const keep = 1 - face.majorRadius_mm! / off;
    cx = cx * keep + along * d[0];
    cy = cy * keep + along * d[1];
    cz = cz * keep + along * d[2];
  }
  const reach = Math.hypot(cx, cy, cz);
  if (reach < 1e-9) return false;
  const shift = face.radius_mm! / reach - 1;
  const side = (face.hollow ? -1 : 1) / reach;
  local[0] = x + cx * shift;
  local[1] = y + cy * shift;
  local[2] = z + cz * shift;
  local[3] = cx * side;
  local[4] = cy * side;
  local[5] = cz * side;
  return true;
}
