import { cylindersOf, endOf } from '../geometry/cylinders.ts';
import type { Known } from '../parts/known.ts';
import { partName, type SiteProposal } from './proposal.ts';

/** Bores from this to this radius let liquid out on purpose; others are for screws or are vessels, mm. */
const radius_mm = [5, 75] as const;
/** The bore ends within this of the bottom of the part, as a share of the part's height. */
const nearBottom = 0.35;
/** A bore goes all round, but for what crosses it; the round edge of a tank does not. */
const leastRound = 0.7;

/** Upright bores through the bottom of trays, sinks and tanks. */
export function proposeDrains({ model, extents, is }: Known): readonly SiteProposal[] {
  return model.parts.flatMap((part, p): SiteProposal[] => {
    const hit = is[p];
    if (hit?.from !== 'name' || (hit.noun !== 'tray' && hit.noun !== 'tank')) return [];
    const { low, high } = extents[p];
    const bores = cylindersOf(model, p).filter((c) => {
      const lowest = Math.min(endOf(c, 'from')[2], endOf(c, 'to')[2]);
      return (
        c.hollow &&
        c.round > leastRound &&
        c.radius >= radius_mm[0] &&
        c.radius <= radius_mm[1] &&
        Math.abs(c.direction[2]) > 0.94 &&
        lowest < low[2] + nearBottom * (high[2] - low[2])
      );
    });
    return bores.map((bore, i): SiteProposal => {
      const ends = [endOf(bore, 'from'), endOf(bore, 'to')];
      const upper = ends[0][2] > ends[1][2] ? ends[0] : ends[1];
      const isNamed = /drain|ablauf|abfluss|vidange|desag|scaric|afvoer/i.test(part.name);
      return {
        id: `drain:${part.id}${bores.length > 1 ? `~${i + 1}` : ''}`,
        item: { what: 'drain', at_mm: [...upper], diameter_mm: 2 * bore.radius },
        confidence: isNamed ? 'high' : 'medium',
        reason: isNamed
          ? `"${partName(part.id)}" says so, and a bore of ${(2 * bore.radius).toFixed(0)} mm goes through its bottom.`
          : `A bore of ${(2 * bore.radius).toFixed(0)} mm goes through the bottom of a ${hit.noun}.`,
      };
    });
  });
}
