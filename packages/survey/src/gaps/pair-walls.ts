import type { Vec3 } from '@coveline/model';
import { nearestOnTriangle } from '../tree/closest.ts';
import { membersOf, newGroups, unite } from '../weld/groups.ts';
import type { Wall } from './walls.ts';

/** Walls that belong to one gap. */
export interface WallPair {
  readonly walls: readonly Wall[];
  /** Every wall has its opposite among the walls, or faces itself. */
  readonly complete: boolean;
}

/** The wall across is one no farther than this from where it was seen, mm, for true surfaces stand off. */
const near_mm = 1;
/** Walls between two looks at the signal. */
const wallsAtOnce = 64;

/** Puts walls together that face each other: a look from one hits a triangle that is in the other. */
export function pairWalls(walls: readonly Wall[], step: () => void): WallPair[] {
  const wallsOn = new Map<number, number[]>();
  for (const [w, { triangles }] of walls.entries()) {
    for (const t of triangles) {
      const list = wallsOn.get(t);
      if (list) list.push(w);
      else wallsOn.set(t, [w]);
    }
  }
  const groups = newGroups(walls.length);
  const answered = new Uint8Array(walls.length);
  for (const [w, { looks, lookTriangle }] of walls.entries()) {
    if (w % wallsAtOnce === 0) step();
    for (let i = 0; i < lookTriangle.length; i++) {
      const across = nearestWall(
        walls,
        wallsOn.get(lookTriangle[i]) ?? [],
        looks[3 * i],
        looks[3 * i + 1],
        looks[3 * i + 2],
      );
      if (across < 0) continue;
      answered[w] = 1;
      answered[across] = 1;
      unite(groups, w, across);
    }
  }
  return membersOf(groups).map((members) => ({
    walls: members.map((w) => walls[w]),
    complete: members.every((w) => answered[w] === 1),
  }));
}

const nearest = new Float64Array(3);

/** Of some walls on the triangle that was seen, the one at the place that was seen; -1 for none. */
function nearestWall(
  walls: readonly Wall[],
  among: readonly number[],
  x: number,
  y: number,
  z: number,
): number {
  const here = among.filter((w) => holds(walls[w].bounds_mm, x, y, z));
  if (here.length < 2) return here[0] ?? -1;
  let best = -1;
  let least = near_mm * near_mm;
  for (const w of here) {
    const { outline } = walls[w];
    for (let i = 0; i < outline.length; i += 9) {
      const d = nearestOnTriangle(outline, i, x, y, z, nearest);
      if (d >= least) continue;
      least = d;
      best = w;
    }
  }
  return best;
}

function holds([low, high]: readonly [Vec3, Vec3], x: number, y: number, z: number): boolean {
  return (
    x >= low[0] - near_mm &&
    y >= low[1] - near_mm &&
    z >= low[2] - near_mm &&
    x <= high[0] + near_mm &&
    y <= high[1] + near_mm &&
    z <= high[2] + near_mm
  );
}
