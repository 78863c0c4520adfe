import type { SiteItem } from '@coveline/project';

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

/** The part as people know it, for reasons and lists. */
export const partName = (id: string): string => id.slice(id.lastIndexOf('/') + 1);
