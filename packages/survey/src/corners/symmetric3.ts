import type { Triple } from './round.ts';

/** Unit eigenvector to the smallest eigenvalue of a symmetric matrix [xx, xy, xz, yy, yz, zz], by Jacobi rotations. */
export function smallestAxis(m: Float64Array): Triple {
  const a = [
    [m[0], m[1], m[2]],
    [m[1], m[3], m[4]],
    [m[2], m[4], m[5]],
  ];
  const e = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  for (let sweep = 0; sweep < 30; sweep++) {
    const off = Math.abs(a[0][1]) + Math.abs(a[0][2]) + Math.abs(a[1][2]);
    if (off <= 1e-15 * (a[0][0] + a[1][1] + a[2][2])) break;
    for (const [p, q] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ]) {
      if (a[p][q] === 0) continue;
      const theta = (a[q][q] - a[p][p]) / (2 * a[p][q]);
      const t = Math.sign(theta || 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
      const c = 1 / Math.sqrt(t * t + 1);
      const s = t * c;
      for (let k = 0; k < 3; k++) {
        const [kp, kq] = [a[k][p], a[k][q]];
        a[k][p] = c * kp - s * kq;
        a[k][q] = s * kp + c * kq;
      }
      for (let k = 0; k < 3; k++) {
        const [pk, qk] = [a[p][k], a[q][k]];
        a[p][k] = c * pk - s * qk;
        a[q][k] = s * pk + c * qk;
        const [ep, eq] = [e[k][p], e[k][q]];
        e[k][p] = c * ep - s * eq;
        e[k][q] = s * ep + c * eq;
      }
    }
  }
  const i = [0, 1, 2].reduce((best, k) => (a[k][k] < a[best][best] ? k : best), 0);
  return [e[0][i], e[1][i], e[2][i]];
}
