import type { Model, Vec3 } from '@coveline/model';
import { triangleCount } from '@coveline/model';
import { cornerNormals } from './corner-normals.ts';

/** All parts as one set of attributes; three corners per triangle, none shared, so that a triangle has its own colour. */
export interface MergedFaces {
  /** xyz per corner, mm from `origin`. */
  readonly position: Float32Array;
  /** xyz and a filler per corner, scaled to 32767. */
  readonly normal: Int16Array;
  /** rgb per corner, 0 to 255, and an alpha that stays full. */
  readonly color: Uint8Array;
  /** First triangle of each part, and the number of all triangles at the end. */
  readonly first: Uint32Array;
}

export function mergeFaces(model: Model, origin: Vec3): MergedFaces {
  const count = triangleCount(model);
  const position = new Float32Array(count * 9);
  const normal = new Int16Array(count * 12);
  const first = new Uint32Array(model.parts.length + 1);
  const normals = model.shapes.map(cornerNormals);
  let corner = 0;
  model.parts.forEach((part, index) => {
    first[index] = corner / 3;
    const { positions, triangles } = model.shapes[part.shape];
    const local = normals[part.shape];
    const m = part.placement;
    for (let c = 0; c < triangles.length; c++, corner++) {
      const v = triangles[c] * 3;
      const x = positions[v];
      const y = positions[v + 1];
      const z = positions[v + 2];
      position[corner * 3] = m[0] * x + m[4] * y + m[8] * z + m[12] - origin[0];
      position[corner * 3 + 1] = m[1] * x + m[5] * y + m[9] * z + m[13] - origin[1];
      position[corner * 3 + 2] = m[2] * x + m[6] * y + m[10] * z + m[14] - origin[2];
      const nx = local[c * 3] * 32767;
      const ny = local[c * 3 + 1] * 32767;
      const nz = local[c * 3 + 2] * 32767;
      normal[corner * 4] = m[0] * nx + m[4] * ny + m[8] * nz;
      normal[corner * 4 + 1] = m[1] * nx + m[5] * ny + m[9] * nz;
      normal[corner * 4 + 2] = m[2] * nx + m[6] * ny + m[10] * nz;
    }
  });
  first[model.parts.length] = count;
  return { position, normal, color: new Uint8Array(count * 12).fill(255), first };
}
