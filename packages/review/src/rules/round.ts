/** What was found not to be as it should on the round. */
import { type AreaClass, type Demand, elements, matters } from '@coveline/catalogue';
import type { Draft, RuleResult } from '../draft.ts';
import { inWords } from '../round/evidence.ts';
import { type RoundItem, type RoundStop, roundOf } from '../round/round.ts';
import type { Scene } from '../scene.ts';

const names = new Map([...elements, ...matters].map((e) => [e.id, e.name]));
const gravestFirst: readonly AreaClass[] = ['food', 'splash', 'nonFood'];

export function roundFindings(scene: Scene): RuleResult {
  const round = roundOf(scene);
  return {
    drafts: round.stops.flatMap((stop) =>
      stop.items.flatMap((item) =>
        item.answer?.state === 'notAsItShould' ? draftOf(scene, stop, item) : [],
      ),
    ),
    settles: [],
    basis: `${round.answered} of ${round.items} items of the round were looked at`,
    notes: [],
  };
}

/** One finding an item, on the first of the requirements that it tells on; none where no requirement is in force. */
function draftOf(scene: Scene, stop: RoundStop, item: RoundItem): Draft[] {
  const demand = item.shows.map((id) => scene.demands.get(id)).find((d) => d !== undefined);
  if (!demand) return [];
  const parts = stop.parts.map((id) => scene.known.indexOf.get(id)!);
  const area = areaOf(scene, demand, parts);
  const found = inWords(item.answer!);
  return [
    {
      demand,
      limit: null,
      status: 'notMet',
      measure: null,
      anchor: item.id,
      places: [],
      parts,
      area,
      title: `${names.get(stop.about)}: ${found === '' ? 'not as it should be' : found}`,
      numbers: [],
      why: item.why,
      harm: 'hinders',
      weight: 1,
      weightLabel: 'finding of the round',
      caveats: [
        `Asked: ${item.text} Found by ${item.answer!.by} on ${item.answer!.on}.`,
        ...(parts.length === 0
          ? []
          : [`The parts are those named as ${names.get(stop.about)!.toLowerCase()}.`]),
      ],
    },
  ];
}

/** The gravest area that both the requirement and the parts know; that of the requirement where no part is known. */
function areaOf(scene: Scene, demand: Demand, parts: readonly number[]): AreaClass {
  const of = new Set(parts.map((p) => scene.parts[p].areaClass));
  const asked = gravestFirst.filter((a) => demand.areas.includes(a));
  return asked.find((a) => of.has(a)) ?? asked[0];
}
