import { inModel, type ReachSpace } from './space.ts';
import type { Ways } from './way.ts';
import { placeOf, type Widest } from './widest.ts';

/** The taut way of the ball's centre to a cell and on to the patch, from outside, as a polyline in the frame of the model; empty for cell -1. */
export function tautTrail(
  space: ReachSpace,
  widest: Widest,
  { bend }: Ways,
  cell: number,
  end: ArrayLike<number>,
): Float32Array {
  if (cell < 0) return new Float32Array();
  const cells = [cell];
  for (let c = cell; bend[c] !== c; c = bend[c]) cells.push(bend[c]);
  return polyline(space, [...pointsOf(space, widest, cells).reverse(), Array.from(end)]);
}

/** The widest way to a cell and on to the patch, from outside: the cells that it leads through, where it turns; empty for cell -1. */
export function widestTrail(
  space: ReachSpace,
  widest: Widest,
  cell: number,
  end: ArrayLike<number>,
): Float32Array {
  if (cell < 0) return new Float32Array();
  const cells = [cell];
  for (let c = cell; widest.from[c] !== c; c = widest.from[c]) cells.push(widest.from[c]);
  const points = [...pointsOf(space, widest, cells).reverse(), Array.from(end)];
  return polyline(space, turns(points, space.lattice.pitch));
}

function pointsOf({ lattice }: ReachSpace, { spot, spots }: Widest, cells: readonly number[]): number[][] {
  const at = new Float64Array(3);
  return cells.map((cell) => {
    placeOf(lattice, spot, spots, cell, at);
    return [...at];
  });
}

function polyline({ lattice }: ReachSpace, points: readonly (readonly number[])[]): Float32Array {
  return Float32Array.from(points.flatMap(([x, y, z]) => inModel(lattice, x, y, z)));
}

/** Leaves out points that lie within `tolerance` of the line through those kept (Ramer 1972, Douglas and Peucker 1973). */
function turns(points: readonly (readonly number[])[], tolerance: number): (readonly number[])[] {
  const kept = new Set([0, points.length - 1]);
  const pending: [number, number][] = [[0, points.length - 1]];
  for (let span = pending.pop(); span; span = pending.pop()) {
    const [from, to] = span;
    let farthest = tolerance;
    let at = -1;
    for (let i = from + 1; i < to; i++) {
      const d = fromLine(points[i], points[from], points[to]);
      if (d <= farthest) continue;
      farthest = d;
      at = i;
    }
    if (at < 0) continue;
    kept.add(at);
    pending.push([from, at], [at, to]);
  }
  return points.filter((_, i) => kept.has(i));
}

function fromLine(p: readonly number[], a: readonly number[], b: readonly number[]): number {
  const d = b.map((c, k) => c - a[k]);
  const e = p.map((c, k) => c - a[k]);
  const square = d.reduce((sum, c) => sum + c * c, 0);
  const s = square > 0 ? Math.min(1, Math.max(0, d.reduce((sum, c, k) => sum + c * e[k], 0) / square)) : 0;
  return Math.hypot(...e.map((c, k) => c - s * d[k]));
}
