import type { Model, Vec3 } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import { placeNamer } from '../place-id.ts';
import type { Control, Drawing, Opening, SurveySettings, Unreached } from '../result.ts';
import { nothingSealed, type Sealed } from '../sealed.ts';
import type { Site } from '../site.ts';
import { step } from '../stopped.ts';
import { nearestCentres } from './centres.ts';
import { fieldOf } from './field.ts';
import { byPart, type Group, groupOf, unreachedGroups } from './groups.ts';
import { type Judged, judge } from './judge.ts';
import type { Limb } from './limb.ts';
import { notesOn } from './notes.ts';
import { openingsOf } from './openings.ts';
import { type Patches, patchesOf } from './patches.ts';
import { trianglesOf } from './pieces.ts';
import { inModel, type ReachSpace, reachSpaceOf } from './space.ts';
import { exactThroat } from './throat.ts';
import { tautTrail, widestTrail } from './trail.ts';
import { waysOf } from './way.ts';
import { type Widest, widestWays } from './widest.ts';

/** What the measures of hand and tool share: computed once for both. */
export interface Reach {
  readonly model: Model;
  readonly site: Site | undefined;
  readonly space: ReachSpace;
  readonly patches: Patches;
  readonly widest: Widest;
}

/** Balls this near the limb's size are a matter of tolerances, mm. */
const closeCall_mm = 1;

/** Throws `SurveyStopped` when the signal is aborted. About 80 bytes a cell and 60 a triangle. */
export function reachOf(model: Model, settings: SurveySettings, control: Control = {}, site?: Site): Reach {
  const radii = [settings.hand_mm / 2, settings.tool_mm / 2].sort((a, b) => a - b);
  const space = reachSpaceOf(model, site, Math.max(...radii), settings.reachSpacing_mm, control);
  const widest = widestWays(space, radii, control);
  return { model, site, space, patches: patchesOf(space.lattice, space.facets, control), widest };
}

/**
 * What a hand or tool gets to (mm, cm2): a ball of its size travels through the air from the access sides, with the
 * doors open; what it touches counts as reached when the way there, taut as a string, is no longer than the arm.
 */
export function measureReach<M extends 'handReach' | 'toolReach'>(
  reach: Reach,
  limb: Limb,
  settings: SurveySettings,
  control: Control = {},
  sealed: Sealed = nothingSealed,
): MeasureOutcome<M> {
  const { space, patches, widest } = reach;
  const ways = waysOf(space, widest, limb.size_mm / 2, control);
  const centres = nearestCentres(space, widest, ways, limb.size_mm / 2 + limb.touch_mm, control);
  const judged = judge(space, patches, widest, ways, centres, limb, settings.contact_mm, sealed, control);
  const least_mm2 = settings.leastUnreached_cm2 * 100;
  const drawings = new Map<string, Drawing>();

  const groups = unreachedGroups(space, patches, widest, judged, limb.length_mm, control)
    .flatMap((region) => byPart(patches, region, least_mm2))
    .map((members) => groupOf(patches, judged, members));
  step(control, 'reach', 0.967);
  const nameOpening = placeNamer(`${limb.kind}-opening`);
  const behind = areasBehind(reach, judged, groups, limb.length_mm);
  const openings = openingsOf(space, widest, behind, limb, least_mm2).map(({ opening, drawing, throats }) => {
    const id = nameOpening(opening.parts, opening.at_mm);
    drawings.set(id, drawing);
    return { id, throats, opening };
  });
  const through = new Map(
    openings.flatMap(({ throats, id }) => throats.map((throat) => [throat, id] as const)),
  );

  const name = placeNamer(`${limb.kind}-unreached`);
  const listed = groups.filter(({ area_mm2 }) => area_mm2 >= least_mm2);
  const small = groups.filter(({ area_mm2 }) => area_mm2 < least_mm2);
  const pieces = trianglesOf(space, patches, listed, control);
  const places = listed.map((group, g): Unreached => {
    step(control, 'reach', 0.975);
    const place = unreachedPlace(reach, judged, group, limb);
    const id = name(place.parts, place.at_mm);
    const cell = judged.centre[group.best];
    const end = patches.points.subarray(group.best * 3, group.best * 3 + 3);
    const trail = group.far
      ? tautTrail(space, widest, ways, cell, end)
      : widestTrail(space, widest, cell, end);
    drawings.set(id, { triangles: pieces[g], ...(trail.length > 0 && { lines: [trail] }) });
    const opening = through.get(cell < 0 ? -1 : widest.throat[cell]);
    return { id, ...place, ...(opening !== undefined && { opening }) };
  });
  places.sort((a, b) => b.area_cm2 - a.area_cm2 || (a.id < b.id ? -1 : 1));
  const sum = (counts: (way: number) => boolean) =>
    judged.way.reduce((total, way, p) => total + (counts(way) ? patches.area_mm2[p] : 0), 0) / 100;
  return {
    measure: {
      size_mm: limb.size_mm,
      length_mm: limb.length_mm,
      touch_mm: limb.touch_mm,
      resolution_mm: space.lattice.pitch,
      reached_cm2: sum((way) => way <= limb.length_mm),
      unreached_cm2: sum((way) => way > limb.length_mm),
      openings: openings
        .map(({ id, opening }): Opening => ({ id, ...opening }))
        .sort((a, b) => a.size_mm - b.size_mm || (a.id < b.id ? -1 : 1)),
      places,
    },
    field: fieldOf(reach, judged, limb.length_mm, control),
    drawings,
    notes: notesOn(reach, limb, settings, small.length, small.reduce((sum, g) => sum + g.area_mm2, 0) / 100),
  };
}

