/** The cleaning of a machine: its groups, what is wrong with their steps, what the materials stand, what it takes. */
import type { PartData, SurfaceGroup } from '@coveline/project';
import type { Scene } from '../scene.ts';
import { type MaterialVerdict, verdictsOn } from './compatibility.ts';
import { proposeGroups } from './groups.ts';
import { type Breach, breachesOf } from './order.ts';
import { minutes, type Resources, resourcesOf, runsPerYear } from './resources.ts';

export interface GroupReview {
  readonly group: SurfaceGroup;
  /** Nobody has set it. */
  readonly proposed: boolean;
  readonly minutes: number;
  readonly breaches: readonly Breach[];
  readonly materials: readonly MaterialVerdict[];
}

export interface CleaningReview {
  readonly groups: readonly GroupReview[];
  readonly resources: Resources | null;
  /** Parts that no group cleans. */
  readonly uncleaned: readonly string[];
}

/** What people set goes before what is proposed; a part that they put into a group leaves the proposed one. */
export function cleaningOf(scene: Scene): CleaningReview {
  const set = Object.entries(scene.groups).map(([id, g]): SurfaceGroup => ({ id, ...g }));
  const taken = new Set(set.flatMap((g) => g.parts));
  const proposed = proposeGroups(scene)
    .filter((g) => !(g.id in scene.groups))
    .map((g) => ({ ...g, parts: g.parts.filter((p) => !taken.has(p)) }))
    .filter((g) => g.parts.length > 0);
  const groups = [...set, ...proposed];
  const data = new Map(scene.parts.map((p) => [p.partId, p]));
  const runs = runsPerYear(scene.brief);
  const cleaned = new Set(groups.flatMap((g) => g.parts));
  return {
    groups: groups.map((group) => {
      const materials = byMaterial(group, data);
      const stainless = [...materials.keys()].some((id) => id.startsWith('1.4'));
      const allergens = scene.brief.products.some((p) => p.allergens.length > 0);
      return {
        group,
        proposed: !(group.id in scene.groups),
        minutes: minutes(group),
        breaches: breachesOf(group, { stainless, allergens }),
        materials: verdictsOn(group.steps, materials, runs, scene.catalogue),
      };
    }),
    resources: resourcesOf(groups, scene.brief),
    uncleaned: scene.parts
      .filter((p, i) => !cleaned.has(p.partId) && !scene.known.isPack(i))
      .map((p) => p.partId),
  };
}

function byMaterial(group: SurfaceGroup, data: ReadonlyMap<string, PartData>): Map<string, string[]> {
  const out = new Map<string, string[]>();
  for (const id of group.parts) {
    const material = data.get(id)?.material;
    if (material !== undefined) out.set(material, [...(out.get(material) ?? []), id]);
  }
  return out;
}
