/** Which requirements hold for a profile on a day, with the citations and limits that hold then. */
import { builtIn, type Catalogue } from './catalogue.ts';
import { strongest } from './row.ts';
import type { AreaClass, CareLevelKey, Citation, Limit, Profile, Requirement, Source } from './types.ts';

export interface Setting {
  /** Id of a profile. */
  readonly profile: string;
  readonly careLevel: CareLevelKey;
  /** ISO date. Where law changes over, the one in force on this day is taken. */
  readonly on: string;
}

/** A requirement as it holds in a setting: citations and limits filtered, kind from what is left. */
export type Demand = Requirement;

/** The profile with this id. Throws with the list of ids when there is none. */
export function profileById(id: string, { profiles }: Catalogue = builtIn): Profile {
  const found = profiles.get(id);
  if (found) return found;
  const known = [...profiles.values()].map((p) => `"${p.id}"`).join(', ');
  throw new RangeError(`The catalogue has no profile "${id}"; it has ${known}.`);
}

/**
 * The requirements in force. One that is left without any citation, because its sources hold in another market or
 * at another time, is not among them. Throws on an unknown profile.
 */
export function demandsInForce(setting: Setting, catalogue: Catalogue = builtIn): readonly Demand[] {
  const profile = profileById(setting.profile, catalogue);
  const figures = lineOf(profile, catalogue);
  const sourceOf = (c: Citation) => catalogue.sources.get(c.source)!;
  const inForce = (c: Citation) => holds(sourceOf(c), profile, setting.on);
  const out: Demand[] = [];
  for (const requirement of catalogue.requirements.values()) {
    if (requirement.careLevels && !requirement.careLevels.includes(setting.careLevel)) continue;
    const citations = requirement.citations.filter(inForce);
    if (citations.length === 0) continue;
    out.push({
      ...requirement,
      citations,
      kind: strongest(citations.map((c) => sourceOf(c).kind)),
      limits: requirement.limits.filter(
        (l) => (l.profiles.length === 0 || l.profiles.some((id) => figures.has(id))) && inForce(l.citation),
      ),
    });
  }
  return out;
}

/** The limits of a demand on one quantity in one area, at an included angle where it matters. */
export function limitsFor(
  demand: Demand,
  quantity: string,
  area: AreaClass,
  angle_deg?: number,
): readonly Limit[] {
  return demand.limits.filter(
    (l) =>
      l.quantity === quantity &&
      l.areas.includes(area) &&
      (angle_deg === undefined ||
        l.angle_deg === undefined ||
        (angle_deg >= l.angle_deg[0] && angle_deg < l.angle_deg[1])),
  );
}

/** A profile and those that it is based on. */
function lineOf(profile: Profile, { profiles }: Catalogue): ReadonlySet<string> {
  const line = new Set<string>();
  for (
    let p: Profile | undefined = profile;
    p && !line.has(p.id);
    p = p.basedOn === undefined ? undefined : profiles.get(p.basedOn)
  )
    line.add(p.id);
  return line;
}

function holds(source: Source, profile: Profile, on: string): boolean {
  if (source.jurisdiction && source.jurisdiction !== profile.jurisdiction) return false;
  // ISO dates compare as text.
  return (source.from ?? '') <= on && on <= (source.until ?? '9999-12-31');
}
