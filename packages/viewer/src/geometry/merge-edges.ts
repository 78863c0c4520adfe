import type { Model, Vec3 } from '@coveline/model';
import { featureEdges } from './feature-edges.ts';

export interface MergedEdges {
  /** xyz per end, two ends per segment, mm from the origin. */
  readonly position: Float32Array;
  /** First segment of each part, and the number of all segments at the end. */
  readonly first: Uint32Array;
}

/** The edges of all parts as one list of segments. */
export function mergeEdges(model: Model, origin: Vec3): MergedEdges {
  const edges = model.shapes.map(featureEdges);
  const points = model.parts.reduce((sum, part) => sum + edges[part.shape].length / 3, 0);
  const position = new Float32Array(points * 3);
  const first = new Uint32Array(model.parts.length + 1);
  let at = 0;
  model.parts.forEach((part, index) => {
    first[index] = at / 6;
    const local = edges[part.shape];
    const m = part.placement;
    for (let i = 0; i < local.length; i += 3, at += 3) {
      const x = local[i];
      const y = local[i + 1];
      const z = local[i + 2];
      position[at] = m[0] * x + m[4] * y + m[8] * z + m[12] - origin[0];
      position[at + 1] = m[1] * x + m[5] * y + m[9] * z + m[13] - origin[1];
      position[at + 2] = m[2] * x + m[6] * y + m[10] * z + m[14] - origin[2];
    }
  });
  first[model.parts.length] = points / 2;
  return { position, first };
}
