import type { Model, Placement, Vec3 } from './model.ts';

export type UpAxis = 'x' | 'y' | 'z' | '-x' | '-y' | '-z';

/** Image of a point under a placement, mm. */
export function transformPoint(m: Placement, [x, y, z]: Vec3): Vec3 {
  return [
    m[0] * x + m[4] * y + m[8] * z + m[12],
    m[1] * x + m[5] * y + m[9] * z + m[13],
    m[2] * x + m[6] * y + m[10] * z + m[14],
  ];
}

/** Vertices of a part in the frame of the model: xyz per vertex, mm. Always a fresh array. */
export function placedPositions(model: Model, part: number): Float64Array {
  const { shape, placement: m } = model.parts[part];
  const local = model.shapes[shape].positions;
  const out = new Float64Array(local.length);
  for (let i = 0; i < local.length; i += 3) {
    const x = local[i];
    const y = local[i + 1];
    const z = local[i + 2];
    out[i] = m[0] * x + m[4] * y + m[8] * z + m[12];
    out[i + 1] = m[1] * x + m[5] * y + m[9] * z + m[13];
    out[i + 2] = m[2] * x + m[6] * y + m[10] * z + m[14];
  }
  return out;
}

/** Triangles of all parts together. */
export function triangleCount(model: Model): number {
  let n = 0;
  for (const part of model.parts) n += model.shapes[part.shape].triangles.length / 3;
  return n;
}

/** Lowest and highest corner of all parts, mm; both at the origin for an empty model. */
export function bounds(model: Model): readonly [Vec3, Vec3] {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let p = 0; p < model.parts.length; p++) {
    const xyz = placedPositions(model, p);
    for (let i = 0; i < xyz.length; i++) {
      const axis = i % 3;
      if (xyz[i] < low[axis]) low[axis] = xyz[i];
      if (xyz[i] > high[axis]) high[axis] = xyz[i];
    }
  }
  if (low[0] > high[0])
    return [
      [0, 0, 0],
      [0, 0, 0],
    ];
  return [low as unknown as Vec3, high as unknown as Vec3];
}

/** Rows of the rotation that takes each axis to +Z. Proper rotations by quarter turns, so exact. */
const toUp: Record<UpAxis, readonly number[]> = {
  z: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  '-z': [1, 0, 0, 0, -1, 0, 0, 0, -1],
  y: [1, 0, 0, 0, 0, -1, 0, 1, 0],
  '-y': [1, 0, 0, 0, 0, 1, 0, -1, 0],
  x: [0, 0, -1, 0, 1, 0, 1, 0, 0],
  '-x': [0, 0, 1, 0, 1, 0, -1, 0, 0],
};

/** The same model turned so that the given axis of the file points to +Z. */
export function orient(model: Model, up: UpAxis): Model {
  if (up === 'z') return model;
  const r = toUp[up];
  const parts = model.parts.map((part) => {
    const m = part.placement;
    const out = new Float64Array(16);
    for (let column = 0; column < 4; column++) {
      for (let row = 0; row < 3; row++) {
        out[column * 4 + row] =
          r[row * 3] * m[column * 4] +
          r[row * 3 + 1] * m[column * 4 + 1] +
          r[row * 3 + 2] * m[column * 4 + 2];
      }
    }
    out[15] = 1;
    return { ...part, placement: out };
  });
  return { ...model, parts };
}
