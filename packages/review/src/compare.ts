/** Two revisions side by side: what was mended, what is new, what stayed. First cut: by kind, parts and position. */
import type { Vec3 } from '@coveline/model';
import type { Place, SurveyResult } from '@coveline/survey';

export interface Surveyed {
  readonly survey: SurveyResult;
}

export interface RevisionChange {
  readonly change: 'mended' | 'new' | 'better' | 'worse' | 'unchanged';
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
  return kinds.flatMap((kind) => match(kind, old[kind.measure] ?? [], now[kind.measure] ?? []));
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
function match(kind: Kind, old: readonly Sized[], now: readonly Sized[]): RevisionChange[] {
  const pairs: { b: number; a: number; apart: number }[] = [];
  old.forEach((o, b) => {
    now.forEach((n, a) => {
      const apart = distanceOf(o.place, n.place);
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
    return a === undefined ? gone(kind, o) : pair(kind, o, now[a]);
  });
  return [...out, ...now.filter((_, a) => !taken.has(a)).map((n) => appeared(kind, n))];
}

/** Null when they cannot be the same place: no part in common, or far apart. 0 for the same id. */
function distanceOf(a: Place, b: Place): number | null {
  if (a.id === b.id) return 0;
  if (!a.parts.some((id) => b.parts.includes(id))) return null;
  const apart = Math.hypot(...[0, 1, 2].map((i) => a.at_mm[i] - b.at_mm[i]));
  return apart <= near_mm || boxesMeet(a.bounds_mm, b.bounds_mm) ? apart : null;
}

function boxesMeet([aLow, aHigh]: readonly [Vec3, Vec3], [bLow, bHigh]: readonly [Vec3, Vec3]): boolean {
  return [0, 1, 2].every((i) => aLow[i] <= bHigh[i] && bLow[i] <= aHigh[i]);
}

function pair({ measure, label, unit }: Kind, o: Sized, n: Sized): RevisionChange {
  const isSame = Math.abs(n.size - o.size) <= same * Math.max(o.size, n.size);
  return {
    change: isSame ? 'unchanged' : n.size < o.size ? 'better' : 'worse',
    measure,
    before: o.place.id,
    after: n.place.id,
    parts: n.place.parts,
    size: { label, unit, before: o.size, after: n.size },
  };
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
