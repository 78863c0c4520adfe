import type { Vec3 } from '@coveline/model';
import { type Cylinder, cylindersOf } from '../geometry/cylinders.ts';
import { middle } from '../geometry/extent.ts';
import { dot, minus } from '../geometry/vector.ts';
import type { Known } from '../parts/known.ts';
import type { SiteProposal } from './proposal.ts';

/** How far a jet of a spray ball or a flat jet cleans: common practice, to be replaced by the data of the maker. */
const range_mm = 1500;
/** Full angle of a nozzle whose data are not known: common practice. */
const usualCone_deg = 60;
/** Bores that point this many ways spray all round. */
const allRound = 2;

/** Spray heads and spray nozzles by name. Their bores tell whether they spray one way or all round. */
export function proposeNozzles({ model, extents, is }: Known): readonly SiteProposal[] {
  return model.parts.flatMap((part, p): SiteProposal[] => {
    const hit = is[p];
    const isSpray =
      hit?.from === 'name' &&
      (hit.noun === 'spray' ||
        (hit.noun === 'nozzle' && /spray|wash|clean|rinse|sprüh|spül/i.test(part.name)));
    if (!isSpray) return [];
    const bores = cylindersOf(model, p).filter((c) => c.hollow);
    const axes = distinctAxes(bores);
    const at = middle(extents[p]);
    const round = axes.length >= allRound || axes.length === 0;
    const direction = round ? ([0, 0, -1] as Vec3) : outOf(bores[0], at);
    const why = round
      ? axes.length === 0
        ? 'it is taken to spray all round, for its bores are not known'
        : `its bores point along ${axes.length} axes, so it sprays all round`
      : `its bore tells the direction; the cone of ${usualCone_deg}° is common practice`;
    return [
      {
        id: `nozzle:${part.id}`,
        item: {
          what: 'nozzle',
          parts: [part.id],
          at_mm: [...at],
          direction: [...direction],
          cone_deg: round ? 360 : usualCone_deg,
          range_mm,
        },
        confidence: axes.length === 0 ? 'low' : 'medium',
        reason: `Its name says "${hit.word}", and ${why}. The range of ${range_mm / 1000} m is common practice.`,
      },
    ];
  });
}

function distinctAxes(bores: readonly Cylinder[]): readonly Vec3[] {
  const out: Vec3[] = [];
  for (const { direction } of bores)
    if (!out.some((known) => Math.abs(dot(known, direction)) > 0.99)) out.push(direction);
  return out;
}

/** Along the bore, from the middle of the part to the end that is farther away. */
function outOf({ origin, direction, from, to }: Cylinder, centre: Vec3): Vec3 {
  const s = dot(minus(centre, origin), direction);
  return to - s >= s - from ? direction : [-direction[0], -direction[1], -direction[2]];
}
