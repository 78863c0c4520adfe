import { overlap } from '../geometry/extent.ts';
import type { Known } from '../parts/known.ts';
import type { SiteProposal } from './proposal.ts';

/** Pieces of a line meet within the thickness of a seal between them, mm. */
const meet_mm = 4;
const waste = /drain|ablauf|abfluss|vidange|desag|scaric|afvoer|overflow/i;
const cleaning = /clean|rinse|cip|spray|wash|spül|reinig/i;

/** Named tubes that meet end to end. Drain pipes are left out: nothing is meant to stay in them or flow past. */
export function proposeMains(known: Known): readonly SiteProposal[] {
  const { model, is, extents } = known;
  const tubes = model.parts.flatMap((part, p) =>
    is[p]?.from === 'name' && is[p]?.noun === 'pipe' && isHollow(known, p) && !waste.test(part.name)
      ? [p]
      : [],
  );
  const left = new Set(tubes);
  const out: SiteProposal[] = [];
  for (const first of tubes) {
    if (!left.delete(first)) continue;
    const chain = [first];
    for (let i = 0; i < chain.length; i++)
      for (const other of left)
        if (overlap(extents[chain[i]], extents[other], meet_mm)) {
          left.delete(other);
          chain.push(other);
        }
    const ids = chain.map((p) => model.parts[p].id).sort();
    const all = chain.map((p) => `${model.parts[p].assembly.join(' ')} ${model.parts[p].name}`).join(' ');
    const forWhat = cleaning.test(all) ? 'cleaning liquid' : 'product';
    out.push({
      id: `main:${ids[0]}`,
      item: { what: 'main', parts: ids },
      confidence: chain.length > 1 ? 'medium' : 'low',
      reason:
        chain.length > 1
          ? `${chain.length} tubes meet end to end; by their names ${forWhat} flows in them.`
          : `A single tube; by its names ${forWhat} flows in it.`,
    });
  }
  return out;
}

/** Tubes have a round inner face: of a straight piece, a bend or a cone. */
function isHollow({ model }: Known, part: number): boolean {
  const { cad } = model.shapes[model.parts[part].shape];
  return cad?.faces.some((f) => f.hollow === true && f.kind !== 'plane') ?? false;
}
