/**
 * A region cut into the square cells between four columns: polygons that end at the shore. They give its area, its
 * volume to second order in the pitch whatever way its walls run, and the picture of the liquid's surface.
 */
import { minusU, minusV, plusU, plusV } from './neighbours.ts';
import type { Shore } from './shore.ts';

/** Corners of a cell in turn, with the way to the next corner and back. */
const corners = [
  { on: plusU, back: minusU },
  { on: plusV, back: minusV },
  { on: minusU, back: plusU },
  { on: minusV, back: plusV },
] as const;

/** u, v and height of the region per vertex, counter-clockwise from above. */
export type Polygon = readonly number[];

/** How the polygons treat the members of a region. */
export interface CellRules {
  readonly belongs: (member: number) => boolean;
  /** The member that way, if the polygons run on to it; negative if they end before. */
  readonly joined: (member: number, way: number) => number;
  /** Whether they end at the wall that `Shore.reach` tells of; half way otherwise. */
  readonly walled: (member: number, way: number) => boolean;
}

/** Calls back for each polygon; `height` per member, mm. */
export function eachPolygon(
  { stacks, reach, endHeight }: Shore,
  height: Float64Array,
  { belongs, joined, walled }: CellRules,
  visit: (polygon: Polygon) => void,
): void {
  const { grid, cellOf } = stacks;
  const pushCorner = (polygon: number[], m: number): void => {
    const cell = cellOf[m];
    polygon.push(
      grid.u0 + (cell % grid.nu) * grid.pitch,
      grid.v0 + Math.floor(cell / grid.nu) * grid.pitch,
      height[m],
    );
  };
  /** Where the region ends on the way from a member; half way where no wall shows why. */
  const pushEnd = (polygon: number[], m: number, way: number): void => {
    const cell = cellOf[m];
    const atWall = reach[m * 4 + way] < 1 && walled(m, way);
    const share = atWall ? reach[m * 4 + way] : 0.5;
    const du = way === plusU ? share : way === minusU ? -share : 0;
    const dv = way === plusV ? share : way === minusV ? -share : 0;
    polygon.push(
      grid.u0 + ((cell % grid.nu) + du) * grid.pitch,
      grid.v0 + (Math.floor(cell / grid.nu) + dv) * grid.pitch,
      atWall ? endHeight[m * 4 + way] : height[m],
    );
  };
  for (let m = 0; m < cellOf.length; m++) {
    if (!belongs(m)) continue;
    for (let start = 0; start < 4; start++) {
      const behind = corners[(start + 3) % 4].back;
      if (joined(m, behind) >= 0) {
        if (start === 0 && closes(m)) {
          const square: number[] = [];
          let at = m;
          for (let k = 0; k < 4; k++) {
            pushCorner(square, at);
            at = joined(at, corners[k].on);
          }
          visit(square);
        }
        continue;
      }
      // A run of joined corners, from the end behind the first to the end ahead of the last.
      const polygon: number[] = [];
      pushEnd(polygon, m, behind);
      pushCorner(polygon, m);
      let at = m;
      let k = start;
      for (let next = joined(at, corners[k].on); next >= 0; next = joined(at, corners[k].on)) {
        at = next;
        k = (k + 1) % 4;
        if (k === start) break;
        pushCorner(polygon, at);
      }
      pushEnd(polygon, at, corners[k].on);
      visit(polygon);
    }
  }

  function closes(m: number): boolean {
    let at = m;
    for (const { on } of corners) {
      at = joined(at, on);
      if (at < 0) return false;
    }
    return at === m;
  }
}

export function polygonArea(polygon: Polygon): number {
  let twice = 0;
  for (let k = 6; k < polygon.length; k += 3) twice += twiceFan(polygon, k);
  return twice / 2;
}

/** Area times mean height; a whole cell takes the mean of its four corners. */
export function polygonVolume(polygon: Polygon): number {
  if (isSquare(polygon)) {
    return (polygonArea(polygon) * (polygon[2] + polygon[5] + polygon[8] + polygon[11])) / 4;
  }
  let sum = 0;
  for (let k = 6; k < polygon.length; k += 3) {
    sum += (twiceFan(polygon, k) / 2) * ((polygon[2] + polygon[k - 1] + polygon[k + 2]) / 3);
  }
  return sum;
}

/** Four corners, two sides along u: a whole cell. */
export function isSquare(p: Polygon): boolean {
  return p.length === 12 && p[0] === p[9] && p[3] === p[6] && p[1] === p[4] && p[7] === p[10];
}

function twiceFan(p: Polygon, k: number): number {
  return (p[k - 3] - p[0]) * (p[k + 1] - p[1]) - (p[k] - p[0]) * (p[k - 2] - p[1]);
}
