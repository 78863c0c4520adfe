/** The surface of a pool as triangles at its height, cut at the walls. */
import type { Shore } from './shore.ts';
import { fromTurned, type Soup } from './soup.ts';

export interface LiquidSurface {
  /** xyz per corner, mm, in the frame of the model. */
  readonly triangles: Float32Array;
  readonly area_mm2: number;
}

/** Ways out of a column as numbered in `Shore.reach`. */
const plusU = 0;
const minusU = 1;
const plusV = 2;
const minusV = 3;

/** Corners of a cell in turn, as steps in u and v, with the way to the next corner and back. */
const corners = [
  { du: 0, dv: 0, on: plusU, back: minusU },
  { du: 1, dv: 0, on: plusV, back: minusV },
  { du: 1, dv: 1, on: minusU, back: plusU },
  { du: 0, dv: 1, on: minusV, back: plusV },
] as const;

export function liquidSurface(
  soup: Pick<Soup, 'turn'>,
  { grid, surface, reach }: Shore,
  level: number,
): LiquidSurface {
  const out: number[] = [];
  let area = 0;
  const emit = (polygon: readonly number[]): void => {
    const [u0, v0] = polygon;
    for (let k = 4; k < polygon.length; k += 2) {
      const [u1, v1, u2, v2] = polygon.slice(k - 2, k + 2);
      area += ((u1 - u0) * (v2 - v0) - (u2 - u0) * (v1 - v0)) / 2;
      out.push(
        ...fromTurned(soup, u0, v0, level),
        ...fromTurned(soup, u1, v1, level),
        ...fromTurned(soup, u2, v2, level),
      );
    }
  };
  const { nu, nv, pitch, u0, v0 } = grid;
  for (let j = 0; j + 1 < nv; j++) {
    let runFrom = -1;
    const closeRun = (to: number): void => {
      if (runFrom < 0) return;
      const left = u0 + runFrom * pitch;
      const right = u0 + to * pitch;
      const near = v0 + j * pitch;
      emit([left, near, right, near, right, near + pitch, left, near + pitch]);
      runFrom = -1;
    };
    for (let i = 0; i + 1 < nu; i++) {
      const c = j * nu + i;
      const cell = corners.map(({ du, dv }) => c + du + dv * nu);
      const joined = cell.map((at, k) => {
        const next = cell[(k + 1) % 4];
        const { on, back } = corners[k];
        return (
          surface[at] >= 0 && surface[next] >= 0 && reach[at * 4 + on] === 1 && reach[next * 4 + back] === 1
        );
      });
      if (joined.every(Boolean)) {
        if (runFrom < 0) runFrom = i;
        continue;
      }
      closeRun(i);
      if (cell.every((at) => surface[at] < 0)) continue;
      for (const polygon of cellPolygons(cell, joined)) emit(polygon);
    }
    closeRun(nu - 1);
  }

  function cellPolygons(cell: readonly number[], joined: readonly boolean[]): number[][] {
    const polygons: number[][] = [];
    for (let start = 0; start < 4; start++) {
      const before = (start + 3) % 4;
      if (surface[cell[start]] < 0 || joined[before]) continue;
      // A run of joined corners, from the cut before the first to the cut after the last.
      const polygon = cutBehind(cell, start);
      let k = start;
      pushCorner(polygon, cell[k]);
      while (joined[k]) {
        k = (k + 1) % 4;
        pushCorner(polygon, cell[k]);
      }
      polygon.push(...cutAhead(cell, k));
      polygons.push(polygon);
    }
    return polygons;
  }

  function pushCorner(polygon: number[], c: number): void {
    polygon.push(u0 + (c % nu) * pitch, v0 + Math.floor(c / nu) * pitch);
  }

  function cutAhead(cell: readonly number[], k: number): number[] {
    return cut(cell[k], corners[k].on, cell[(k + 1) % 4]);
  }

  function cutBehind(cell: readonly number[], k: number): number[] {
    const before = (k + 3) % 4;
    return cut(cell[k], corners[before].back, cell[before]);
  }

  /** Where the surface ends on the way from column c; half way where no wall shows why. */
  function cut(c: number, way: number, other: number): number[] {
    let share = reach[c * 4 + way];
    if (share === 1 && surface[other] < 0) share = 0.5;
    const du = way === plusU ? share : way === minusU ? -share : 0;
    const dv = way === plusV ? share : way === minusV ? -share : 0;
    return [u0 + ((c % nu) + du) * pitch, v0 + (Math.floor(c / nu) + dv) * pitch];
  }

  return { triangles: Float32Array.from(out), area_mm2: area };
}
