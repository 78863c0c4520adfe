/** What the cells of a pool add up to: its volume, and its surface as triangles cut at the walls. */
import { eachPolygon, isSquare, type Polygon, polygonArea, polygonVolume } from './cells.ts';
import { none } from './neighbours.ts';
import type { Region } from './regions.ts';
import type { Shore } from './shore.ts';
import { fromTurned, type Soup } from './soup.ts';

export interface LiquidSurface {
  /** xyz per corner, mm, in the frame of the model. */
  readonly triangles: Float32Array;
  readonly area_mm2: number;
}

/**
 * Volume of a pool or hollow, mm3.
 *
 * Where it runs out thin at its shore, a dish, the plain sum over columns is best. Where it ends at walls, that sum
 * depends on how the walls lie to the columns: there it is cut into cells that end at the walls. Columns under a roof
 * count whole all the same: where a wall leans in, some stand under it and some do not, and the mean is right.
 */
export function regionVolume(region: Region, shore: Shore): number {
  const { columns } = region.flood;
  const { neighbour } = shore;
  const height = depthsOf(region);
  if (runsOutThin(shore, height)) return region.volume_mm3;
  const hollow = region.level === Infinity;
  const open = (m: number): boolean => columns.top[region.nodes[m]] > region.level;
  let volume = shore.between_mm3;
  for (let m = 0; m < height.length; m++) {
    if (!hollow && !open(m)) volume += height[m] * columns.grid.pitch ** 2;
  }
  eachPolygon(
    shore,
    height,
    {
      belongs: (m) => hollow || open(m),
      joined: (m, way) => neighbour[m * 4 + way],
      walled: (m, way) => neighbour[m * 4 + way] === none,
    },
    (polygon) => {
      volume += polygonVolume(polygon);
    },
  );
  return volume;
}

/** Whether at most of its ends a region is less than half as high as at the last column before. */
function runsOutThin({ neighbour, reach, endHeight }: Shore, height: Float64Array): boolean {
  let thin = 0;
  let walled = 0;
  for (let k = 0; k < neighbour.length; k++) {
    if (neighbour[k] !== none || reach[k] === 1) continue;
    if (endHeight[k] < height[k >> 2] / 2) thin++;
    else walled++;
  }
  return thin > walled;
}

/** The surface of a pool where it is open to the air above. */
export function liquidSurface(soup: Pick<Soup, 'turn'>, region: Region, shore: Shore): LiquidSurface {
  const { columns } = region.flood;
  const { neighbour, reach } = shore;
  const open = (m: number): boolean => columns.top[region.nodes[m]] > region.level;
  const out: number[] = [];
  let area = 0;
  const emit = (polygon: Polygon): void => {
    for (let k = 6; k < polygon.length; k += 3) {
      for (const c of [0, k - 3, k]) out.push(...fromTurned(soup, polygon[c], polygon[c + 1], region.level));
    }
  };
  // Whole cells that follow one another along u are drawn as one rectangle.
  let run: number[] | undefined;
  const emitRun = (): void => {
    if (run) emit(run);
    run = undefined;
  };
  eachPolygon(
    shore,
    depthsOf(region),
    {
      belongs: open,
      joined: (m, way) => {
        const other = neighbour[m * 4 + way];
        const free =
          other >= 0 && open(other) && reach[m * 4 + way] === 1 && reach[other * 4 + (way ^ 1)] === 1;
        return free ? other : none;
      },
      walled: () => true,
    },
    (polygon) => {
      area += polygonArea(polygon);
      if (!isSquare(polygon)) {
        emit(polygon);
        return;
      }
      if (run && run[3] === polygon[0] && run[4] === polygon[1] && run[7] === polygon[10]) {
        run[3] = polygon[3];
        run[6] = polygon[6];
        return;
      }
      emitRun();
      run = [...polygon];
    },
  );
  emitRun();
  return { triangles: Float32Array.from(out), area_mm2: area };
}

function depthsOf({ flood, nodes, level }: Region): Float64Array {
  const { bottom, top } = flood.columns;
  return Float64Array.from(nodes, (n) => Math.min(top[n], level) - bottom[n]);
}
