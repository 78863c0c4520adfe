/** Ducts in one line, put together across parts: a pipe, its seal, the neck of a tee. */
import type { Vec3 } from '@coveline/model';
import type { Duct } from './ducts.ts';
import { type Looks, opensAround, ringLook, seesWall } from './looks.ts';
import { closePairs } from './pairs.ts';
import { along, cross, dot, minus } from './vector.ts';

export interface Piece {
  readonly from: number;
  readonly to: number;
  readonly radius: number;
  readonly duct: Duct;
}

/** A straight line of ducts; pieces ascend along the unit direction and do not overlap, mm from the origin. */
export interface Run {
  readonly origin: Vec3;
  readonly direction: Vec3;
  readonly pieces: readonly Piece[];
}

/** Ends farther apart than this many radii are two passages. A concentric reducer is about three long. */
const farthest = 3;
/** Up to this share of the radius a gap is a seal that is not drawn; beyond it there must be walls around. */
const seam = 0.5;
/** Where the bore widens by more than this, a shoulder must join the pieces; one looks back at it from here, by a ring. */
const steep = 1.3;
const shoulder = 0.1;
const shoulderRing = 0.85;
/** Sine between axes of one line, and how far apart they may be where the ducts meet, of the smaller radius. */
const sameDirection = 0.03;
const sameAxis = 0.1;

export function runsOf(ducts: readonly Duct[], looks: Looks): Run[] {
  const leader = ducts.map((_, i) => i);
  const find = (i: number): number => {
    let k = i;
    while (leader[k] !== k) k = leader[k];
    return k;
  };
  const boxes = ducts.map((d) => boxOf(d, farthest * d.radius));
  closePairs(boxes, (a, b) => {
    if (find(a) === find(b) || !inLine(ducts[a], ducts[b])) return;
    const [low, high] = [find(a), find(b)].sort((x, y) => x - y);
    leader[high] = low;
  });
  const groups = new Map<number, Duct[]>();
  ducts.forEach((duct, i) => {
    const key = find(i);
    groups.set(key, [...(groups.get(key) ?? []), duct]);
  });
  return [...groups.values()].flatMap((group) => {
    const line = lineUp(group);
    const pieces = line.pieces.filter((piece) => isSeen(piece, line, looks));
    return splitAtGaps({ ...line, pieces }, looks);
  });
}

/** Lowest and highest corner of a duct, `margin` wider. */
export function boxOf(
  { origin, direction, from, to, radius }: Omit<Duct, 'part' | 'by' | 'triangles'>,
  margin: number,
): readonly [Vec3, Vec3] {
  const [a, b] = [along(origin, direction, from), along(origin, direction, to)];
  const out = direction.map((d) => radius * Math.sqrt(Math.max(0, 1 - d * d)) + margin);
  return [
    [Math.min(a[0], b[0]) - out[0], Math.min(a[1], b[1]) - out[1], Math.min(a[2], b[2]) - out[2]],
    [Math.max(a[0], b[0]) + out[0], Math.max(a[1], b[1]) + out[1], Math.max(a[2], b[2]) + out[2]],
  ];
}

function inLine(a: Duct, b: Duct): boolean {
  if (Math.hypot(...cross(a.direction, b.direction)) > sameDirection) return false;
  const [from, to] = extentAlong(a, b);
  const gap = Math.max(from - a.to, a.from - to);
  if (gap > farthest * Math.max(a.radius, b.radius)) return false;
  // Where they meet: the middle of what they share, or of the gap.
  const meet = (Math.max(a.from, from) + Math.min(a.to, to)) / 2;
  const p = along(a.origin, a.direction, meet);
  const d = minus(p, b.origin);
  const s = dot(d, b.direction);
  return Math.hypot(...along(d, b.direction, -s)) <= sameAxis * Math.min(a.radius, b.radius);
}

/** From where to where `b` lies along the axis of `a`. */
function extentAlong(a: Pick<Duct, 'origin' | 'direction'>, b: Duct): readonly [number, number] {
  const ends = [b.from, b.to].map((s) => dot(minus(along(b.origin, b.direction, s), a.origin), a.direction));
  return [Math.min(...ends), Math.max(...ends)];
}

/** On the axis of the longest; where several lie over each other, the narrowest one bounds the air. */
function lineUp(group: readonly Duct[]): Run {
  const first = group.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a));
  const all = group.map((duct) => {
    const [from, to] = extentAlong(first, duct);
    return { from, to, radius: duct.radius, duct };
  });
  const cuts = [...new Set(all.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  const pieces: Piece[] = [];
  for (let k = 0; k + 1 < cuts.length; k++) {
    const [from, to] = [cuts[k], cuts[k + 1]];
    let best: Piece | undefined;
    for (const piece of all)
      if (piece.from <= from && piece.to >= to && (!best || piece.radius < best.radius)) best = piece;
    if (!best) continue;
    const last = pieces.at(-1);
    if (last?.duct === best.duct && last.to === from) pieces[pieces.length - 1] = { ...last, to };
    else pieces.push({ ...best, from, to });
  }
  return { origin: first.origin, direction: first.direction, pieces };
}

/** Whether the air on the axis reaches the wall of a piece: a clamp around a pipe does not bound what is in the pipe. */
function isSeen({ from, to, radius }: Piece, { origin, direction }: Run, looks: Looks): boolean {
  return stations.some((share) =>
    seesWall(looks, along(origin, direction, from + share * (to - from)), direction, radius),
  );
}

const stations = [0.1, 0.5, 0.9];

/** A run ends where the next piece is not near and no wall leads on to it. */
function splitAtGaps({ origin, direction, pieces }: Run, looks: Looks): Run[] {
  const runs: Piece[][] = [];
  for (const piece of pieces) {
    const last = runs.at(-1)?.at(-1);
    if (last && leadsOn(last, piece, { origin, direction }, looks)) runs.at(-1)?.push(piece);
    else runs.push([piece]);
  }
  return runs.map((own) => ({ origin, direction, pieces: own }));
}

function leadsOn(a: Piece, b: Piece, run: Pick<Run, 'origin' | 'direction'>, looks: Looks): boolean {
  const [narrow, wide] = [Math.min(a.radius, b.radius), Math.max(a.radius, b.radius)];
  if (wide > steep * narrow && isStandingFree(a, b, run, looks)) return false;
  const gap = b.from - a.to;
  if (gap <= seam * narrow) return true;
  const middle = along(run.origin, run.direction, (a.to + b.from) / 2);
  return !opensAround(looks, middle, run.direction, wide);
}

/** Whether the narrower piece stands with its end in the wider one, as a nozzle in a jar, and no shoulder joins them. */
function isStandingFree(
  a: Piece,
  b: Piece,
  { origin, direction }: Pick<Run, 'origin' | 'direction'>,
  looks: Looks,
): boolean {
  const sense = b.radius > a.radius ? 1 : -1;
  const wide = sense > 0 ? b : a;
  const inside = Math.min(shoulder * wide.radius, (wide.to - wide.from) / 2);
  const at = along(origin, direction, sense > 0 ? wide.from + inside : wide.to - inside);
  const back: Vec3 = [-sense * direction[0], -sense * direction[1], -sense * direction[2]];
  return !ringLook(looks, at, back, shoulderRing * wide.radius, inside + wide.radius);
}
