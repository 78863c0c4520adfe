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
import { placedBounds } from './placed-bounds.ts';
import { type Shore, shoreOf } from './shore.ts';
import { fromTurned } from './soup.ts';
import { type LiquidSurface, liquidSurface, regionVolume } from './surface.ts';

/** `air`: the flooded air space of the same model and settings, where it is at hand already. */
export function measureStandingLiquid(
  model: Model,
  settings: SurveySettings,
  control: Control = {},
  air: AirSpace = airSpaceOf(model, settings, control),
): MeasureOutcome<'standingLiquid'> {
  const { soup, bins } = air;
  const field = new Float32Array(
    model.parts.reduce((n, p) => n + model.shapes[p.shape].triangles.length / 3, 0),
  );
  field.fill(Number.NaN);
  const found: { pool: Omit<Pool, 'id'>; drawing: Drawing }[] = [];
  let left = 0;
  let leftOut_mL = 0;
  let done = 0;
  for (const { region, spill } of air.pools) {
    step(control, 'standing liquid', done++ / air.pools.length);
    const deepest = deepestPoint(soup, region);
    const depth_mm = region.level - deepest[2];
    const shallow = depth_mm < settings.leastPoolDepth_mm;
    const shore = shallow ? undefined : shoreOf(soup, bins, region);
    const volume_mL = (shore ? regionVolume(region, shore) : region.volume_mm3) / 1000;
    if (!shore || volume_mL < settings.leastPool_mL) {
      left++;
      leftOut_mL += volume_mL;
      continue;
    }
    const surface = liquidSurface(soup, region, shore);
    paint(air, region, shore, field);
    found.push({
      pool: { ...describe(model, air, { region, spill }, deepest, shore, surface), volume_mL },
      drawing: { triangles: surface.triangles },
    });
  }
  found.sort((a, b) => b.pool.volume_mL - a.pool.volume_mL);
  const name = placeNamer('pool');
  const places = found.map(({ pool }) => ({ id: name(pool.parts, pool.at_mm), ...pool }));
  const notes = [...air.notes];
  if (left > 0) {
    notes.push(
      `${left} pools below ${settings.leastPool_mL} mL or ${settings.leastPoolDepth_mm} mm, ${leftOut_mL.toPrecision(2)} mL together, are not listed.`,
    );
  }
  return {
    measure: { total_mL: places.reduce((sum, p) => sum + p.volume_mL, 0), places },
    field,
    drawings: new Map(places.map(({ id }, k) => [id, found[k].drawing])),
    notes,
  };
}

function describe(
  model: Model,
  { soup }: AirSpace,
  { region, spill }: PoolRegion,
  deepest: readonly [number, number, number],
  shore: Shore,
  surface: LiquidSurface,
): Omit<Pool, 'id' | 'volume_mL'> {
  const at = fromTurned(soup, ...deepest);
  return {
    parts: shore.parts.map((p) => model.parts[p].id).sort(),
    at_mm: at,
    bounds_mm: placedBounds(soup, region, deepest[2]),
    depth_mm: region.level - deepest[2],
    area_cm2: surface.area_mm2 / 100,
    deepest_mm: at,
    spill_mm: fromTurned(soup, spill[0], spill[1], region.level),
  };
}

function paint({ soup }: AirSpace, region: PoolRegion['region'], { near }: Shore, field: Float32Array): void {
  facingTriangles(soup, region, near, (triangle, depth) => {
    const source = soup.source[triangle];
    if (source >= 0 && !(field[source] >= depth)) field[source] = depth;
  });
}
