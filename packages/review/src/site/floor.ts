import type { Known } from '../parts/known.ts';
import type { SiteProposal } from './proposal.ts';

/** A foot that is this close to the lowest point stands on the floor, mm. */
const standing_mm = 3;

/** The floor lies at the lowest point. Feet or castors that stand there say that the model is the right way up. */
export function proposeFloor({ model, extents, is }: Known): {
  proposals: readonly SiteProposal[];
  notes: readonly string[];
} {
  if (model.parts.length === 0) return { proposals: [], notes: [] };
  const height_mm = Math.min(...extents.map((e) => e.low[2]));
  const feet = model.parts.flatMap((_, p) => {
    const hit = is[p];
    return hit?.from === 'name' && (hit.noun === 'foot' || hit.noun === 'castor') ? [p] : [];
  });
  const standing = feet.filter((p) => extents[p].low[2] < height_mm + standing_mm);
  const stands = standing.length >= 3;
  const floor: SiteProposal = {
    id: 'floor',
    item: { what: 'floor', height_mm },
    confidence: stands ? 'high' : 'medium',
    reason: stands
      ? `${standing.length} feet or castors stand at this height, and nothing reaches lower.`
      : 'It is the lowest point of the model; no three named feet stand there.',
  };
  const upsideDown = feet.length > 0 && standing.length === 0;
  const notes = upsideDown
    ? [
        `${feet.length} parts are named feet or castors, and none of them is at the bottom: see whether the right axis points up.`,
      ]
    : [];
  return { proposals: [floor], notes };
}
