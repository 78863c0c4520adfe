/** All materials: stainless steels, other metals, elastomers, plastics, cable jackets, glass. */
import type { Material } from '../types.ts';
import { otherMetals, stainlessSteels } from './metals.ts';
import { elastomers, glasses, jackets, plastics } from './plastics.ts';

export const materials: readonly Material[] = [
  ...stainlessSteels,
  ...otherMetals,
  ...elastomers,
  ...plastics,
  ...jackets,
  ...glasses,
];

export const materialById: ReadonlyMap<string, Material> = new Map(materials.map((m) => [m.id, m]));
