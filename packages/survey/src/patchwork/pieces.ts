import { type Border, meet } from './borders.ts';

/**
 * Triangles of a surface that was divided by kind, gathered into connected patches (union-find with halving). Grows
 * as needed; kept as typed arrays, because a machine has a million of them.
 */
export class Pieces {
  count = 0;
  /** Nine per piece: xyz of its corners, mm. */
  corners = new Float64Array(9 * 1024);
  kind = new Uint16Array(1024);
  private parent = new Uint32Array(1024);

  /** Returns the number of the new piece. */
  add(kind: number): number {
    if (this.count === this.kind.length) this.grow();
    const n = this.count++;
    this.kind[n] = kind;
    this.parent[n] = n;
    return n;
  }

  /** The piece that stands for the whole patch. */
  patchOf(piece: number): number {
    const { parent } = this;
    let n = piece;
    while (parent[n] !== n) {
      parent[n] = parent[parent[n]];
      n = parent[n];
    }
    return n;
  }

  /** The lower number stands for both, so that the result does not depend on the order of joining. */
  join(a: number, b: number): void {
    const x = this.patchOf(a);
    const y = this.patchOf(b);
    if (x < y) this.parent[y] = x;
    else this.parent[x] = y;
  }

  private grow(): void {
    const size = this.count * 2;
    const corners = new Float64Array(size * 9);
    corners.set(this.corners);
    this.corners = corners;
    const kind = new Uint16Array(size);
    kind.set(this.kind);
    this.kind = kind;
    const parent = new Uint32Array(size);
    parent.set(this.parent);
    this.parent = parent;
  }
}

/** Joins pieces of one kind that touch across an edge. */
export function sew(pieces: Pieces, a: Border, b: Border): void {
  meet(a, b, (i, j) => {
    if (pieces.kind[a[i + 2]] === pieces.kind[b[j + 2]]) pieces.join(a[i + 2], b[j + 2]);
  });
}
