/** Materials that the cleaning of their group attacks. */
import { type MaterialFamily, mediumById } from '@coveline/catalogue';
import type { MaterialVerdict } from '../cleaning/compatibility.ts';
import { cleaningOf, type GroupReview } from '../cleaning/programme.ts';
import type { Draft, RuleResult } from '../draft.ts';
import { measured } from '../numbers/measured.ts';
import type { Scene } from '../scene.ts';

const asked: Readonly<Record<MaterialFamily, string>> = {
  'stainless steel': 'gen-mat-corr',
  'other metal': 'gen-mat-corr',
  elastomer: 'joint-seal-mat',
  plastic: 'gen-mat-corr',
  'cable jacket': 'cable-jacket',
  glass: 'gen-mat-corr',
  lubricant: 'gen-mat-corr',
};
const panes = new Set(['pc', 'pmma', 'petg']);

export function materials(scene: Scene): RuleResult {
  const { groups } = cleaningOf(scene);
  return {
    drafts: groups.flatMap((g) => attacked(g).flatMap((verdicts) => draftOf(scene, g, verdicts))),
    settles: [],
    basis: `${groups.length} groups of surfaces were held against the media that clean them`,
    notes: [],
  };
}

/** One finding a material: the steps that attack it, worst known first. */
function attacked({ materials: verdicts }: GroupReview): readonly (readonly MaterialVerdict[])[] {
  const by = new Map<string, MaterialVerdict[]>();
  for (const v of verdicts) {
    if (v.verdict === 'unsuitable') by.set(v.material, [...(by.get(v.material) ?? []), v]);
  }
  return [...by.values()];
}

function draftOf(
  scene: Scene,
  { group, proposed }: GroupReview,
  verdicts: readonly MaterialVerdict[],
): Draft[] {
  const [first] = verdicts;
  const material = scene.catalogue.materials.get(first.material)!;
  const demand = scene.demands.get(panes.has(material.id) ? 'window-agent' : asked[material.family]);
  if (!demand) return [];
  const parts = first.parts.map((id) => scene.known.indexOf.get(id)).filter((p) => p !== undefined);
  if (parts.length === 0) return [];
  const areas = new Set(parts.map((p) => scene.parts[p].areaClass));
  const area = (['food', 'splash', 'nonFood'] as const).find((a) => areas.has(a) && demand.areas.includes(a));
  if (!area) return [];
  const media = [...new Set(verdicts.map((v) => mediumById.get(group.steps[v.step].medium)!.name))];
  const contact = verdicts.reduce((sum, v) => sum + v.contact_hyr, 0);
  return [
    {
      demand,
      limit: null,
      // The table is from memory; the supplier of the compound decides.
      status: 'notShown',
      measure: null,
      anchor: `${group.id}|${first.material}`,
      places: [],
      parts,
      area,
      title: `${material.name} does not stand ${media.join(' and ')}: ${parts.length} ${parts.length === 1 ? 'part' : 'parts'} cleaned with it`,
      numbers: [
        measured(
          'Contact a year',
          contact,
          'h/yr',
          'time of the steps that attack it, times cleanings a year by the brief',
        ),
      ],
      why: `${verdicts[0].text} What cracks, swells or pits shelters germs and sheds into product.`,
      harm: 'keeps',
      weight: contact,
      weightLabel: 'h of contact a year',
      caveats: [
        ...(proposed ? ['The programme is a proposal: nobody has set it for these surfaces.'] : []),
        ...(scene.parts[parts[0]].setByUser.includes('material') ? [] : ['The material is a proposal.']),
        'Compatibility is from memory: the data sheet of the compound decides.',
      ],
    },
  ];
}
