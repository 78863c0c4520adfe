/**
 * Standing liquid: wet everything and wait. A point of the air space keeps liquid if every path through the air from
 * it to the outside must first rise above it; pools are the connected sets of such points, each filled to its spill
 * height. Air that is sealed off is not a pool but a hollow; air that the liquid would trap counts as filled.
 */
import type { Model } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import { placeNamer } from '../place-id.ts';
import type { Control, Drawing, Pool, SurveySettings } from '../result.ts';
import { step } from '../stopped.ts';
import { type AirSpace, airSpaceOf, type Pool as PoolRegion } from './air-space.ts';
import { deepestPoint } from './deepest.ts';
import { facingTriangles } from './depth-field.ts';
import { type Comparable, compareExact } from './exact/compare.ts';
import type { Union } from './exact/solid.ts';
import { centroid, nearestInterval } from './middle.ts';
import { placedBounds } from './placed-bounds.ts';
import { type Shore, shoreOf } from './shore.ts';
import { fromTurned, type Soup } from './soup.ts';
import { type LiquidSurface, liquidSurface, regionVolume } from './surface.ts';
import { tessellationCaveat } from './tessellation.ts';

/**
 * `air`: the flooded air space of the same model and settings, where it is at hand already. `union`: given, the largest
 * pools are measured a second time by the exact method, and the two are compared.
 */
export function measureStandingLiquid(
  model: Model,
  settings: SurveySettings,
  control: Control = {},
  air: AirSpace = airSpaceOf(model, settings, control),
  union?: Union,
): MeasureOutcome<'standingLiquid'> {
  const { found, notes } = examine(model, settings, control, air);
  const exact = union ? compareExact(air.soup, found, settings.contact_mm, union, control) : undefined;
  const field = new Float32Array(
    model.parts.reduce((n, p) => n + model.shapes[p.shape].triangles.length / 3, 0),
  ).fill(Number.NaN);
  const name = placeNamer('pool');
  const drawings = new Map<string, Drawing>();
  const places: Pool[] = [];
  let drained = 0;
  for (let k = 0; k < found.length; k++) {
    const { pool, drawing, region, near, narrow } = found[k];
    const { exact_mL = Infinity } = exact?.pools[k] ?? {};
    if (pool.volume_mL < groove_mL && exact_mL < settings.leastPool_mL) {
      drained++;
      continue;
    }
    const id = name(pool.parts, pool.at_mm);
    const caveats = [
      narrow && exact_mL === Infinity ? grooveCaveat : undefined,
      tessellationCaveat(model, air.soup, region, near, pool.volume_mL),
      ...(exact?.pools[k]?.caveats ?? []),
    ].filter((caveat) => caveat !== undefined);
    places.push({ id, ...pool, ...exact?.pools[k], ...(caveats.length > 0 && { caveats }) });
    drawings.set(id, drawing);
    paint(air.soup, region, near, field);
  }
  if (exact) notes.push(...exact.notes);
  if (drained > 0) {
    notes.push(
      `${drained} small pools in narrow sloping grooves are not listed: the exact method shows that they drain.`,
    );
  }
  return {
    measure: { total_mL: places.reduce((sum, p) => sum + p.volume_mL, 0), places },
    field,
    drawings,
    notes,
  };
}

/**
 * Between columns the bottom of a narrow sloping groove is not seen, and pools of up to about this size can seem to
 * stand in it. Where the exact method finds none of it, it is believed.
 */
const groove_mL = 1;
const grooveCaveat =
  'Narrower than the columns that found it: in a sloping groove it may drain along the bottom.';

interface Found extends Comparable {
  readonly pool: Omit<Pool, 'id'>;
  readonly drawing: Drawing;
  /** Triangles near it. */
  readonly near: Uint32Array;
  /** Nowhere as wide as three columns. */
  readonly narrow: boolean;
}

/** Pools above the least size, largest first. */
function examine(
  model: Model,
  settings: SurveySettings,
  control: Control,
  air: AirSpace,
): { found: Found[]; notes: string[] } {
  const { soup, bins } = air;
  const found: Found[] = [];
  let left = 0;
  let leftOut_mL = 0;
  let done = 0;
  for (const { region, spill } of air.pools) {
    step(control, 'standing liquid', done++ / air.pools.length);
    const deepest = deepestPoint(soup, region);
    const shallow = region.level - deepest[2] < settings.leastPoolDepth_mm;
    const shore = shallow ? undefined : shoreOf(soup, bins, region);
    const volume_mL = (shore ? regionVolume(region, shore) : region.volume_mm3) / 1000;
    if (!shore || volume_mL < settings.leastPool_mL) {
      left++;
      leftOut_mL += volume_mL;
      continue;
    }
    const surface = liquidSurface(soup, region, shore);
    found.push({
      pool: { ...describe(model, air, { region, spill }, deepest, shore, surface), volume_mL },
      drawing: { triangles: surface.triangles },
      region,
      parts: shore.parts,
      near: shore.near,
      narrow: isNarrow(shore),
    });
  }
  found.sort((a, b) => b.pool.volume_mL - a.pool.volume_mL);
  const notes = [...air.notes];
  if (left > 0) {
    notes.push(
      `${left} pools below ${settings.leastPool_mL} mL or ${settings.leastPoolDepth_mm} mm, ${leftOut_mL.toPrecision(2)} mL together, are not listed.`,
    );
  }
  return { found, notes };
}

function isNarrow({ neighbour }: Shore): boolean {
  for (let m = 0; m < neighbour.length; m += 4) {
    if (neighbour[m] >= 0 && neighbour[m + 1] >= 0 && neighbour[m + 2] >= 0 && neighbour[m + 3] >= 0)
      return false;
  }
  return true;
}

function describe(
  model: Model,
  { soup }: AirSpace,
  { region, spill }: PoolRegion,
  deepest: readonly [number, number, number],
  shore: Shore,
  surface: LiquidSurface,
): Omit<Pool, 'id' | 'volume_mL'> {
  const { grid, columnOf, bottom, top } = region.flood.columns;
  const middle = nearestInterval(region, centroid(region), () => true);
  const i = columnOf[middle] % grid.nu;
  const at = fromTurned(
    soup,
    grid.u0 + i * grid.pitch,
    grid.v0 + ((columnOf[middle] - i) / grid.nu) * grid.pitch,
    (bottom[middle] + Math.min(top[middle], region.level)) / 2,
  );
  return {
    parts: shore.parts.map((p) => model.parts[p].id).sort(),
    at_mm: at,
    bounds_mm: placedBounds(soup, region, deepest[2]),
    depth_mm: region.level - deepest[2],
    area_cm2: surface.area_mm2 / 100,
    deepest_mm: fromTurned(soup, ...deepest),
    spill_mm: fromTurned(soup, spill[0], spill[1], region.level),
  };
}

function paint(soup: Soup, region: PoolRegion['region'], near: Uint32Array, field: Float32Array): void {
  facingTriangles(soup, region, near, (triangle, depth) => {
    const source = soup.source[triangle];
    if (source >= 0 && !(field[source] >= depth)) field[source] = depth;
  });
}
