/** Two revisions side by side: what was mended, what is new, what stayed; by kind, parts and position. */
import type { Model, Vec3 } from '@coveline/model';
import type { Place, SurveyResult } from '@coveline/survey';
import { extentsOf, middle } from '../geometry/extent.ts';
import { identify } from './identity.ts';

export interface Surveyed {
  /** As surveyed, +Z up. */
  readonly model: Model;
  readonly survey: SurveyResult;
}

export interface RevisionChange {
  readonly change: 'mended' | 'new' | 'better' | 'worse' | 'moved' | 'unchanged';
  readonly measure:
    | 'standingLiquid'
    | 'flatFaces'
    | 'insideCorners'
    | 'narrowGaps'
    | 'joints'
    | 'closedHollows'
    | 'blindChannels';
  /** Ids of places; the first is absent for a new place, the second for a mended one. */
  readonly before?: string;
  readonly after?: string;
  readonly parts: readonly string[];
  /** Number by which places of this kind are compared. */
  readonly size: {
    readonly label: string;
    readonly unit: string;
    readonly before?: number;
    readonly after?: number;
  };
}

/** Places further apart than this are not the same place, unless their boxes meet. */
const near_mm = 20;
/** A change of size below this share is none. */
const same = 0.05;

/** Every place of either revision, in the order of kinds, then as the surveys list them, new ones last. */
export function compareRevisions(before: Surveyed, after: Surveyed): readonly RevisionChange[] {
  const old = placesOf(before.survey);
  const now = placesOf(after.survey);
  const { was } = identify(before.model, after.model);
  const moved = movesOf(before.model, after.model, was);
  const since = { was, moved, common: median([...moved.values()]) };
  return kinds.flatMap((kind) => match(kind, old[kind.measure] ?? [], now[kind.measure] ?? [], since));
}

/** How far each part has moved, by its id before: a machine on longer legs has its old places higher up. */
function movesOf(
  before: Model,
  after: Model,
  origin: ReadonlyMap<string, string>,
): ReadonlyMap<string, Vec3> {
  const old = extentsOf(before).map(middle);
  const now = extentsOf(after).map(middle);
  const was = new Map(before.parts.map((part, p) => [part.id, old[p]]));
  const moves = new Map<string, Vec3>();
  after.parts.forEach((part, p) => {
    const id = origin.get(part.id);
    const from = id === undefined ? undefined : was.get(id);
    if (id !== undefined && from && !moves.has(id))
      moves.set(id, [now[p][0] - from[0], now[p][1] - from[1], now[p][2] - from[2]]);
  });
  return moves;
}

/** What became of the parts: their ids before by their ids now, and how far they went. */
interface Since {
  readonly was: ReadonlyMap<string, string>;
  readonly moved: ReadonlyMap<string, Vec3>;
  /** How far the machine as a whole went: longer legs move no place on it. */
  readonly common: Vec3;
}

interface Kind {
  readonly measure: RevisionChange['measure'];
  readonly label: string;
  readonly unit: string;
}

const kinds: readonly Kind[] = [
  { measure: 'standingLiquid', label: 'volume', unit: 'mL' },
  { measure: 'flatFaces', label: 'area', unit: 'cm2' },
  { measure: 'insideCorners', label: 'length', unit: 'mm' },
  { measure: 'narrowGaps', label: 'depth', unit: 'mm' },
  { measure: 'joints', label: 'length', unit: 'mm' },
  { measure: 'closedHollows', label: 'volume', unit: 'mL' },
  { measure: 'blindChannels', label: 'depth over width', unit: '1' },
];

interface Sized {
  readonly place: Place;
  readonly size: number;
}

function placesOf({
  measures: m,
}: SurveyResult): Partial<Record<RevisionChange['measure'], readonly Sized[]>> {
  const sized = <P extends Place>(places: readonly P[] | undefined, size: (p: P) => number) =>
    (places ?? []).map((place) => ({ place, size: size(place) }));
  return {
    standingLiquid: sized(m.standingLiquid?.places, (p) => p.volume_mL),
    flatFaces: sized(m.flatFaces?.places, (p) => p.area_cm2),
    insideCorners: sized(m.insideCorners?.places, (p) => p.length_mm),
    narrowGaps: sized(m.narrowGaps?.places, (p) => p.depth_mm),
    joints: sized(m.narrowGaps?.joints, (p) => p.length_mm),
    closedHollows: sized(m.hollows?.closed, (p) => p.volume_mL),
    blindChannels: sized(m.hollows?.blind, (p) => p.ratio),
  };
}

