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
import { lineIndex } from '../line-index.ts';
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

/** Throws RangeError for a part that is not there, an axis without length or an angle that is not a number. */
export function tryTilt({ model, settings, air }: LiquidBasis, tilt: PartTilt): Trial {
  const index = model.parts.findIndex(({ id }) => id === tilt.part);
  if (index < 0) throw new RangeError(`There is no part "${tilt.part}" in the model.`);
  const { soup: old, bins: oldBins, flood } = air;
  const moved = movedModel(model, index, tilt);
  const soup = withPart(old, moved, index);
  const bins = binsWithPart(oldBins, soup, index);
  const { grid } = flood.columns;

  const touched = boxOf(flood, [planOf(old, index), planOf(soup, index)]);
  const box = widened(withPools(air, touched), margin, grid);
  const flooded = (of: Model, triangles: Soup, by: Bins): Flood => {
    const within = floodWithin(triangles, by, flood, box, settings.contact_mm);
    lookClosely(of, triangles, by, within, settings.contact_mm);
    return within;
  };
  const before = flooded(model, old, oldBins);
  const after = flooded(moved, soup, bins);
  return trialOf(
    trialPools(old, oldBins, inside(before), settings),
    trialPools(soup, bins, inside(after), settings),
    leansOn(flood, box, touched)
      ? ['A pool beside this one runs over here; what becomes of it is not counted.']
      : [],
  );
}

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

/** Bounds of a part in the ground plan: u and v, low and high. */
function planOf({ uvz, triangles, part }: Soup, index: number): readonly [number, number, number, number] {
  let [u0, v0, u1, v1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let c = lowerBound(part, index) * 3; c < lowerBound(part, index + 1) * 3; c++) {
    const i = triangles[c] * 3;
    u0 = Math.min(u0, uvz[i]);
    u1 = Math.max(u1, uvz[i]);
    v0 = Math.min(v0, uvz[i + 1]);
    v1 = Math.max(v1, uvz[i + 1]);
  }
  return [u0, v0, u1, v1];
}

function boxOf(
  { columns: { grid } }: Flood,
  plans: readonly (readonly [number, number, number, number])[],
): Box {
  const at = (value: number, origin: number): number => (value - origin) / grid.pitch;
  return widened(
    {
      i0: Math.floor(Math.min(...plans.map((p) => at(p[0], grid.u0)))),
      j0: Math.floor(Math.min(...plans.map((p) => at(p[1], grid.v0)))),
      i1: Math.ceil(Math.max(...plans.map((p) => at(p[2], grid.u0)))),
      j1: Math.ceil(Math.max(...plans.map((p) => at(p[3], grid.v0)))),
    },
    0,
    grid,
  );
}

/** A box with all of the pools that reach into it. */
function withPools({ flood, regions }: AirSpace, box: Box): Box {
  const { grid, columnOf } = flood.columns;
  const reaches = ({ nodes }: Region): boolean =>
    nodes.some((n) => {
      const i = columnOf[n] % grid.nu;
      const j = (columnOf[n] - i) / grid.nu;
      return i >= box.i0 && i <= box.i1 && j >= box.j0 && j <= box.j1;
    });
  return regions
    .filter((region) => region.level < Infinity && reaches(region))
    .map(extentOf)
    .reduce(
      (a, b) => ({
        i0: Math.min(a.i0, b.i0),
        i1: Math.max(a.i1, b.i1),
        j0: Math.min(a.j0, b.j0),
        j1: Math.max(a.j1, b.j1),
      }),
      box,
    );
}

/** A flood of the box from the ground below it and from the levels that the whole model has along its border. */
function floodWithin(soup: Soup, bins: Bins, whole: Flood, box: Box, contact_mm: number): Flood {
  const outer = whole.columns.grid;
  const grid = {
    u0: outer.u0 + box.i0 * outer.pitch,
    v0: outer.v0 + box.j0 * outer.pitch,
    pitch: outer.pitch,
    nu: box.i1 - box.i0 + 1,
    nv: box.j1 - box.j0 + 1,
  };
  const near = bins.over(grid, -Infinity, Infinity);
  const columns = buildColumns(
    soup,
    grid,
    lineIndex(soup, grid, 1, near),
    lineIndex(soup, grid, 0, near),
    contact_mm,
  );
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
    const pairs = equalIntervals(whole, flood, edge, 1, Infinity, box);
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

/** Follows narrow bores within the box and looks closely at where pools run over, as for the whole model. */
function lookClosely(model: Model, soup: Soup, bins: Bins, flood: Flood, contact_mm: number): void {
  const { grid } = flood.columns;
  const refiner: Refiner = { soup, bins, contact_mm, places: new Map(), seen: new Set() };
  const bores = narrowBores(model, soup, grid).filter(
    ({ from, to }) => nearestColumn(grid, ...from) >= 0 && nearestColumn(grid, ...to) >= 0,
  );
  refineBores(refiner, flood, bores);
  refineSpills(refiner, flood, inside(flood));
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

/** Whether liquid at the border of a box runs over on a way through the columns that change. */
function leansOn({ columns, level, from }: Flood, box: Box, touched: Box): boolean {
  const { nu } = columns.grid;
  const changes = (n: number): boolean => {
    const i = columns.columnOf[n] % nu;
    const j = (columns.columnOf[n] - i) / nu;
    return i >= touched.i0 && i <= touched.i1 && j >= touched.j0 && j <= touched.j1;
  };
  return borders(box).some(({ i0, i1, j0, j1 }) => {
    for (let j = j0; j <= j1; j++) {
      for (let n = columns.first[j * nu + i0]; n < columns.first[j * nu + i1 + 1]; n++) {
        if (!(level[n] > columns.bottom[n] + sameHeight_mm) || level[n] === Infinity) continue;
        let at = n;
        while (from[at] !== at && !changes(at)) at = from[at];
        if (changes(at)) return true;
      }
    }
    return false;
  });
}