function unreachedPlace(
  { model, space, patches, widest }: Reach,
  { way, largest_mm, centre }: Judged,
  { members, area_mm2, far, best }: Group,
  limb: Limb,
): Omit<Unreached, 'id'> {
  const middle = [0, 0, 0];
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  const parts = new Set<string>();
  for (const p of members) {
    parts.add(model.parts[patches.part[p]].id);
    for (let k = 0; k < 3; k++) {
      const c = patches.points[p * 3 + k];
      middle[k] += (c * patches.area_mm2[p]) / area_mm2;
      low[k] = Math.min(low[k], c);
      high[k] = Math.max(high[k], c);
    }
  }
  const apart = (p: number) => Math.hypot(...middle.map((c, k) => c - patches.points[p * 3 + k]));
  const at = members.reduce((a, p) => (apart(p) < apart(a) ? p : a));
  const point = (c: ArrayLike<number>, i = 0): Vec3 => inModel(space.lattice, c[i], c[i + 1], c[i + 2]);
  const cell = centre[best];
  const throat = far || cell < 0 ? -1 : widest.throat[cell];
  const largest =
    throat < 0 ? largest_mm[best] : Math.min(largest_mm[best], 2 * exactThroat(space, widest, throat));
  return {
    parts: [...parts].sort(),
    at_mm: point(patches.points, at * 3),
    bounds_mm: [point(low), point(high)],
    area_cm2: area_mm2 / 100,
    largest_mm: largest,
    because: far ? 'far' : 'narrow',
    ...(far && { way_mm: way[best] }),
    ...(!far &&
      largest > limb.size_mm - closeCall_mm && {
        caveats: [
          `A ball of ${largest.toFixed(1)} mm gets here: within ${closeCall_mm} mm of the size asked.`,
        ],
      }),
  };
}

/** Per throat of the widest ways: the area that is best reached through it, or would be, mm2. */
function areasBehind(
  { patches, widest }: Reach,
  { way, centre }: Judged,
  groups: readonly Group[],
  length_mm: number,
): Map<number, number> {
  const behind = new Map<number, number>();
  const add = (cell: number, area: number): void => {
    const throat = cell < 0 ? -1 : widest.throat[cell];
    if (throat >= 0) behind.set(throat, (behind.get(throat) ?? 0) + area);
  };
  for (let p = 0; p < patches.count; p++) if (way[p] <= length_mm) add(centre[p], patches.area_mm2[p]);
  for (const { best, area_mm2 } of groups) add(centre[best], area_mm2);
  return behind;
}
