/**
 * Bores as pipes: a way for the air from one end to the other, where the columns are too coarse to follow it. Quicker than
 * a finer grid, and blind to what narrows a bore without closing it: for the comparison of many floods, not for a result.
 */
import { type Model, transformPoint, type Vec3 } from '@coveline/model';
import { boresOf } from '../hollows/bores.ts';
import { anyHit } from '../tree/ray.ts';
import { treeOf } from '../tree/tree.ts';
import { type Flood, spread } from './flood.ts';
import { nearestColumn } from './grid.ts';

/** A bore that is open from end to end, in the frame of the model. */
export interface Pipe {
  readonly ends: readonly [Vec3, Vec3];
  readonly radius_mm: number;
}

/** A little beyond the end of a bore, where air must be, mm. */
const beyond_mm = 0.5;

/** Pipes narrower than `below_mm`, known from CAD faces. */
export function openPipes(model: Model, below_mm: number): Pipe[] {
  const ofShape = model.shapes.map((shape) =>
    boresOf(shape).filter(({ radiusFrom, radiusTo }) => 2 * Math.min(radiusFrom, radiusTo) < below_mm),
  );
  if (ofShape.every((bores) => bores.length === 0)) return [];
  const tree = treeOf(model);
  const pipes: Pipe[] = [];
  for (const { shape, placement } of model.parts) {
    for (const { origin, direction, from, to, radiusFrom, radiusTo } of ofShape[shape]) {
      const at = (s: number): Vec3 =>
        transformPoint(placement, origin.map((o, k) => o + s * direction[k]) as unknown as Vec3);
      const ends = [at(from - beyond_mm), at(to + beyond_mm)] as const;
      const middle = at((from + to) / 2);
      const closed = ends.some((end) => {
        const [dx, dy, dz] = end.map((c, k) => c - middle[k]);
        return anyHit(tree, ...middle, dx, dy, dz, 1);
      });
      if (!closed) pipes.push({ ends, radius_mm: Math.min(radiusFrom, radiusTo) });
    }
  }
  return pipes;
}

/** Lowers the levels of a flood where air passes through pipes. `place`: from the frame of the model to that of the flood. */
export function drainThrough(flood: Flood, pipes: readonly Pipe[], place: (point: Vec3) => Vec3): void {
  const ways = pipes.flatMap(({ ends, radius_mm }) => {
    const [a, b] = [place(ends[0]), place(ends[1])];
    const length = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
    const below = radius_mm * Math.sqrt(Math.max(0, 1 - ((a[2] - b[2]) / length) ** 2));
    const [p, q] = [intervalAt(flood, a), intervalAt(flood, b)];
    return p < 0 || q < 0 ? [] : [{ p, q, height: Math.max(a[2], b[2]) - below }];
  });
  // Each round lowers at least one level to that of another interval, so there are no more rounds than pipes.
  for (let round = 0; round < ways.length; round++) {
    const changed = ways.flatMap((way) => join(flood, way));
    if (changed.length === 0) return;
    spread(flood, changed);
  }
}

/** A way for the air between two intervals, and the height up to which it must rise on it. */
export interface Way {
  readonly p: number;
  readonly q: number;
  readonly height: number;
}

/** Lowers the two intervals of a way to what it makes of them; returns those that fell, for `spread`. */
export function join({ level, from }: Flood, { p, q, height }: Way): number[] {
  const lower = (node: number, by: number): boolean => {
    const candidate = Math.max(height, level[by]);
    if (candidate >= level[node]) return false;
    level[node] = candidate;
    from[node] = node;
    return true;
  };
  return [...(lower(p, q) ? [p] : []), ...(lower(q, p) ? [q] : [])];
}

/** The interval of air at a point of the turned frame, or nearest to it above or below in the columns around; -1 where there is none near. */
export function intervalAt({ columns }: Flood, [u, v, z]: Vec3): number {
  const { grid, first, bottom, top } = columns;
  const column = nearestColumn(grid, u, v);
  if (column < 0) return -1;
  let nearest = -1;
  let least = grid.pitch;
  for (const step of [0, 1, -1, grid.nu, -grid.nu]) {
    const c = column + step;
    if (c < 0 || c >= grid.nu * grid.nv) continue;
    for (let n = first[c]; n < first[c + 1]; n++) {
      const off = Math.max(bottom[n] - z, z - top[n], 0) + (step === 0 ? 0 : grid.pitch / 4);
      if (off >= least) continue;
      least = off;
      nearest = n;
    }
  }
  return nearest;
}
