/**
 * A part tilted without drawing it anew: the columns around where it was and where it is are built and flooded twice, with
 * the part as it is and as it would be; around them everything stays.
 */
import { bounds, type Model, placedPositions, type Vec3 } from '@coveline/model';
import { turnAbout, turned } from '../../tilt.ts';
import type { AirSpace } from '../air-space.ts';
import type { Bins } from '../bins.ts';
import { type Box, equalIntervals, widened } from '../box.ts';
import { buildColumns } from '../columns.ts';
import { lowerBound } from '../exact/outer-shells.ts';
import { type Flood, own, spread } from '../flood.ts';
import { nearestColumn } from '../grid.ts';
import { narrowBores } from '../narrow-bores.ts';
import { type Refiner, refineSpills } from '../refine.ts';
import { refineBores } from '../refine-bores.ts';
import { extentOf, type Region, regionsOf, sameHeight_mm } from '../regions.ts';
import type { Soup } from '../soup.ts';
import { type LiquidBasis, type Trial, toTurned, trialOf, trialPools } from './basis.ts';

export interface PartTilt {
  /** Id of the part. */
  readonly part: string;
  /** Axis of the turn, any length; right-handed. */
  readonly axis: Vec3;
  readonly deg: number;
  /** A point on the axis, mm; the middle of the part's box when absent. */
  readonly about_mm?: Vec3;
}

/** Columns around what changes. */
const margin = 3;
/** Surface above this over everything that can change has no bearing on it, mm. */
const headroom_mm = 1;

/** Throws RangeError for a part that is not there, an axis without length or an angle that is not a number. */
export function tryTilt({ model, settings, air }: LiquidBasis, tilt: PartTilt): Trial {
  const index = model.parts.findIndex(({ id }) => id === tilt.part);
  if (index < 0) throw new RangeError(`There is no part "${tilt.part}" in the model.`);
  const moved = movedModel(model, index, tilt);
  const soup = withPart(air.soup, moved, index);
  const bins = binsWithPart(air.bins, soup, index);
  const swept = sweptBy([air.soup, soup], index);
  const touched = boxOf(air.flood, swept);
  const pools = poolsNear(air, touched, swept);
  const box = widened(pools.map(extentOf).reduce(hull, touched), margin, air.grid);
  const top_mm = pools.reduce((top, { level }) => Math.max(top, level), swept.high[2]) + headroom_mm;

  const flood = floodWithin(soup, bins, air.flood, box, top_mm, settings.contact_mm);
  const refiner: Refiner = {
    soup,
    bins,
    contact_mm: settings.contact_mm,
    places: new Map(),
    seen: new Set(),
  };
  followBores(refiner, moved, flood);
  const known = air.regions.filter((region) => region.level <= top_mm && isWithin(region, box));
  const now = (): Region[] => inside(flood).filter(({ level }) => level <= top_mm);
  // What stands as before needs no second look; what differs may do so because it was looked at closely before.
  refineSpills(refiner, flood, unlike(now(), known));
  const after = now();
  return trialOf(
    trialPools(air.soup, air.bins, unlike(known, after), settings),
    trialPools(soup, bins, unlike(after, known), settings),
    leansOn(air.flood, box, touched, swept)
      ? ['A pool beside this one runs over here; what becomes of it is not counted.']
      : [],
  );
}

function isWithin(region: Region, box: Box): boolean {
  const { i0, i1, j0, j1 } = extentOf(region);
  return i0 > box.i0 && i1 < box.i1 && j0 > box.j0 && j1 < box.j1;
}

/** Regions that are not the same as one of others, by level and volume. */
function unlike(regions: readonly Region[], others: readonly Region[]): Region[] {
  return regions.filter(
    ({ level, volume_mm3 }) =>
      !others.some(
        (other) =>
          Math.abs(other.level - level) < same_mm &&
          Math.abs(other.volume_mm3 - volume_mm3) < same_mm3 + sameShare * volume_mm3,
      ),
  );
}

