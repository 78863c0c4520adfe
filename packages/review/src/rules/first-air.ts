/** Open containers beside the stream of clean air, and filling nozzles out of first air. */
import type { Demand } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import type { SkyView } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { alike, TheName, theName } from '../names/display.ts';
import { measured } from '../numbers/measured.ts';
import { firstId, firstInForce, partsAt, type Scene } from '../scene.ts';
import { groupedBy } from './unit-of.ts';

/** More of a mouth than this stands beside the stream: it is on its way in or out, not in clean air. */
const mostPast = 0.5;
/** Less than this of other parts before the air of a filling position is left to the smoke study. */
const leastHidden = 0.02;
const leaves =
  /(?<!\p{L})(filled|full|outfeed|discharge|exit|closed|lidding|capping|auslauf|abgef|gef[uü]llt|sortie|salida|uscita|uitvoer)/iu;

interface Seen {
  readonly view: SkyView;
  readonly part: number;
  readonly demand: Demand;
  /** Share of the mouth that the finding is about. */
  readonly share: number;
}

export function firstAir(scene: Scene): RuleResult {
  const views = scene.survey.measures.openSky?.places ?? [];
  const seen = views.flatMap((view) => judged(scene, view));
  return {
    drafts: groupedBy(seen, (s) => s.demand.id).map((group) => draftOf(scene, group)),
    settles: ['infeed-cover', 'out-close', 'noz-height'],
    basis: `Looked against the stream from ${views.length} open ${views.length === 1 ? 'mouth' : 'mouths'}`,
    notes: [],
  };
}

function judged(scene: Scene, view: SkyView): Seen[] {
  const [part] = partsAt(scene, view);
  if (part === undefined) return [];
  if (view.past > mostPast && scene.known.isPack(part)) {
    const { name, assembly } = scene.known.model.parts[part];
    const demand = firstInForce(
      scene,
      [leaves.test([...assembly, name].join(' ')) ? 'out-close' : 'infeed-cover'],
      'food',
    );
    return demand ? [{ view, part, demand, share: view.past }] : [];
  }
  const nozzle = view.interruptedBy.some((i) => isNozzle(scene, i.part));
  const others = view.interruptedBy.filter((i) => !isNozzle(scene, i.part));
  const share = others.reduce((sum, i) => sum + i.share, 0);
  const demand = nozzle && share >= leastHidden ? firstInForce(scene, ['noz-height'], 'food') : null;
  return demand ? [{ view, part, demand, share }] : [];
}

function isNozzle(scene: Scene, id: string): boolean {
  const part = scene.known.indexOf.get(id);
  return part !== undefined && scene.known.is[part]?.noun === 'nozzle';
}

function draftOf(scene: Scene, group: readonly Seen[]): Draft {
  const sorted = [...group].sort((a, b) => b.share - a.share || (a.view.id < b.view.id ? -1 : 1));
  const [{ demand, share, part, view }] = sorted;
  const containers = [...new Set(sorted.map((s) => s.part))];
  const name = alike(theName(scene.known.model.parts[part].name), containers.length);
  const percent = formatQuantity(share * 100, '%', { digits: 2 });
  const others = view.interruptedBy.filter((i) => !isNozzle(scene, i.part));
  const inTheWay = others.flatMap((i) => scene.known.indexOf.get(i.part) ?? []).slice(0, 3);
  const isFilling = demand.id === 'noz-height';
  return {
    demand,
    limit: null,
    status: 'notShown',
    measure: 'openSky',
    anchor: `air|${firstId(scene, containers)}`,
    places: sorted.map((s) => s.view),
    parts: isFilling ? [...inTheWay, ...containers] : containers,
    area: 'food',
    title: isFilling
      ? `${TheName(scene.known.model.parts[inTheWay[0]].name)} and what else is in the way take ${percent} of the first air where ${name} is filled`
      : `${TheName(scene.known.model.parts[part].name)}${containers.length > 1 ? ` (${containers.length} alike)` : ''} stands open beside the stream of clean air: ${percent} of its mouth`,
    numbers: [
      measured(
        isFilling ? 'Hidden from the filter, nozzle left out' : 'Beside the stream',
        share * 100,
        '%',
        'rays against the stream from the mouth to the filter face, by area',
      ),
    ],
    why: isFilling
      ? 'Air that has washed round brackets and pipes reaches the nozzle and the stream of product before it reaches the container.'
      : 'Room air with whatever it carries sinks into an open container that nothing covers.',
    harm: 'falls',
    weight: share * 100,
    weightLabel: 'percent of the mouth',
    caveats: [
      ...sorted.flatMap((s) => s.view.caveats ?? []),
      'Straight rays, not flow: a smoke study shows how the air goes.',
      'Mouths and filter faces are those of the site, proposed or set by people.',
    ],
  };
}
