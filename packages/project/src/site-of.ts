/** Proposals and what people said of them, put together. */
import type { Site } from '@coveline/survey';
import type { SiteChange, SiteItem } from './site.ts';

/** High and medium hold until somebody says otherwise; low is a guess that waits for somebody to accept it. */
export type Confidence = 'high' | 'medium' | 'low';

/** One thing of the site as geometry and names tell it. */
export interface SiteProposal {
  /** Same parts, same id in every revision that has them. */
  readonly id: string;
  readonly item: SiteItem;
  readonly confidence: Confidence;
  /** One sentence. */
  readonly reason: string;
}

export type SiteChanges = Readonly<Record<string, SiteChange>>;

/** One line of the list that people see. */
export interface SiteEntry {
  readonly id: string;
  readonly item: SiteItem;
  /** `proposed` by the model alone; the others by somebody. */
  readonly standing: 'proposed' | 'accepted' | 'changed' | 'added' | 'removed';
  /** Whether the survey goes by it. */
  readonly holds: boolean;
  /** Null for what somebody added. */
  readonly confidence: Confidence | null;
  readonly reason: string;
}

/** Proposals in their order, then what was added, in the order of its ids. */
export function siteEntries(changes: SiteChanges, proposals: readonly SiteProposal[]): readonly SiteEntry[] {
  const proposed = proposals.map((proposal) => entryOf(proposal, changes[proposal.id]));
  const known = new Set(proposals.map((p) => p.id));
  const added = Object.entries(changes)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([id, change]): SiteEntry[] =>
      change.do === 'set' && !known.has(id)
        ? [
            {
              id,
              item: change.item,
              standing: 'added',
              holds: true,
              confidence: null,
              reason: 'Added by hand.',
            },
          ]
        : [],
    );
  return [...proposed, ...added];
}

function entryOf({ id, item, confidence, reason }: SiteProposal, change: SiteChange | undefined): SiteEntry {
  const base = { id, item, confidence, reason };
  if (change === undefined) return { ...base, standing: 'proposed', holds: confidence !== 'low' };
  switch (change.do) {
    case 'accept':
      return { ...base, standing: 'accepted', holds: true };
    case 'remove':
      return { ...base, standing: 'removed', holds: false };
    case 'set':
      return { ...base, item: change.item, standing: 'changed', holds: true };
  }
}

/** What the survey goes by. Of several floors the first counts. */
export function siteOf(changes: SiteChanges, proposals: readonly SiteProposal[]): Site {
  const site: { -readonly [K in Exclude<keyof Site, 'floor_mm'>]: Site[K][number][] } = {
    walls: [],
    access: [],
    doors: [],
    mouths: [],
    filters: [],
    nozzles: [],
    drains: [],
    mains: [],
  };
  let floor_mm: number | undefined;
  for (const { id, item, holds } of siteEntries(changes, proposals)) {
    if (!holds) continue;
    switch (item.what) {
      case 'floor':
        floor_mm ??= item.height_mm;
        break;
      case 'wall':
        site.walls.push({ id, at_mm: item.at_mm, into: item.into });
        break;
      case 'access':
        site.access.push({ id, outward: item.outward });
        break;
      case 'door':
        site.doors.push({ id, parts: item.parts, hinge: item.hinge });
        break;
      case 'mouth': {
        const { what: _, time_s, ...mouth } = item;
        site.mouths.push({ id, ...mouth, ...(time_s !== undefined && { time_s }) });
        break;
      }
      case 'filter': {
        const { what: _, velocity_mPerS, ...face } = item;
        site.filters.push({ id, ...face, ...(velocity_mPerS !== undefined && { velocity_mPerS }) });
        break;
      }
      case 'nozzle': {
        const { what: _, ...nozzle } = item;
        site.nozzles.push({ id, ...nozzle });
        break;
      }
      case 'drain':
        site.drains.push({ id, at_mm: item.at_mm, diameter_mm: item.diameter_mm });
        break;
      case 'main':
        site.mains.push({ id, parts: item.parts });
        break;
    }
  }
  return { ...(floor_mm !== undefined && { floor_mm }), ...site };
}
