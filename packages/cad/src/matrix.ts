/** Column-major 4x4 affine matrices, as in `Placement`. */

export type Matrix = Float64Array;

export const identity = (): Matrix => new Float64Array([1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1]);

/** a after b: the image of a point is a(b(point)). */
export function multiply(a: Matrix, b: Matrix): Matrix {
  const out = new Float64Array(16);
  for (let column = 0; column < 4; column++) {
    for (let row = 0; row < 4; row++) {
      let sum = 0;
      for (let k = 0; k < 4; k++) sum += a[k * 4 + row] * b[column * 4 + k];
      out[column * 4 + row] = sum;
    }
  }
  return out;
}

/** Determinant of the upper left 3x3: 1 for a rotation, negative where the motion mirrors. */
export function determinant(m: Matrix): number {
  return (
    m[0] * (m[5] * m[10] - m[9] * m[6]) -
    m[4] * (m[1] * m[10] - m[9] * m[2]) +
    m[8] * (m[1] * m[6] - m[5] * m[2])
  );
}

/** Inverse of an affine matrix; undefined where it flattens space. */
export function inverse(m: Matrix): Matrix | undefined {
  const d = determinant(m);
  if (!(Math.abs(d) > 1e-300)) return undefined;
  const out = identity();
  for (let column = 0; column < 3; column++) {
    for (let row = 0; row < 3; row++) {
      // Cofactor of the transposed element; the cyclic indices carry the sign.
      const r1 = (column + 1) % 3;
      const r2 = (column + 2) % 3;
      const c1 = (row + 1) % 3;
      const c2 = (row + 2) % 3;
      out[column * 4 + row] = (m[c1 * 4 + r1] * m[c2 * 4 + r2] - m[c2 * 4 + r1] * m[c1 * 4 + r2]) / d;
    }
  }
  for (let row = 0; row < 3; row++) {
    out[12 + row] = -(out[row] * m[12] + out[4 + row] * m[13] + out[8 + row] * m[14]);
  }
  return out;
}

/** True where the matrix keeps lengths and handedness within 1e-9 (a proper rigid motion). */
export function isRigid(m: Matrix): boolean {
  for (let a = 0; a < 3; a++) {
    for (let b = a; b < 3; b++) {
      let dot = 0;
      for (let k = 0; k < 3; k++) dot += m[a * 4 + k] * m[b * 4 + k];
      if (Math.abs(dot - (a === b ? 1 : 0)) > 1e-9) return false;
    }
  }
  return determinant(m) > 0;
}

/**
 * m = rigid * rest, where `rest` is upper triangular without translation and `rigid` is a proper rigid motion
 * (Gram-Schmidt on the columns; a mirrored matrix leaves a negative first diagonal element in `rest`).
 */
export function splitRigid(m: Matrix): { rigid: Matrix; rest: Matrix } {
  const mirrored = determinant(m) < 0;
  const q: number[][] = [];
  for (let c = 0; c < 3; c++) {
    const v = [m[c * 4], m[c * 4 + 1], m[c * 4 + 2]];
    for (const u of q) {
      const dot = v[0] * u[0] + v[1] * u[1] + v[2] * u[2];
      for (let k = 0; k < 3; k++) v[k] -= dot * u[k];
    }
    const length = Math.hypot(v[0], v[1], v[2]) || 1;
    q.push([v[0] / length, v[1] / length, v[2] / length]);
  }
  if (mirrored) q[0] = q[0].map((x) => -x);
  const rigid = identity();
  for (let c = 0; c < 3; c++) for (let k = 0; k < 3; k++) rigid[c * 4 + k] = q[c][k];
  for (let k = 12; k < 15; k++) rigid[k] = m[k];
  const rest = identity();
  for (let c = 0; c < 3; c++) {
    for (let r = 0; r < 3; r++) {
      let dot = 0;
      for (let k = 0; k < 3; k++) dot += q[r][k] * m[c * 4 + k];
      rest[c * 4 + r] = r > c ? 0 : dot;
    }
  }
  return { rigid, rest };
}
