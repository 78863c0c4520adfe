import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cuthillMcKee, Envelope } from './envelope.ts';

/** Dense Gaussian elimination with pivots: the slow oracle. */
function denseSolve(matrix: number[][], right: number[]): number[] {
  const n = right.length;
  const a = matrix.map((row, i) => [...row, right[i]]);
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r][c]) > Math.abs(a[pivot][c])) pivot = r;
    [a[c], a[pivot]] = [a[pivot], a[c]];
    for (let r = c + 1; r < n; r++) {
      const f = a[r][c] / a[c][c];
      for (let k = c; k <= n; k++) a[r][k] -= f * a[c][k];
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--) {
    let sum = a[r][n];
    for (let k = r + 1; k < n; k++) sum -= a[r][k] * x[k];
    x[r] = sum / a[r][r];
  }
  return x;
}

describe('envelope Cholesky', () => {
  it('agrees with dense elimination on random graphs', () => {
    const edges = fc.array(
      fc.tuple(
        fc.integer({ min: 0, max: 14 }),
        fc.integer({ min: 0, max: 14 }),
        fc.integer({ min: 1, max: 100 }),
      ),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(edges, (list) => {
        const n = 15;
        const dense = Array.from({ length: n }, (_, i) =>
          Array.from({ length: n }, (_, j) => (i === j ? 1 : 0)),
        );
        const neighbours: number[][] = Array.from({ length: n }, () => []);
        for (const [a, b, w] of list) {
          if (a === b) continue;
          dense[a][a] += w;
          dense[b][b] += w;
          dense[a][b] -= w;
          dense[b][a] -= w;
          neighbours[a].push(b);
          neighbours[b].push(a);
        }
        const order = cuthillMcKee(neighbours);
        expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, i) => i));
        const place = new Int32Array(n);
        order.forEach((node, k) => {
          place[node] = k;
        });
        const first = Int32Array.from({ length: n }, (_, i) => i);
        for (let i = 0; i < n; i++)
          for (const j of neighbours[i]) first[place[i]] = Math.min(first[place[i]], place[j]);
        const matrix = new Envelope(first);
        for (let i = 0; i < n; i++)
          for (let j = 0; j < n; j++)
            if (dense[i][j] !== 0 && place[j] <= place[i])
              matrix.values[matrix.at(place[i], place[j])] = dense[i][j];
        const right = Array.from({ length: n }, (_, i) => i - 7);
        const solution = new Float64Array(n);
        right.forEach((value, i) => {
          solution[place[i]] = value;
        });
        expect(matrix.solve(solution)).toBe(true);
        const expected = denseSolve(dense, right);
        for (let i = 0; i < n; i++) expect(Math.abs(solution[place[i]] - expected[i])).toBeLessThan(1e-9);
      }),
      { seed: 31, numRuns: 100 },
    );
  });

  it('says when a matrix is not positive definite', () => {
    const matrix = new Envelope(Int32Array.from([0, 0]));
    matrix.values.set([1, 2, 1]);
    expect(matrix.solve(new Float64Array(2))).toBe(false);
  });
});
