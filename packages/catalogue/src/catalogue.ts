/** The catalogue as one value: what is built in, and what packs of a user or a company add. */
import { materials } from './materials/index.ts';
import { profiles } from './profiles.ts';
import { requirements } from './requirements/index.ts';
import { sources } from './sources.ts';
import type { Material, Profile, Requirement, Source } from './types.ts';

export interface Catalogue {
  /** By key, id, id, id; in the order in which they are listed. */
  readonly sources: ReadonlyMap<string, Source>;
  readonly requirements: ReadonlyMap<string, Requirement>;
  readonly materials: ReadonlyMap<string, Material>;
  readonly profiles: ReadonlyMap<string, Profile>;
}

const by = <T>(list: readonly T[], key: (t: T) => string) => new Map(list.map((t) => [key(t), t]));

export const builtIn: Catalogue = {
  sources: by(sources, (s) => s.key),
  requirements: by(requirements, (r) => r.id),
  materials: by(materials, (m) => m.id),
  profiles: by(profiles, (p) => p.id),
};
