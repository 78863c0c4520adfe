import { pieceArea } from './patches.ts';

/** A corner of a triangle, mm. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** What is done with the halves of a triangle: see `bisect`. */
export interface Bisection<T> {
  readonly size_mm: number;
  /** A triangle that is small enough. */
  readonly leaf: (p: Point, q: Point, r: Point) => T;
  /** Puts the halves of pqr together: its edge number `longest` was halved, the first half is the one before the middle. */
  readonly join: (p: Point, q: Point, r: Point, longest: number, first: T, second: T) => T;
}

/**
 * A triangle with no more area than this share of the size squared is small enough, however long: half of an isosceles
 * right triangle as long as the size. The strips of a round bar so get as many leaves for their area as its flat end.
 */
const smallest = 1 / 8;

/**
 * Halves a triangle, nine coordinates from `at` on, at its longest edge until it is small: no edge longer than the size,
 * or little area. Its pieces stay alike in shape (Rivara, Algorithms for refining triangular grids, 1984).
 */
export function bisect<T>(corners: Float64Array, at: number, how: Bisection<T>): T {
  const [p, q, r] = [pointAt(corners, at), pointAt(corners, at + 3), pointAt(corners, at + 6)];
  return within(p, q, r, pieceArea(corners, at), how);
}

function within<T>(p: Point, q: Point, r: Point, area: number, how: Bisection<T>): T {
  const pq = distance(p, q);
  const qr = distance(q, r);
  const rp = distance(r, p);
  const longest = Math.max(pq, qr, rp);
  if (isEnough(longest, area, how.size_mm)) return how.leaf(p, q, r);
  const edge = pq === longest ? 0 : qr === longest ? 1 : 2;
  const [a, b, c] = edge === 0 ? [p, q, r] : edge === 1 ? [q, r, p] : [r, p, q];
  const m = halfway(a, b);
  return how.join(p, q, r, edge, within(a, m, c, area / 2, how), within(m, b, c, area / 2, how));
}

/** Whether `bisect` leaves the triangle whose nine coordinates begin at `at` as it is. */
export function isSmall(c: Float64Array, at: number, size_mm: number): boolean {
  return isEnough(longestEdge(c, at), pieceArea(c, at), size_mm);
}

function isEnough(longest: number, area: number, size_mm: number): boolean {
  return !(longest > size_mm) || area <= smallest * size_mm * size_mm;
}

/** Of the triangle whose nine coordinates begin at `at`. */
export function longestEdge(c: Float64Array, at: number): number {
  return Math.max(side(c, at, at + 3), side(c, at + 3, at + 6), side(c, at + 6, at));
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

function side(c: Float64Array, a: number, b: number): number {
  return Math.sqrt((c[a] - c[b]) ** 2 + (c[a + 1] - c[b + 1]) ** 2 + (c[a + 2] - c[b + 2]) ** 2);
}
