import type { Vec3 } from '@coveline/model';
import type { MeasureOutcome } from './outcome.ts';
import type { Drawing, FlatFace, Place, Pool, SurveyMeasures } from './result.ts';
import { type Tilt, untilt } from './tilt.ts';

/** Pools of a tilted machine with their coordinates on the level one. */
export function levelPools(
  outcome: MeasureOutcome<'standingLiquid'>,
  tilt: Tilt,
): MeasureOutcome<'standingLiquid'> {
  const back = untilt(tilt);
  const places = outcome.measure.places.map(
    (pool): Pool => ({
      ...levelPlace(pool, back),
      deepest_mm: back(pool.deepest_mm),
      spill_mm: back(pool.spill_mm),
    }),
  );
  return {
    ...outcome,
    measure: { ...outcome.measure, places },
    drawings: levelDrawings(outcome.drawings, back),
  };
}

/** Flat faces of a tilted machine with their coordinates on the level one; the slopes are those when tilted. */
export function levelFaces(outcome: MeasureOutcome<'flatFaces'>, tilt: Tilt): MeasureOutcome<'flatFaces'> {
  const back = untilt(tilt);
  const places = outcome.measure.places.map((face): FlatFace => levelPlace(face, back));
  return {
    ...outcome,
    measure: { ...outcome.measure, places },
    drawings: levelDrawings(outcome.drawings, back),
  };
}

/** Hollows found on a tilted machine with their coordinates on the level one. */
export function levelHollows(outcome: MeasureOutcome<'hollows'>, tilt: Tilt): MeasureOutcome<'hollows'> {
  const back = untilt(tilt);
  const { closed, blind, deadLegs, openMembers } = outcome.measure;
  const measure: NonNullable<SurveyMeasures['hollows']> = {
    closed: closed.map((h) => levelPlace(h, back)),
    blind: blind.map((b) => levelPlace(b, back)),
    ...(deadLegs && { deadLegs: deadLegs.map((d) => levelPlace(d, back)) }),
    ...(openMembers && { openMembers: openMembers.map((m) => levelPlace(m, back)) }),
  };
  return { ...outcome, measure, drawings: levelDrawings(outcome.drawings, back) };
}

function levelPlace<P extends Place>(place: P, back: (p: Vec3) => Vec3): P {
  const [low, high] = place.bounds_mm;
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((k) =>
    back([k & 1 ? high[0] : low[0], k & 2 ? high[1] : low[1], k & 4 ? high[2] : low[2]]),
  );
  const bound = (pick: (...values: number[]) => number): Vec3 => [
    pick(...corners.map((c) => c[0])),
    pick(...corners.map((c) => c[1])),
    pick(...corners.map((c) => c[2])),
  ];
  return { ...place, at_mm: back(place.at_mm), bounds_mm: [bound(Math.min), bound(Math.max)] };
}

function levelDrawings(
  drawings: ReadonlyMap<string, Drawing>,
  back: (p: Vec3) => Vec3,
): Map<string, Drawing> {
  const turned = (points: Float32Array): Float32Array => {
    const out = new Float32Array(points.length);
    for (let i = 0; i < points.length; i += 3) out.set(back([points[i], points[i + 1], points[i + 2]]), i);
    return out;
  };
  return new Map(
    [...drawings].map(([id, { triangles, lines }]) => [
      id,
      { ...(triangles && { triangles: turned(triangles) }), ...(lines && { lines: lines.map(turned) }) },
    ]),
  );
}
