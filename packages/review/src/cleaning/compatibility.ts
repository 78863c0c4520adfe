/** Every material that a step touches against its medium, strength, heat and hours a year. */
import { type Catalogue, type Material, type Medium, mediumById, withstand } from '@coveline/catalogue';
import { sealCompatibility } from '@coveline/engineering';
import type { CleaningStep } from '@coveline/project';

export interface MaterialVerdict {
  readonly material: string;
  readonly name: string;
  readonly parts: readonly string[];
  /** Index of the step. */
  readonly step: number;
  readonly verdict: 'suitable' | 'limited' | 'unsuitable' | 'unknown';
  readonly contact_hyr: number;
  readonly text: string;
  readonly source: string;
}

/** The engineering core's names of seals and jackets, by ids of the catalogue. */
const cores = {
  epdm: 'epdm',
  fkm: 'fkm',
  ffkm: 'ffkm',
  vmq: 'vmq',
  nbr: 'nbr',
  hnbr: 'hnbr',
  ptfe: 'ptfe',
  'jacket-pvc': 'pvcJacket',
  'jacket-pur': 'purJacket',
  'jacket-tpe': 'tpeJacket',
  'jacket-fep': 'fepJacket',
} as const;

/**
 * One verdict a material and step that touches it, worst first. `partsBy`: parts by id of their material.
 * `runs_1yr`: cleanings a year.
 */
export function verdictsOn(
  steps: readonly CleaningStep[],
  partsBy: ReadonlyMap<string, readonly string[]>,
  runs_1yr: number,
  { materials }: Catalogue,
): readonly MaterialVerdict[] {
  const out = steps.flatMap((step, at) => {
    const medium = mediumById.get(step.medium);
    if (!medium || medium.group === 'none' || medium.group === 'water') return [];
    return [...partsBy].map(([id, parts]): MaterialVerdict => {
      const material = materials.get(id);
      return {
        material: id,
        name: material?.name ?? 'material not known',
        parts,
        step: at,
        contact_hyr: (runs_1yr * (step.time_min ?? 0)) / 60,
        ...judge(step, medium, material),
      };
    });
  });
  return out.sort((a, b) => worst.indexOf(a.verdict) - worst.indexOf(b.verdict));
}

const worst = ['unsuitable', 'unknown', 'limited', 'suitable'] as const;

type Judged = Pick<MaterialVerdict, 'verdict' | 'text' | 'source'>;

function judge(step: CleaningStep, medium: Medium, material: Material | undefined): Judged {
  if (!material)
    return {
      verdict: 'unknown',
      text: 'Nobody has said what it is made of.',
      source: 'to be asked of the builder',
    };
  const core = cores[material.id as keyof typeof cores];
  if (core && medium.chemistry) return bySealTable(step, core, medium.chemistry);
  const found = withstand.find(
    (r) =>
      (typeof r.of === 'string' ? r.of === material.family : r.of.includes(material.id)) &&
      r.media.includes(medium.group) &&
      (step.concentration_pct ?? 0) <= r.upTo_pct &&
      (step.temperature_degC ?? 20) <= r.upTo_degC,
  );
  return found
    ? { verdict: found.verdict, text: found.text, source: `${found.citation.clause}, from memory` }
    : {
        verdict: 'unknown',
        text: 'No row covers this strength and temperature: ask the supplier.',
        source: 'not known here',
      };
}

function bySealTable(
  step: CleaningStep,
  material: (typeof cores)[keyof typeof cores],
  medium: string,
): Judged {
  const result = sealCompatibility.run({
    material,
    medium: medium as Parameters<typeof sealCompatibility.run>[0]['medium'],
    ...(step.concentration_pct === undefined ? {} : { concentration_pct: step.concentration_pct }),
    ...(step.temperature_degC === undefined ? {} : { temperature_degC: step.temperature_degC }),
    ...(step.time_min === undefined ? {} : { contact_min: Math.min(step.time_min, 1440) }),
  });
  if (result.kind === 'refused')
    return { verdict: 'unknown', text: `${result.reason}.`, source: 'not known here' };
  const verdict = ({ 2: 'suitable', 1: 'limited', 0: 'unsuitable' } as const)[result.values.verdict];
  return {
    verdict: verdict ?? 'unknown',
    text: result.warnings[0] ?? 'As the table says.',
    source: sealCompatibility.source,
  };
}
