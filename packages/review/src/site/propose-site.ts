/** What of the site geometry and names tell. Every line of it can be accepted, changed or left out. */
import type { Model } from '@coveline/model';
import { knowledgeOf } from '../parts/known.ts';
import { proposeAccess } from './access.ts';
import { proposeDoors } from './doors.ts';
import { proposeDrains } from './drains.ts';
import { proposeFilters } from './filters.ts';
import { proposeFloor } from './floor.ts';
import { proposeMains } from './mains.ts';
import { proposeMouths } from './mouths.ts';
import { proposeNozzles } from './nozzles.ts';
import type { SiteProposal } from './proposal.ts';

export interface SiteProposals {
  readonly proposals: readonly SiteProposal[];
  /** What speaks against the model as it stands, one sentence each. */
  readonly notes: readonly string[];
}

/** `model` as surveyed, +Z up. Same model, same proposals. */
export function proposeSite(model: Model): SiteProposals {
  const known = knowledgeOf(model);
  const { proposals, notes } = proposeFloor(known);
  return {
    proposals: [
      ...proposals,
      ...proposeAccess(known),
      ...proposeDoors(known),
      ...proposeMouths(known),
      ...proposeFilters(known),
      ...proposeNozzles(known),
      ...proposeDrains(known),
      ...proposeMains(known),
    ],
    notes,
  };
}
