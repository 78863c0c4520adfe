/** Area class, material, finish and joint of every part: proposed from names, colours and position. */
import { builtIn, type Catalogue } from '@coveline/catalogue';
import type { Model } from '@coveline/model';
import type { PartChange, PartData } from '@coveline/project';
import type { SurveyResult } from '@coveline/survey';
import { proposeArea } from './area.ts';
import { neighboursOf, proposeJoint } from './joint.ts';
import { type Known, knowledgeOf } from './known.ts';
import { materialProposals } from './material.ts';

/**
 * Proposals for every part of a model with +Z up, in the order of the model, each with its reasons in sentences. The
 * survey, where there is one, tells which parts touch.
 */
export function proposeParts(model: Model, survey?: SurveyResult): readonly PartData[] {
  return proposeFor(knowledgeOf(model), survey, builtIn);
}

export function proposeFor(
  known: Known,
  survey: SurveyResult | undefined,
  catalogue: Catalogue,
): readonly PartData[] {
  const materialOf = materialProposals(known, catalogue);
  const touching = neighboursOf(known, survey);
  return known.model.parts.map((part, p) => {
    const area = proposeArea(known, p);
    const material = materialOf(p);
    const joint = proposeJoint(known, p, touching);
    const finish = finishInName(part.name);
    return {
      partId: part.id,
      areaClass: area.value,
      material: material.value,
      finish_Ra_um: finish,
      joint: joint.value,
      setByUser: [],
      reasons: [
        area.reason,
        material.reason,
        finish === null
          ? 'Finish not known: to be measured, or taken from the drawing.'
          : `Finish Ra ${finish} µm: its name says so.`,
        joint.reason,
      ],
    };
  });
}

/** "Ra 0.8", "Ra0,4". */
function finishInName(name: string): number | null {
  const hit = /\bRa ?(\d+(?:[.,]\d+)?)/.exec(name);
  return hit ? Number(hit[1].replace(',', '.')) : null;
}

/** What people set goes before what is proposed. Changes of parts that the model does not have are left out. */
export function withChanges(
  proposed: readonly PartData[],
  changes: Readonly<Record<string, PartChange>>,
): readonly PartData[] {
  return proposed.map((part) => {
    const change = changes[part.partId];
    if (!change) return part;
    const fields = (['areaClass', 'material', 'finish_Ra_um', 'joint'] as const).filter(
      (f) => change[f] !== undefined,
    );
    const set = Object.fromEntries(fields.map((f) => [f, change[f]])) as Partial<PartData>;
    return { ...part, ...set, setByUser: fields };
  });
}
