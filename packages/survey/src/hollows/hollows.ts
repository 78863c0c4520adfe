/**
 * Hollows: air that is sealed off from the outside, and passages with one open end.
 *
 * Closed hollows are the regions of the flooded air space that nothing joins to the outside. A vent narrower than
 * the columns that were used can be missed, so a hollow says how fine they were.
 */
import type { Model } from '@coveline/model';
import { type AirSpace, airSpaceOf } from '../liquid/air-space.ts';
import { facingTriangles } from '../liquid/depth-field.ts';
import { placedBounds } from '../liquid/placed-bounds.ts';
import type { Region } from '../liquid/regions.ts';
import { shoreOf } from '../liquid/shore.ts';
import { fromTurned } from '../liquid/soup.ts';
import { regionVolume } from '../liquid/surface.ts';
import type { MeasureOutcome } from '../outcome.ts';
import { type PlaceKind, placeNamer } from '../place-id.ts';
import type { ClosedHollow, Control, Drawing, Place, SurveySettings } from '../result.ts';
import { emptySite, type Site } from '../site.ts';
import { step } from '../stopped.ts';
import { channelsOf } from './channels.ts';
import type { Found } from './found.ts';
import { looksAt } from './looks.ts';
import { openMembers } from './open-members.ts';
import { ventOf } from './vents.ts';

/** Values of the field. */
const closedWall = 1;
const blindWall = 2;
const deadLegWall = 3;
const openMemberWall = 4;

/**
 * `air`: the flooded air space of the same model and settings, where it is at hand already. `site.mains`: tubes in
 * which liquid flows by; what is absent is told from shape, with a caveat.
 */
export function measureHollows(
  model: Model,
  settings: SurveySettings,
  control: Control = {},
  air: AirSpace = airSpaceOf(model, settings, control),
  { mains }: Pick<Site, 'mains'> = emptySite,
): MeasureOutcome<'hollows'> {
  const { soup, bins } = air;
  const field = new Float32Array(
    model.parts.reduce((n, p) => n + model.shapes[p.shape].triangles.length / 3, 0),
  );
  field.fill(Number.NaN);
  const looks = looksAt(model);
  const channels = channelsOf(looks, settings, mains, control);
  const notes = [...air.notes];
  const found: { readonly place: Omit<ClosedHollow, 'id'>; readonly drawing: Drawing }[] = [];
  for (const region of air.hollows) {
    step(control, 'hollows', found.length / air.hollows.length);
    const shore = shoreOf(soup, bins, region);
    const volume_mL = regionVolume(region, shore) / 1000;
    if (volume_mL < settings.leastHollow_mL) continue;
    const vent_mm = ventOf(air, region, channels.passages);
    if (vent_mm > 0) {
      const names = shore.parts.map((p) => `"${model.parts[p].name}"`).join(', ');
      notes.push(
        `A hollow of ${volume_mL.toPrecision(3)} mL in ${names} is open through a bore of ${vent_mm.toPrecision(3)} mm, too narrow to drain it or dry it: it is not listed as closed.`,
      );
      continue;
    }
    const walls: number[] = [];
    facingTriangles(soup, region, shore.near, (triangle) => {
      walls.push(triangle);
      if (soup.source[triangle] >= 0) field[soup.source[triangle]] = closedWall;
    });
    const { pitch } = region.flood.columns.grid;
    const place = {
      parts: shore.parts.map((p) => model.parts[p].id).sort(),
      ...placeOf(air, region),
      volume_mL,
      caveats: [
        `A vent narrower than about ${(1.5 * pitch).toPrecision(2)} mm that is no round bore would not be seen.`,
      ],
    };
    found.push({ place, drawing: { triangles: cornersOf(soup, walls) } });
  }
  found.sort((a, b) => b.place.volume_mL - a.place.volume_mL);
  const name = placeNamer('hollow');
  const drawings = new Map<string, Drawing>();
  const closed = found.map(({ place, drawing }): ClosedHollow => {
    const id = name(place.parts, place.at_mm);
    drawings.set(id, drawing);
    return { id, ...place };
  });
  const members = openMembers(
    looks,
    closed,
    channels.blind.map(({ place }) => place),
    control,
  );
  const listed = <P extends Place>(kind: PlaceKind, wall: number, places: readonly Found<P>[]): P[] => {
    const nameOf = placeNamer(kind);
    return places.map(({ place, triangles, drawing }) => {
      const id = nameOf(place.parts, place.at_mm);
      for (const t of triangles) field[t] = wall;
      drawings.set(id, drawing);
      return { id, ...place } as P;
    });
  };
  return {
    measure: {
      closed,
      blind: listed('blind', blindWall, channels.blind),
      deadLegs: listed('leg', deadLegWall, channels.deadLegs),
      openMembers: listed('member', openMemberWall, members),
    },
    field,
    drawings,
    notes,
  };
}

/** Nine coordinates per triangle, as the model stands. */
function cornersOf(soup: AirSpace['soup'], triangles: readonly number[]): Float32Array {
  const corners = new Float32Array(9 * triangles.length);
  triangles.forEach((t, k) => {
    for (let c = 0; c < 3; c++) {
      const v = soup.triangles[3 * t + c] * 3;
      corners.set(fromTurned(soup, soup.uvz[v], soup.uvz[v + 1], soup.uvz[v + 2]), 9 * k + 3 * c);
    }
  });
  return corners;
}

/** A point of the hollow near its middle, and its bounds. */
function placeOf({ soup }: AirSpace, region: Region): Pick<ClosedHollow, 'at_mm' | 'bounds_mm'> {
  const { grid, bottom, top, columnOf } = region.flood.columns;
  let lowest = Infinity;
  let volume = 0;
  const sum = [0, 0, 0];
  for (const n of region.nodes) {
    const i = columnOf[n] % grid.nu;
    const height = top[n] - bottom[n];
    lowest = Math.min(lowest, bottom[n]);
    volume += height;
    sum[0] += height * (grid.u0 + i * grid.pitch);
    sum[1] += height * (grid.v0 + ((columnOf[n] - i) / grid.nu) * grid.pitch);
    sum[2] += (height * (top[n] + bottom[n])) / 2;
  }
  return {
    at_mm: fromTurned(soup, sum[0] / volume, sum[1] / volume, sum[2] / volume),
    bounds_mm: placedBounds(soup, region, lowest),
  };
}
