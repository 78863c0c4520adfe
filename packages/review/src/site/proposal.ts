export type { Confidence, SiteProposal } from '@coveline/project';

/** The part as people know it, for reasons and lists. */
export const partName = (id: string): string => id.slice(id.lastIndexOf('/') + 1);
