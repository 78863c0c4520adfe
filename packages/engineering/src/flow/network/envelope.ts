/**
 * Symmetric positive definite systems with few neighbours a node: reverse Cuthill-McKee order and Cholesky within the
 * envelope. A chain costs O(n); the worst case is the dense O(n^3).
 * E. Cuthill, J. McKee (1969); A. George, J. W. Liu, Computer Solution of Large Sparse Positive Definite Systems (1981).
 */

/** Order of elimination: `order[k]` is the node at place k. */
export function cuthillMcKee(neighbours: readonly (readonly number[])[]): Int32Array {
  const n = neighbours.length;
  const order = new Int32Array(n);
  const seen = new Uint8Array(n);
  const byDegree = Array.from({ length: n }, (_, i) => i).sort(
    (a, b) => neighbours[a].length - neighbours[b].length || a - b,
  );
  let count = 0;
  for (const start of byDegree) {
    if (seen[start]) continue;
    seen[start] = 1;
    order[count++] = start;
    for (let k = count - 1; k < count; k++) {
      const next = neighbours[order[k]].filter((j) => !seen[j]);
      next.sort((a, b) => neighbours[a].length - neighbours[b].length || a - b);
      for (const j of next) {
        if (seen[j]) continue;
        seen[j] = 1;
        order[count++] = j;
      }
    }
  }
  return order.reverse();
}

/** Lower triangle row by row; row i holds columns `first[i]` to i. */
export class Envelope {
  readonly first: Int32Array;
  readonly start: Int32Array;
  readonly values: Float64Array;

  constructor(first: Int32Array) {
    this.first = first;
    this.start = new Int32Array(first.length + 1);
    for (let i = 0; i < first.length; i++) this.start[i + 1] = this.start[i] + i - first[i] + 1;
    this.values = new Float64Array(this.start[first.length]);
  }

  /** Index of the entry of row i and column j <= i. */
  at(i: number, j: number): number {
    return this.start[i] + j - this.first[i];
  }

  /** Replaces the matrix by its Cholesky factor and `right` by the solution. False when it is not positive definite. */
  solve(right: Float64Array): boolean {
    const { first, values } = this;
    const n = first.length;
    for (let i = 0; i < n; i++) {
      for (let j = first[i]; j <= i; j++) {
        let sum = values[this.at(i, j)];
        const from = Math.max(first[i], first[j]);
        for (let k = from; k < j; k++) sum -= values[this.at(i, k)] * values[this.at(j, k)];
        if (j < i) values[this.at(i, j)] = sum / values[this.at(j, j)];
        else if (sum > 0) values[this.at(i, i)] = Math.sqrt(sum);
        else return false;
      }
    }
    for (let i = 0; i < n; i++) {
      let sum = right[i];
      for (let k = first[i]; k < i; k++) sum -= values[this.at(i, k)] * right[k];
      right[i] = sum / values[this.at(i, i)];
    }
    for (let i = n - 1; i >= 0; i--) {
      right[i] /= values[this.at(i, i)];
      for (let k = first[i]; k < i; k++) right[k] -= values[this.at(i, k)] * right[i];
    }
    return true;
  }
}
