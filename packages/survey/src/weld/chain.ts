import { weldVertices } from './weld.ts';

/** A piece of an edge between two points, to be joined with others into longer lines. */
export interface Piece {
  /** xyz per point, mm; at least two points. */
  readonly points: Float64Array;
  /** Pieces that differ more than this much in angle are different corners. */
  readonly angle_deg: number;
}

/** A line goes on through a point where it bends by less than this. */
const bend = Math.cos((30 * Math.PI) / 180);
const sameAngle_deg = 15;

/**
 * Joins pieces end to end where they run on smoothly: at each point the pair that bends least first. Returns for each
 * line its pieces in order, as numbers; a piece that runs against the line is given as its bitwise complement.
 */
export function chainPieces(pieces: readonly Piece[], tolerance_mm: number): number[][] {
  const partner = pairEnds(pieces, tolerance_mm);
  const used = new Uint8Array(pieces.length);
  const lines: number[][] = [];
  for (let start = 0; start < pieces.length; start++) {
    if (used[start]) continue;
    // Walk back to the beginning, or once round when the line is closed.
    let end = 2 * start;
    for (let back = partner[end]; back >= 0 && back >> 1 !== start; back = partner[end]) end = back ^ 1;
    const line: number[] = [];
    while (!used[end >> 1]) {
      used[end >> 1] = 1;
      line.push(end & 1 ? ~(end >> 1) : end >> 1);
      const next = partner[end ^ 1];
      if (next < 0) break;
      end = next;
    }
    lines.push(line);
  }
  return lines;
}

/** Ends are numbered 2 i for the start of piece i and 2 i + 1 for its end. Per end: the end it joins, -1 for none. */
function pairEnds(pieces: readonly Piece[], tolerance_mm: number): Int32Array {
  const n = pieces.length * 2;
  const spots = new Float64Array(n * 3);
  const outward = new Float64Array(n * 3);
  for (let i = 0; i < pieces.length; i++) {
    const { points } = pieces[i];
    const last = points.length - 3;
    spots.set(points.subarray(0, 3), 6 * i);
    spots.set(points.subarray(last), 6 * i + 3);
    direction(points, 3, 0, outward, 6 * i);
    direction(points, last - 3, last, outward, 6 * i + 3);
  }
  const { triangles: spotOf } = weldVertices(
    spots,
    Uint32Array.from({ length: n }, (_, i) => i),
    tolerance_mm,
  );
  const at = new Map<number, number[]>();
  for (let e = 0; e < n; e++) {
    const list = at.get(spotOf[e]);
    if (list) list.push(e);
    else at.set(spotOf[e], [e]);
  }
  const partner = new Int32Array(n).fill(-1);
  for (const ends of at.values()) {
    const pairs: { a: number; b: number; dot: number }[] = [];
    for (let i = 0; i < ends.length; i++) {
      for (let j = i + 1; j < ends.length; j++) {
        const [a, b] = [ends[i], ends[j]];
        if (Math.abs(pieces[a >> 1].angle_deg - pieces[b >> 1].angle_deg) > sameAngle_deg) continue;
        let dot = 0;
        for (let k = 0; k < 3; k++) dot += outward[a * 3 + k] * outward[b * 3 + k];
        if (-dot > bend) pairs.push({ a, b, dot });
      }
    }
    pairs.sort((p, q) => p.dot - q.dot || p.a - q.a || p.b - q.b);
    for (const { a, b } of pairs) {
      if (partner[a] >= 0 || partner[b] >= 0) continue;
      partner[a] = b;
      partner[b] = a;
    }
  }
  return partner;
}

/** Unit vector from point `from` to point `to` of a polyline. */
function direction(points: Float64Array, from: number, to: number, out: Float64Array, at: number): void {
  const x = points[to] - points[from];
  const y = points[to + 1] - points[from + 1];
  const z = points[to + 2] - points[from + 2];
  const length = Math.hypot(x, y, z) || 1;
  out[at] = x / length;
  out[at + 1] = y / length;
  out[at + 2] = z / length;
}