/** The closest pairs first; every place is matched at most once. */
function match(kind: Kind, old: readonly Sized[], now: readonly Sized[], since: Since): RevisionChange[] {
  const pairs: { b: number; a: number; apart: number }[] = [];
  old.forEach((o, b) => {
    now.forEach((n, a) => {
      const apart = distanceOf(o.place, n.place, since);
      if (apart !== null) pairs.push({ b, a, apart });
    });
  });
  pairs.sort((x, y) => x.apart - y.apart || x.b - y.b || x.a - y.a);
  const partner = new Map<number, number>();
  const taken = new Set<number>();
  for (const { b, a } of pairs) {
    if (partner.has(b) || taken.has(a)) continue;
    partner.set(b, a);
    taken.add(a);
  }
  const out = old.map((o, b) => {
    const a = partner.get(b);
    return a === undefined ? gone(kind, o) : pair(kind, o, now[a], since);
  });
  return [...out, ...now.filter((_, a) => !taken.has(a)).map((n) => appeared(kind, n))];
}

/**
 * Null when they cannot be the same place: no part in common, or far apart, both where it was and where its part has
 * gone since. 0 for the same id.
 */
function distanceOf(a: Place, b: Place, { was, moved }: Since): number | null {
  if (a.id === b.id) return 0;
  const before = new Set(b.parts.map((id) => was.get(id)));
  const shared = a.parts.filter((id) => before.has(id));
  if (shared.length === 0) return null;
  const moves = [still, ...shared.map((id) => moved.get(id) ?? still)];
  const apart = Math.min(
    ...moves.map((m) => Math.hypot(...[0, 1, 2].map((i) => a.at_mm[i] + m[i] - b.at_mm[i]))),
  );
  return apart <= near_mm || boxesMeet(a.bounds_mm, b.bounds_mm) ? apart : null;
}

const still: Vec3 = [0, 0, 0];

function boxesMeet([aLow, aHigh]: readonly [Vec3, Vec3], [bLow, bHigh]: readonly [Vec3, Vec3]): boolean {
  return [0, 1, 2].every((i) => aLow[i] <= bHigh[i] && bLow[i] <= aHigh[i]);
}

function pair({ measure, label, unit }: Kind, o: Sized, n: Sized, { common }: Since): RevisionChange {
  const isSame = Math.abs(n.size - o.size) <= same * Math.max(o.size, n.size);
  return {
    change: isSame
      ? apartOf(o.place, n.place, common) > near_mm
        ? 'moved'
        : 'unchanged'
      : n.size < o.size
        ? 'better'
        : 'worse',
    measure,
    before: o.place.id,
    after: n.place.id,
    parts: n.place.parts,
    size: { label, unit, before: o.size, after: n.size },
  };
}

const apartOf = (a: Place, b: Place, common: Vec3) =>
  Math.hypot(...[0, 1, 2].map((i) => a.at_mm[i] + common[i] - b.at_mm[i]));

/** By axis; no movement without parts. */
function median(moves: readonly Vec3[]): Vec3 {
  const along = (axis: number) => moves.map((m) => m[axis]).sort((a, b) => a - b)[moves.length >> 1] ?? 0;
  return [along(0), along(1), along(2)];
}

const gone = ({ measure, label, unit }: Kind, o: Sized): RevisionChange => ({
  change: 'mended',
  measure,
  before: o.place.id,
  parts: o.place.parts,
  size: { label, unit, before: o.size },
});

const appeared = ({ measure, label, unit }: Kind, n: Sized): RevisionChange => ({
  change: 'new',
  measure,
  after: n.place.id,
  parts: n.place.parts,
  size: { label, unit, after: n.size },
});