/** Two grids compute the place of a shared column in different ways, so its heights may differ in the last digits. */
const same_mm = 1e-5;
const same_mm3 = 0.1;
const sameShare = 1e-6;

function movedModel(model: Model, index: number, { axis, deg, about_mm }: PartTilt): Model {
  const length = Math.hypot(...axis);
  if (!(length > 0)) throw new RangeError('The axis of a turn has no length.');
  if (!Number.isFinite(deg)) throw new RangeError(`The angle of a turn is a number of degrees; got ${deg}.`);
  const part = model.parts[index];
  const [low, high] = bounds({ ...model, parts: [part] });
  const about = about_mm ?? (low.map((c, k) => (c + high[k]) / 2) as unknown as Vec3);
  const turn = turnAbout([axis[0] / length, axis[1] / length, axis[2] / length], deg);
  const placement = turned(part.placement, turn);
  const shift = turn(about);
  for (let k = 0; k < 3; k++) placement[12 + k] += about[k] - shift[k];
  return { ...model, parts: model.parts.with(index, { ...part, placement }) };
}

/** The soup with one part elsewhere. */
function withPart(old: Soup, model: Model, index: number): Soup {
  const xyz = placedPositions(model, index);
  // Vertices of a part lie together, in the order of its shape.
  const base = model.parts
    .slice(0, index)
    .reduce((n, { shape }) => n + model.shapes[shape].positions.length / 3, 0);
  const uvz = old.uvz.slice();
  for (let i = 0; i < xyz.length; i += 3) {
    uvz.set(toTurned(old, [xyz[i], xyz[i + 1], xyz[i + 2]]), (base + i / 3) * 3);
  }
  return { ...old, uvz };
}

function binsWithPart(bins: Bins, { part }: Soup, index: number): Bins {
  const start = lowerBound(part, index);
  const own = Uint32Array.from({ length: lowerBound(part, index + 1) - start }, (_, k) => start + k);
  return {
    over: (grid, bottom_mm, top_mm) => {
      const others = bins.over(grid, bottom_mm, top_mm).filter((t) => part[t] !== index);
      const all = new Uint32Array(others.length + own.length);
      all.set(others);
      all.set(own, others.length);
      return all.sort();
    },
  };
}

interface Swept {
  readonly low: readonly [number, number, number];
  readonly high: readonly [number, number, number];
}

/** Box around a part in several soups, u, v and z. */
function sweptBy(soups: readonly Soup[], index: number): Swept {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const { uvz, triangles, part } of soups) {
    for (let c = lowerBound(part, index) * 3; c < lowerBound(part, index + 1) * 3; c++) {
      for (let k = 0; k < 3; k++) {
        const value = uvz[triangles[c] * 3 + k];
        if (value < low[k]) low[k] = value;
        if (value > high[k]) high[k] = value;
      }
    }
  }
  return { low, high };
}

function boxOf({ columns: { grid } }: Flood, { low, high }: Swept): Box {
  return widened(
    {
      i0: Math.floor((low[0] - grid.u0) / grid.pitch),
      j0: Math.floor((low[1] - grid.v0) / grid.pitch),
      i1: Math.ceil((high[0] - grid.u0) / grid.pitch),
      j1: Math.ceil((high[1] - grid.v0) / grid.pitch),
    },
    0,
    grid,
  );
}

/** Pools of the whole model that reach into a box of columns, at the heights that are swept. */
function poolsNear({ flood, regions }: AirSpace, box: Box, { low, high }: Swept): Region[] {
  const { grid, columnOf, bottom, top } = flood.columns;
  const reaches = ({ nodes, level }: Region): boolean =>
    nodes.some((n) => {
      if (bottom[n] > high[2] + headroom_mm || Math.min(top[n], level) < low[2] - headroom_mm) return false;
      const i = columnOf[n] % grid.nu;
      const j = (columnOf[n] - i) / grid.nu;
      return i >= box.i0 && i <= box.i1 && j >= box.j0 && j <= box.j1;
    });
  return regions.filter((region) => region.level < Infinity && reaches(region));
}

