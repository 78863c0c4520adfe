/** Cylinders about an axis, from the triangles around it. */
import type { Around } from './axis.ts';

export interface Round {
  /** Of the vertices, which lie on the true surface, mm. */
  readonly radius_mm: number;
  readonly from: number;
  readonly to: number;
  /** The air is on the side of the axis: a bore. */
  readonly hollow: boolean;
  readonly triangles: readonly number[];
}

/** Vertices of one cylinder keep the same distance within this share of it. */
const sameRadius = 0.03;
/** Of the cylinder that must be there: a slot or a hole may be cut into it. */
const leastCover = 0.7;
/** Cosine between a triangle's normal and the way from the axis, and sine of its lean along the axis. */
const leastAcross = 0.9;
const mostAlong = 0.2;

/** One triangle turns by less than this about the axis: eight sides make a round, six a hexagon. */
const mostTurn_rad = (50 * Math.PI) / 180;

interface Piece {
  readonly at: number;
  readonly radius: number;
  readonly low: number;
  readonly high: number;
}

/** Cylinders about the axis up to `reach_mm`, ascending by radius. `without`: triangles known to be something else. */
export function roundsAbout(near: Around, reach_mm: number, without: ReadonlySet<number>): Round[] {
  return [false, true].flatMap((hollow) => cylinders(near, pieces(near, reach_mm, without, hollow), hollow));
}

function pieces(near: Around, reach_mm: number, without: ReadonlySet<number>, hollow: boolean): Piece[] {
  const { corners: c, normals, triangle } = near;
  const found: Piece[] = [];
  for (let i = 0; i < triangle.length; i++) {
    if (Math.abs(normals[i * 3 + 2]) > mostAlong || without.has(triangle[i])) continue;
    const k = i * 9;
    const [x, y] = [(c[k] + c[k + 3] + c[k + 6]) / 3, (c[k + 1] + c[k + 4] + c[k + 7]) / 3];
    const away = (normals[i * 3] * x + normals[i * 3 + 1] * y) / Math.hypot(x, y);
    if (!((hollow ? -away : away) > leastAcross)) continue;
    const radii = [0, 3, 6].map((q) => Math.hypot(c[k + q], c[k + q + 1]));
    const radius = (radii[0] + radii[1] + radii[2]) / 3;
    if (widest(c, k) > 2 * Math.sin(mostTurn_rad / 2) * radius) continue;
    if (radius > reach_mm || Math.max(...radii) - Math.min(...radii) > sameRadius * radius) continue;
    const heights = [c[k + 2], c[k + 5], c[k + 8]];
    found.push({ at: i, radius, low: Math.min(...heights), high: Math.max(...heights) });
  }
  return found;
}

/** Longest way across the axis between two corners of a triangle. */
function widest(c: Float64Array, k: number): number {
  let most = 0;
  for (const [i, j] of sides)
    most = Math.max(most, Math.hypot(c[k + i] - c[k + j], c[k + i + 1] - c[k + j + 1]));
  return most;
}

const sides = [
  [0, 3],
  [3, 6],
  [6, 0],
] as const;

function cylinders(near: Around, found: Piece[], hollow: boolean): Round[] {
  found.sort((a, b) => a.radius - b.radius);
  const rounds: Round[] = [];
  for (let i = 0; i < found.length; ) {
    let j = i + 1;
    while (j < found.length && found[j].radius - found[j - 1].radius < (sameRadius / 2) * found[j].radius)
      j++;
    rounds.push(...stretches(near, found.slice(i, j), hollow));
    i = j;
  }
  return rounds;
}

/** The pieces of one radius, parted where nothing stands between them along the axis. */
function stretches(near: Around, pieces: Piece[], hollow: boolean): Round[] {
  pieces.sort((a, b) => a.low - b.low);
  const rounds: Round[] = [];
  for (let i = 0; i < pieces.length; ) {
    let to = pieces[i].high;
    let j = i + 1;
    while (j < pieces.length && pieces[j].low <= to + sameRadius * pieces[j].radius)
      to = Math.max(to, pieces[j++].high);
    const members = pieces.slice(i, j);
    const area = members.reduce((s, { at }) => s + near.areas[at], 0);
    const radius_mm = members.reduce((s, { at, radius }) => s + radius * near.areas[at], 0) / area;
    const from = members[0].low;
    if (area > leastCover * 2 * Math.PI * radius_mm * (to - from)) {
      rounds.push({ radius_mm, from, to, hollow, triangles: members.map(({ at }) => near.triangle[at]) });
    }
    i = j;
  }
  return rounds;
}
