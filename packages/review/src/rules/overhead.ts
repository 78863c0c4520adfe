/** What hangs straight above open containers, and what breaks the stream of clean air. */
import type { Demand } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import type { Draft, RuleResult } from '../draft.ts';
import { type OverMouth, overMouths } from '../geometry/over-mouths.ts';
import { TheName, theName } from '../names/display.ts';
import type { Noun } from '../names/nouns.ts';
import { measured } from '../numbers/measured.ts';
import { firstId, firstInForce, limitOf, type Scene } from '../scene.ts';
import { groupedBy, unitOf } from './unit-of.ts';

/** These have to be above the container: product comes from them, air comes through them, lids are set by them. */
const belongsThere: ReadonlySet<Noun> = new Set([
  'nozzle',
  'dosing',
  'hopper',
  'pipe',
  'valve',
  'pump',
  'filter',
  'closing',
  'lid',
  'spray',
  'fastener',
  'gasket',
]);
/** What covers a mouth altogether is a roof. */
const roof = 0.97;

interface Above extends OverMouth {
  readonly demand: Demand;
}

export function overhead(scene: Scene): RuleResult {
  const filter = filterHeight(scene);
  const inStream = scene.survey.measures.openSky?.places.some((v) => v.distance_mm !== undefined) ?? false;
  const { over, mouths, basis } = overMouths(scene);
  const above: Above[] = [];
  for (const one of over) {
    if (filter !== null && one.z >= filter - 1) continue;
    const demand = demandOn(scene, one, filter !== null || inStream);
    if (demand) above.push({ ...one, demand });
  }
  // Bar, lens and rods of one lamp are one obstacle.
  const groups = groupedBy(above, (a) => `${a.demand.id}|${unitOf(scene, a.part)}`);
  return {
    drafts: groups.map((group) => draftOf(scene, group)),
    settles: ['frame-overhead', 'drive-over', 'cable-none-over', 'hood-first', 'bear-drip', 'hood-light'],
    basis,
    notes: mouths === 0 ? [`${basis}: what hangs above product was not looked for.`] : [],
  };
}

/** Height of the lowest filter, mm; null without one. Above it lies the unclean side of the hood. */
function filterHeight(scene: Scene): number | null {
  const { is, extents } = scene.known;
  const lows = extents
    .filter((_, p) => is[p]?.noun === 'filter' && is[p].from === 'name')
    .map((e) => e.low[2]);
  return lows.length === 0 ? null : Math.min(...lows);
}

function demandOn(scene: Scene, { part, share }: OverMouth, underFilter: boolean): Demand | null {
  const is = scene.known.is[part];
  if (is && is.from === 'name' && belongsThere.has(is.noun)) return null;
  const byElement: Partial<Record<string, string>> = {
    drive: 'drive-over',
    cable: 'cable-none-over',
    bearing: 'bear-drip',
  };
  const special = is?.from === 'name' ? byElement[is.element] : undefined;
  if (!special && share > roof && !underFilter) return null;
  return firstInForce(
    scene,
    [
      special,
      underFilter ? (is?.noun === 'lamp' ? 'hood-light' : 'hood-first') : undefined,
      'frame-overhead',
    ],
    'food',
  );
}

/**
 * The mouth that the group covers most, by its container. Shares that the survey found belong to different parts of
 * the mouth, so those of one obstacle add up.
 */
function worstOf(group: readonly Above[], share: (a: Above) => number): readonly [number, number] {
  const byContainer = new Map<number, number>();
  for (const a of group) {
    const before = byContainer.get(a.container) ?? 0;
    byContainer.set(a.container, a.place ? Math.min(1, before + share(a)) : Math.max(before, share(a)));
  }
  return [...byContainer].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0];
}

function draftOf(scene: Scene, group: readonly Above[]): Draft {
  const { demand } = group[0];
  const isAir = demand.id === 'hood-first' || demand.id === 'hood-light';
  const shareOf = (a: Above) => (isAir ? (a.hides ?? a.share) : a.share);
  const sorted = [...group].sort(
    (a, b) => shareOf(b) - shareOf(a) || a.container - b.container || a.part - b.part,
  );
  const [{ part, height_mm }] = sorted;
  const [container, share] = worstOf(group, shareOf);
  const containers = [...new Set(sorted.map((a) => a.container))];
  const parts = [...new Set(sorted.map((a) => a.part))];
  const places = [...new Set(sorted.flatMap((a) => (a.place ? [a.place] : [])))];
  const name = TheName(scene.known.model.parts[part].name);
  const jar = theName(scene.known.model.parts[container].name);
  const percent = `${Math.max(1, Math.round(share * 100))} %`;
  const high = formatQuantity(height_mm, 'mm', { digits: 3 });
  const more = containers.length > 1 ? ` (${containers.length} containers)` : '';
  return {
    demand,
    limit:
      limitOf(demand, isAir ? 'shareHidden' : 'shareAbove', 'food') ??
      limitOf(demand, 'drivesAbove', 'food') ??
      limitOf(demand, 'cablesAbove', 'food'),
    status: 'notMet',
    measure: 'overhead',
    anchor: firstId(scene, parts),
    places,
    parts: [...parts, ...containers],
    area: 'food',
    title: isAir
      ? `${name} hides ${percent} of the mouth of ${jar} from the filter, ${high} above it${more}`
      : `${name} hangs ${high} above the open mouth of ${jar}${more}`,
    numbers: [
      measured(
        'Share of the mouth below it',
        share * 100,
        '%',
        isAir && group.some((a) => a.hides !== undefined)
          ? 'rays against the stream from the mouth to the filter face, by area'
          : 'looks straight up from the mouth, by area; what falls stops at the first thing below it',
      ),
      measured('Height above the mouth', height_mm, 'mm', 'least height of the part above the mouth'),
    ],
    why: whyOf(demand, theName(scene.known.model.parts[part].name), jar),
    harm: 'falls',
    weight: share * 100,
    weightLabel: 'percent of the mouth',
    caveats: [
      places.length > 0
        ? 'Where the mouth is, and how wide, was proposed from the model or set by people.'
        : 'The open container is known by its name, its mouth by the points of its rim.',
      ...(isAir ? ['Straight rays, not flow: a smoke study shows how the air goes round it.'] : []),
    ],
  };
}

function whyOf(demand: Demand, name: string, jar: string): string {
  switch (demand.id) {
    case 'hood-first':
    case 'hood-light':
      return `Air that has washed round ${name} is no first air: what sheds from it, its wake and the film left on it are carried into ${jar}.`;
    case 'drive-over':
      return `Oil, grease, wear and dust of the drive fall into ${jar} when a seal leaks; nobody sees it from below.`;
    case 'cable-none-over':
      return `Dust, cable ties and pieces of jacket fall from it into ${jar}, and nobody cleans between cables overhead.`;
    default:
      return `Condensate, loose parts and soil fall from it into ${jar}.`;
  }
}
