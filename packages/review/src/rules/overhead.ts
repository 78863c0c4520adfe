/** What hangs straight above open containers, and what breaks the stream of clean air. */
import type { Demand } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import type { Draft, RuleResult } from '../draft.ts';
import type { Hanging } from '../geometry/mouth.ts';
import { TheName, theName } from '../names/display.ts';
import type { Noun } from '../names/nouns.ts';
import { measured } from '../numbers/measured.ts';
import { firstId, firstInForce, limitOf, type Scene, twinKey } from '../scene.ts';

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

interface Above {
  readonly part: number;
  readonly container: number;
  readonly hanging: Hanging;
  readonly demand: Demand;
}

export function overhead(scene: Scene): RuleResult {
  const filter = filterHeight(scene);
  const above: Above[] = [];
  for (const { mouth, above: hangings } of scene.known.mouths) {
    for (const hanging of hangings) {
      const z = mouth.at_mm[2] + hanging.height_mm;
      if (filter !== null && z >= filter - 1) continue;
      const demand = demandOn(scene, hanging, filter !== null);
      if (demand) above.push({ part: hanging.part, container: mouth.part, hanging, demand });
    }
  }
  const groups = new Map<string, Above[]>();
  for (const a of above) {
    const key = `${a.demand.id}|${unitOf(scene, a.part)}`;
    groups.set(key, [...(groups.get(key) ?? []), a]);
  }
  const count = scene.known.mouths.length;
  return {
    drafts: [...groups.values()].map((group) => draftOf(scene, group)),
    settles: ['frame-overhead', 'drive-over', 'cable-none-over', 'hood-first', 'bear-drip', 'hood-light'],
    basis:
      count === 0
        ? 'No part is named as an open container, so nothing was looked for above one'
        : `Looked straight up from ${count} open ${count === 1 ? 'container' : 'containers'}, known by their names`,
    notes:
      count === 0
        ? ['No open container was recognised by name: what hangs above product was not looked for.']
        : [],
  };
}

/** Bar, lens and rods of one lamp are one obstacle: parts of one assembly, unless it is the whole machine. */
function unitOf(scene: Scene, part: number): string {
  const { assembly } = scene.known.model.parts[part];
  return assembly.length >= 2 ? assembly.join('/') : twinKey(scene, part);
}

/** Height of the lowest filter, mm; null without one. Above it lies the unclean side of the hood. */
function filterHeight(scene: Scene): number | null {
  const { is, extents } = scene.known;
  const lows = extents
    .filter((_, p) => is[p]?.noun === 'filter' && is[p].from === 'name')
    .map((e) => e.low[2]);
  return lows.length === 0 ? null : Math.min(...lows);
}

function demandOn(scene: Scene, { part, share }: Hanging, underFilter: boolean): Demand | null {
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

function draftOf(scene: Scene, group: readonly Above[]): Draft {
  const sorted = [...group].sort(
    (a, b) => b.hanging.share - a.hanging.share || a.container - b.container || a.part - b.part,
  );
  const { demand, part, hanging, container } = sorted[0];
  const containers = [...new Set(sorted.map((a) => a.container))];
  const parts = [...new Set(sorted.map((a) => a.part))];
  const name = TheName(scene.known.model.parts[part].name);
  const jar = theName(scene.known.model.parts[container].name);
  const percent = `${Math.max(1, Math.round(hanging.share * 100))} %`;
  const high = formatQuantity(hanging.height_mm, 'mm', { digits: 3 });
  const isAir = demand.id === 'hood-first' || demand.id === 'hood-light';
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
    places: [],
    parts: [...parts, ...containers],
    area: 'food',
    title: isAir
      ? `${name} hides ${percent} of the mouth of ${jar} from the filter, ${high} above it${more}`
      : `${name} hangs ${high} above the open mouth of ${jar}${more}`,
    numbers: [
      measured(
        'Share of the mouth below it',
        hanging.share * 100,
        '%',
        'rays straight up from points spread over the mouth, taken as the ellipse inside its rim',
      ),
      measured('Height above the mouth', hanging.height_mm, 'mm', 'least height of the part above the mouth'),
    ],
    why: whyOf(demand, theName(scene.known.model.parts[part].name), jar),
    harm: 'falls',
    weight: hanging.share * 100,
    weightLabel: 'percent of the mouth',
    caveats: [
      'The open container is known by its name, its mouth by the points of its rim.',
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
