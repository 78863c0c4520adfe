/** Inner walls of vessels that none of their own nozzles sees. Geometry finds candidates only: film and splash wet more. */
import { formatQuantity } from '@coveline/quantity';
import type { JetNozzle, JetShadow } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { some, TheName, theName } from '../names/display.ts';
import { measured } from '../numbers/measured.ts';
import { elementOf, firstInForce, partsAt, type Scene } from '../scene.ts';

const vessels = new Set(['hopper', 'tank']);
/** A spray head hangs at most this far above the rim of the vessel that it is meant for. */
const aboveRim_mm = 200;

export function jets(scene: Scene): RuleResult {
  const { jetReach } = scene.survey.measures;
  const nozzles = jetReach?.nozzles ?? [];
  const sprayed = scene.parts.flatMap((_, p) => (nozzlesIn(scene, p).length > 0 ? [p] : []));
  const placed = new Set(sprayed.flatMap((p) => nozzlesIn(scene, p).map((n) => n.id)));
  const free = nozzles.filter((n) => !placed.has(n.id));
  return {
    drafts: sprayed.flatMap((vessel) => draftOf(scene, vessel)),
    settles: ['spray-cover', 'tank-spray'],
    basis:
      nozzles.length === 0
        ? 'No nozzle is set or proposed, so nothing was looked for'
        : `${nozzles.length} ${nozzles.length === 1 ? 'nozzle sees' : 'nozzles see'} ${formatQuantity(jetReach!.seen_cm2, 'cm2', { digits: 3 })}`,
    notes:
      free.length === 0
        ? []
        : [
            `${free.length} of ${nozzles.length} nozzles stand in no hopper or tank that is known by its name. Which faces they are meant for is not known; what no nozzle sees can be painted on the model.`,
          ],
  };
}

/** Nozzles of parts that stand in a vessel, or hang just above its rim. */
export function nozzlesIn(scene: Scene, vessel: number): readonly JetNozzle[] {
  const { known } = scene;
  if (!vessels.has(elementOf(scene, vessel) ?? '') || known.isPack(vessel)) return [];
  const { low, high } = known.extents[vessel];
  return (scene.survey.measures.jetReach?.nozzles ?? []).filter(({ id, seen_cm2 }) => {
    const part = known.indexOf.get(id.slice(id.indexOf(':') + 1));
    if (part === undefined || part === vessel || seen_cm2 === 0) return false;
    const head = known.extents[part];
    const middle = [0, 1, 2].map((i) => (head.low[i] + head.high[i]) / 2);
    return [0, 1, 2].every((i) => middle[i] > low[i] && middle[i] < high[i] + (i === 2 ? aboveRim_mm : 0));
  });
}

function draftOf(scene: Scene, vessel: number): Draft[] {
  const nozzles = nozzlesIn(scene, vessel);
  const own = new Set([scene.parts[vessel].partId, ...nozzles.map((n) => n.id.slice(n.id.indexOf(':') + 1))]);
  // What faces away from every nozzle is the outside of the vessel.
  const shadows = (scene.survey.measures.jetReach?.places ?? [])
    .filter((s) => s.because !== 'turned' && partsAt(scene, s).includes(vessel))
    .sort((a, b) => b.area_cm2 - a.area_cm2 || (a.id < b.id ? -1 : 1));
  const area = scene.parts[vessel].areaClass;
  const ids = [elementOf(scene, vessel) === 'tank' ? 'tank-spray' : undefined, 'spray-cover'];
  const demand = firstInForce(scene, ids, area);
  if (shadows.length === 0 || !demand) return [];
  const sum = shadows.reduce((total, s) => total + s.area_cm2, 0);
  const { name } = scene.known.model.parts[vessel];
  return [
    {
      demand,
      limit: null,
      status: 'notShown',
      measure: 'jetReach',
      anchor: `jet|${scene.parts[vessel].partId}`,
      places: shadows,
      parts: [vessel, ...shadowing(scene, shadows, own)],
      area,
      title: `${TheName(name)} has ${formatQuantity(sum, 'cm2', { digits: 3 })} of wall that its spray does not see${by(scene, shadows, own)}`,
      numbers: [
        measured(
          'Not seen',
          sum,
          'cm2',
          'straight lines from the nozzles, within cone and range; wall that faces away is left out',
        ),
        measured('Largest patch', shadows[0].area_cm2, 'cm2', 'patches that join count as one'),
        measured('Nozzles in it', nozzles.length, '1', 'proposed from names, or set by people'),
      ],
      why: 'Where no jet strikes, only the film that runs down cleans; above it, and behind what throws the shadow, soil dries on.',
      harm: 'hinders',
      weight: sum,
      weightLabel: 'cm² not seen',
      caveats: [
        ...shadows.flatMap((s) => s.caveats ?? []),
        'Straight jets from points: the film that runs down, splash and the turning of the device wet more. A wetting test shows it.',
      ],
    },
  ];
}

function shadowing(scene: Scene, shadows: readonly JetShadow[], own: ReadonlySet<string>): number[] {
  const ids = new Set(shadows.filter((s) => s.because === 'shaded').flatMap((s) => s.shadedBy.slice(0, 1)));
  return [...ids]
    .filter((id) => !own.has(id))
    .flatMap((id) => scene.known.indexOf.get(id) ?? [])
    .slice(0, 3);
}

function by(scene: Scene, shadows: readonly JetShadow[], own: ReadonlySet<string>): string {
  const names = shadowing(scene, shadows, own).map((p) => theName(scene.known.model.parts[p].name));
  return names.length === 0 ? '' : `, in the shadow of ${some([...new Set(names)], 2)}`;
}
