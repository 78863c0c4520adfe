/** A corner of a triangle, mm. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** What is done with the halves of a triangle: see `bisect`. */
export interface Bisection<P extends Point, T> {
  readonly size_mm: number;
  /** A triangle without an edge longer than the size. */
  readonly leaf: (p: P, q: P, r: P) => T;
  readonly middle: (p: P, q: P) => P;
  /** Puts the halves of pqr together: its edge number `longest` was halved, the first half is the one before the middle. */
  readonly join: (p: P, q: P, r: P, longest: number, first: T, second: T) => T;
}

/**
 * Halves a triangle at its longest edge until no edge is longer than the size. Thin triangles so come out in few
 * pieces, and near ones are alike in shape (Rivara, Algorithms for refining triangular grids, 1984).
 */
export function bisect<P extends Point, T>(p: P, q: P, r: P, how: Bisection<P, T>): T {
  const pq = distance(p, q);
  const qr = distance(q, r);
  const rp = distance(r, p);
  const longest = Math.max(pq, qr, rp);
  if (!(longest > how.size_mm)) return how.leaf(p, q, r);
  const edge = pq === longest ? 0 : qr === longest ? 1 : 2;
  const [a, b, c] = edge === 0 ? [p, q, r] : edge === 1 ? [q, r, p] : [r, p, q];
  const m = how.middle(a, b);
  return how.join(p, q, r, edge, bisect(a, m, c, how), bisect(m, b, c, how));
}

export function distance(p: Point, q: Point): number {
  return Math.sqrt((p.x - q.x) ** 2 + (p.y - q.y) ** 2 + (p.z - q.z) ** 2);
}

export function halfway(p: Point, q: Point): Point {
  return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2, z: (p.z + q.z) / 2 };
}

/** Corner of a triangle whose coordinates begin at `at`. */
export function pointAt(c: Float64Array, at: number): Point {
  return { x: c[at], y: c[at + 1], z: c[at + 2] };
}

export function write(out: Float64Array, at: number, { x, y, z }: Point): void {
  out[at] = x;
  out[at + 1] = y;
  out[at + 2] = z;
}

/** Whether `bisect` would leave the triangle whose nine coordinates begin at `i` as it is. */
export function isSmall(c: Float64Array, i: number, size_mm: number): boolean {
  return side(c, i, i + 3) <= size_mm && side(c, i + 3, i + 6) <= size_mm && side(c, i + 6, i) <= size_mm;
}

function side(c: Float64Array, a: number, b: number): number {
  return Math.sqrt((c[a] - c[b]) ** 2 + (c[a + 1] - c[b + 1]) ** 2 + (c[a + 2] - c[b + 2]) ** 2);
}