function hull(a: Box, b: Box): Box {
  return {
    i0: Math.min(a.i0, b.i0),
    i1: Math.max(a.i1, b.i1),
    j0: Math.min(a.j0, b.j0),
    j1: Math.max(a.j1, b.j1),
  };
}

/** A flood of the box from the ground below it and from the levels that the whole model has along its border. */
function floodWithin(
  soup: Soup,
  bins: Bins,
  whole: Flood,
  box: Box,
  top_mm: number,
  contact_mm: number,
): Flood {
  const outer = whole.columns.grid;
  const grid = {
    u0: outer.u0 + box.i0 * outer.pitch,
    v0: outer.v0 + box.j0 * outer.pitch,
    pitch: outer.pitch,
    nu: box.i1 - box.i0 + 1,
    nv: box.j1 - box.j0 + 1,
  };
  const near = bins.over(grid, -Infinity, top_mm);
  const columns = buildColumns(soup, grid, contact_mm, { near });
  const count = columns.bottom.length;
  const level = new Float64Array(count).fill(Infinity);
  const seeds: number[] = [];
  for (let n = 0; n < count; n++) {
    if (columns.bottom[n] !== -Infinity) continue;
    level[n] = -Infinity;
    seeds.push(n);
  }
  const flood = { columns, level, from: own(count) };
  for (const edge of borders(box)) {
    const pairs = equalIntervals(whole, flood, edge, 1, top_mm, box);
    for (let k = 0; k < pairs.length; k += 2) {
      const given = whole.level[pairs[k]];
      if (given === -Infinity || given === Infinity) continue;
      level[pairs[k + 1]] = given;
      seeds.push(pairs[k + 1]);
    }
  }
  spread(flood, seeds);
  return flood;
}

/** Follows narrow bores within the box, as for the whole model. */
function followBores(refiner: Refiner, model: Model, flood: Flood): void {
  const { grid } = flood.columns;
  const bores = narrowBores(model, refiner.soup, grid).filter(
    ({ from, to }) => nearestColumn(grid, ...from) >= 0 && nearestColumn(grid, ...to) >= 0,
  );
  refineBores(refiner, flood, bores);
}

function borders({ i0, i1, j0, j1 }: Box): Box[] {
  return [
    { i0, i1, j0, j1: j0 },
    { i0, i1, j0: j1, j1 },
    { i0, i1: i0, j0, j1 },
    { i0: i1, i1, j0, j1 },
  ];
}

/** Pools that do not reach the border of their grid. */
function inside(flood: Flood): Region[] {
  const { nu, nv } = flood.columns.grid;
  return regionsOf(flood).filter((region) => {
    if (region.level === Infinity) return false;
    const { i0, i1, j0, j1 } = extentOf(region);
    return i0 > 0 && j0 > 0 && i1 < nu - 1 && j1 < nv - 1;
  });
}

/** Whether liquid at the border of a box runs over at, or on a way through, what is swept. */
function leansOn({ columns, level, from }: Flood, box: Box, touched: Box, { low, high }: Swept): boolean {
  const { grid, columnOf, bottom, top } = columns;
  const changes = (n: number): boolean => {
    if (bottom[n] > high[2] || top[n] < low[2]) return false;
    const i = columnOf[n] % grid.nu;
    const j = (columnOf[n] - i) / grid.nu;
    return i >= touched.i0 && i <= touched.i1 && j >= touched.j0 && j <= touched.j1;
  };
  return borders(box).some(({ i0, i1, j0, j1 }) => {
    for (let j = j0; j <= j1; j++) {
      for (let n = columns.first[j * grid.nu + i0]; n < columns.first[j * grid.nu + i1 + 1]; n++) {
        if (!(level[n] > bottom[n] + sameHeight_mm) || level[n] === Infinity) continue;
        // Beyond the spill point the way falls, and what happens there does not matter.
        let at = n;
        while (from[at] !== at && level[from[at]] === level[at] && !changes(at)) at = from[at];
        if (changes(at) || changes(from[at])) return true;
      }
    }
    return false;
  });
}
