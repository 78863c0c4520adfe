/** What a machine is held against: the catalogue with the packs of its project, and a profile that it has. */
import { builtIn, type Catalogue, type Pack, withPacks } from '@coveline/catalogue';
import type { Brief, Project } from './schema.ts';

export interface Yardstick {
  readonly catalogue: Catalogue;
  /** The brief of the project, with a profile that the catalogue has. */
  readonly brief: Brief;
  /** What of the project could not be taken as it stands, one sentence each. */
  readonly notes: readonly string[];
}

/** `more`: packs beside those of the project. */
export function yardstickOf(
  project: Pick<Project, 'brief' | 'packs'>,
  more: readonly Pack[] = [],
): Yardstick {
  const { catalogue, notes } = withPacks(builtIn, [...project.packs, ...more]);
  const { brief } = project;
  if (catalogue.profiles.has(brief.profile)) return { catalogue, brief, notes };
  const [instead] = catalogue.profiles.keys();
  return {
    catalogue,
    brief: { ...brief, profile: instead },
    notes: [
      ...notes,
      `The brief asks for the profile "${brief.profile}", which neither the catalogue nor a pack has: "${instead}" is taken in its place.`,
    ],
  };
}
