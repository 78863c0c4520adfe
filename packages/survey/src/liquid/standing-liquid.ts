/**
 * Standing liquid: wet everything and wait. A point of the air space keeps liquid if every path through the air from
 * it to the outside must first rise above it; pools are the connected sets of such points, each filled to its spill
 * height. Air that is sealed off is not a pool but a hollow; air that the liquid would trap counts as filled.
 */
import type { Model, Vec3 } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import { placeNamer } from '../place-id.ts';
import type { Control, Drawing, Pool, SurveySettings } from '../result.ts';
import { type AirSpace, airSpaceOf } from './air-space.ts';
import { candidatesIn } from './candidates.ts';
import { facingTriangles } from './depth-field.ts';
import { measureExactly } from './exact/compare.ts';
import type { Union } from './exact/solid.ts';
import { centroid, nearestInterval } from './middle.ts';
import { placedBounds } from './placed-bounds.ts';
import type { Region } from './regions.ts';
import { rounded } from './rounded.ts';
import { byColumns, type Settled, settle, type Verdict } from './settle.ts';
import { type Shore, shoreOf } from './shore.ts';
import { fromTurned, type Soup } from './soup.ts';
import { type LiquidSurface, liquidSurface } from './surface.ts';
import { tessellationCaveat } from './tessellation.ts';

/**
 * `air`: the flooded air space of the same model and settings, where it is at hand already. `union`: given, pools are
 * measured a second time by the exact method, whose number then counts.
 */
export function measureStandingLiquid(
  model: Model,
  settings: SurveySettings,
  control: Control = {},
  air: AirSpace = airSpaceOf(model, settings, control),
  union?: Union,
): MeasureOutcome<'standingLiquid'> {
  const { found, left, leftOut_mL } = candidatesIn(air, settings, control);
  const { soup, bins } = air;
  const { pools, drained_mL }: Verdict = union
    ? settle(found, measureExactly(soup, bins, found, settings, union, control), settings)
    : { pools: found.map((candidate) => byColumns(candidate)), drained_mL: [] };
  const notes = [...air.notes];
  if (left > 0) {
    notes.push(
      `${left} pools below ${settings.leastPool_mL} mL or ${settings.leastPoolDepth_mm} mm, ${leftOut_mL.toPrecision(2)} mL together, are not listed.`,
    );
  }
  if (drained_mL.length > 0) notes.push(drainedNote(drained_mL));
  const field = new Float32Array(
    model.parts.reduce((n, p) => n + model.shapes[p.shape].triangles.length / 3, 0),
  ).fill(Number.NaN);
  const name = placeNamer('pool');
  const drawings = new Map<string, Drawing>();
  const places = pools
    .map((settled) => ({ settled, volume_mL: settled.exact?.volume_mL ?? settled.columns_mL }))
    .sort((a, b) => b.volume_mL - a.volume_mL)
    .map(({ settled, volume_mL }): Pool => {
      const { candidate, exact } = settled;
      const region = exact?.region ?? candidate.region;
      const shore = region === candidate.region ? candidate.shore : shoreOf(soup, bins, region);
      const surface = liquidSurface(soup, region, shore);
      const described = describe(model, air, settled, region, shore, surface);
      const id = name(described.parts, described.at_mm);
      const caveats = [
        ...settled.caveats,
        exact || !isNarrow(shore) ? undefined : grooveCaveat,
        tessellationCaveat(model, soup, region, shore.near, volume_mL),
      ].filter((caveat) => caveat !== undefined);
      drawings.set(id, { triangles: surface.triangles });
      paint(soup, region, shore.near, field);
      return { id, ...described, volume_mL, ...(caveats.length > 0 && { caveats }) };
    });
  return {
    measure: { total_mL: places.reduce((sum, p) => sum + p.volume_mL, 0), places },
    field,
    drawings,
    notes,
  };
}

/** Pools in narrow sloping grooves are of this kind: between columns the bottom of such a groove is not seen. */
function drainedNote(drained_mL: readonly number[]): string {
  const told = [...drained_mL].sort((a, b) => b - a).slice(0, 5);
  const more = drained_mL.length > told.length ? ' …' : '';
  return `${drained_mL.length} pools that the columns found (${told.map(rounded).join(', ')}${more} mL) are not listed: the exact method shows that they drain.`;
}

const grooveCaveat =
  'Narrower than the columns that found it: in a sloping groove it may drain along the bottom.';

/** Nowhere as wide as three columns. */
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
  { candidate, columns_mL, exact }: Settled,
  region: Region,
  shore: Shore,
  surface: LiquidSurface,
): Omit<Pool, 'id' | 'volume_mL' | 'caveats'> {
  const { grid, columnOf, bottom, top } = region.flood.columns;
  const middle = nearestInterval(region, centroid(region), () => true);
  const i = columnOf[middle] % grid.nu;
  const at = fromTurned(
    soup,
    grid.u0 + i * grid.pitch,
    grid.v0 + ((columnOf[middle] - i) / grid.nu) * grid.pitch,
    (bottom[middle] + Math.min(top[middle], region.level)) / 2,
  );
  const deepest: Vec3 = exact?.deepest ?? candidate.deepest;
  const spill: Vec3 = exact?.spill ?? [candidate.spill[0], candidate.spill[1], region.level];
  return {
    parts: shore.parts.map((p) => model.parts[p].id).sort(),
    at_mm: at,
    bounds_mm: placedBounds(soup, region, deepest[2]),
    columns_mL,
    depth_mm: (exact?.level ?? region.level) - deepest[2],
    area_cm2: (exact ? (exact.area_mm2 * exact.volume_mL * 1000) / exact.volume_mm3 : surface.area_mm2) / 100,
    deepest_mm: fromTurned(soup, ...deepest),
    spill_mm: fromTurned(soup, ...spill),
    ...(exact && { exact_mL: exact.volume_mL, difference: columns_mL / exact.volume_mL - 1 }),
  };
}

function paint(soup: Soup, region: Region, near: Uint32Array, field: Float32Array): void {
  facingTriangles(soup, region, near, (triangle, depth) => {
    const source = soup.source[triangle];
    if (source >= 0 && !(field[source] >= depth)) field[source] = depth;
  });
}
