/** Closed hollows whose tightness has to be shown, open ends, and blind holes. */
import type { AreaClass } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import type { BlindChannel, ClosedHollow, Pool } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { boxVolume, overlap } from '../geometry/extent.ts';
import { liesIn } from '../geometry/lies-in.ts';
import { alike, some, TheName, theName } from '../names/display.ts';
import { measured } from '../numbers/measured.ts';
import {
  elementOf,
  firstId,
  firstInForce,
  isFastener,
  limitOf,
  partsAt,
  type Scene,
  strictestArea,
  twinKey,
} from '../scene.ts';
import { openMembers } from './open-members.ts';

/** Air inside these is meant to be there: it is asked by degree of protection. */
const closedByNature = new Set([
  'drive',
  'enclosure',
  'control',
  'sensor',
  'cable',
  'pneumatic',
  'fastener',
  'bearing',
]);
/** The air in lines and vessels is the way of product or water. */
const lines = new Set(['pipe', 'valve', 'pump', 'spray', 'hose', 'tank', 'hopper', 'nozzle']);
const isOfLine = (scene: Scene, p: number) => lines.has(elementOf(scene, p) ?? '');
/** A blind channel at least this deep for its mouth, with at least this mouth, is a tube with an open end. */
const tubeRatio = 3;
const tubeMouth_mm = 8;
/** What is longer is the line itself, ending where something is drawn shut. */
const longestLeg = 10;

const deadEndOf: Partial<Record<string, string>> = {
  pipe: 'pipe-dead',
  valve: 'pipe-dead',
  pump: 'pipe-dead',
  tank: 'tank-nozzle',
  sensor: 'sens-flush',
};

export function hollows(scene: Scene): RuleResult {
  const measures = scene.survey.measures.hollows;
  const closed = measures?.closed ?? [];
  const blind = measures?.blind ?? [];
  return {
    drafts: [...closedHollows(scene, closed), ...openMembers(scene), ...blindChannels(scene, blind)],
    settles: ['hollow-sealed', 'hollow-open', 'hollow-blind', 'pipe-dead', 'tank-nozzle', 'sens-flush'],
    basis: `${closed.length} closed hollows and ${blind.length} blind channels found on ${scene.parts.length} parts`,
    notes: [],
  };
}

/** What is closed in the model is not thereby tight: one finding per area class, and one per joined body. */
function closedHollows(scene: Scene, closed: readonly ClosedHollow[]): Draft[] {
  const ofMembers = closed.flatMap((hollow) => {
    const parts = partsAt(scene, hollow);
    if (parts.length === 0 || parts.some((p) => scene.known.isPack(p) || isOfLine(scene, p))) return [];
    const holder = holderOf(scene, hollow, parts);
    if (closedByNature.has(elementOf(scene, holder) ?? '')) return [];
    return [
      { hollow, parts: [holder, ...parts.filter((p) => p !== holder)], area: strictestArea(scene, parts) },
    ];
  });
  type Member = (typeof ofMembers)[number];
  const groups = new Map<string, Member[]>();
  for (const m of ofMembers) {
    const built = m.parts.length > 1 && !m.parts.some((p) => scene.parts[p].joint === 'welded');
    const key = `${m.area}|${built ? `built|${twinKey(scene, m.parts[0])}` : 'whole'}`;
    groups.set(key, [...(groups.get(key) ?? []), m]);
  }
  return [...groups].flatMap(([key, group]) => {
    const draft = closedDraft(scene, key.includes('|built|'), group);
    return draft ? [draft] : [];
  });
}

function closedDraft(
  scene: Scene,
  built: boolean,
  group: readonly { hollow: ClosedHollow; parts: readonly number[]; area: AreaClass }[],
): Draft | null {
  const sorted = [...group].sort(
    (a, b) => b.hollow.volume_mL - a.hollow.volume_mL || (a.hollow.id < b.hollow.id ? -1 : 1),
  );
  const { area, parts } = sorted[0];
  const demand = firstInForce(scene, ['hollow-sealed'], area);
  if (!demand) return null;
  const all = [...new Set(sorted.flatMap((m) => m.parts))];
  const total = sorted.reduce((sum, m) => sum + m.hollow.volume_mL, 0);
  const pressed = all.some((p) => scene.parts[p].joint === 'pressed' || scene.parts[p].joint === 'loose');
  const names = [...new Set(all.map((p) => theName(scene.known.model.parts[p].name)))];
  const plugs = [
    ...new Set(all.filter((p) => p !== parts[0]).map((p) => theName(scene.known.model.parts[p].name))),
  ];
  const volume = formatQuantity(total, 'mL', { digits: 3 });
  return {
    demand,
    limit: null,
    status: built && pressed ? 'notMet' : 'notShown',
    measure: 'hollows',
    anchor: built
      ? firstId(
          scene,
          sorted.map((m) => m.parts[0]),
        )
      : `whole|${area}`,
    places: sorted.map((m) => m.hollow),
    parts: all,
    area,
    title: built
      ? `${alike(TheName(scene.known.model.parts[parts[0]].name), new Set(sorted.map((m) => m.parts[0])).size)} is hollow and closed only by what is put on it: ${some(plugs)}`
      : `${group.length === 1 ? '1 hollow is' : `${group.length} hollows are`} closed in the model, ${volume} of air; whether the welds are tight is not shown: ${some(names)}`,
    numbers: [
      measured(
        'Air enclosed',
        total,
        'mL',
        'volume of air that no path joins with the outside: what could fill with water at most',
      ),
    ],
    why: 'Through a pinhole or a plug the body breathes water in as it cools after hot cleaning, and drips it out again for days.',
    harm: built ? 'keeps' : 'hinders',
    weight: total,
    weightLabel: 'mL enclosed',
    caveats: [
      ...sorted.flatMap((m) => m.hollow.caveats ?? []),
      'The model shows a closed body. It does not show the weld: knock, shake, look for drips after hosing, or test for leaks.',
    ],
  };
}

/** The part that the hollow is in: the smallest one whose box holds it, else the largest of all. */
function holderOf(scene: Scene, { bounds_mm: [low, high] }: ClosedHollow, parts: readonly number[]): number {
  const { extents } = scene.known;
  const holds = parts.filter((p) =>
    [0, 1, 2].every((i) => extents[p].low[i] <= low[i] + 1 && extents[p].high[i] >= high[i] - 1),
  );
  const bySize = (list: readonly number[]) =>
    [...list].sort((a, b) => boxVolume(extents[a]) - boxVolume(extents[b]) || a - b);
  return bySize(holds)[0] ?? bySize(parts).at(-1)!;
}

function blindChannels(scene: Scene, blind: readonly BlindChannel[]): Draft[] {
  const open = blind.flatMap((channel) => {
    const parts = partsAt(scene, channel);
    if (parts.length === 0 || parts.some((p) => scene.known.isPack(p) || isFastener(scene, p))) return [];
    if (isFilled(scene, channel)) return [];
    const area = strictestArea(scene, parts);
    // A line that ends at a valve drawn shut is no hollow member.
    const ofLine = parts.some((p) => isOfLine(scene, p));
    const { ratio } = worstBore(channel);
    if (ofLine && (area !== 'food' || ratio > longestLeg)) return [];
    const tube = ratio >= tubeRatio && channel.mouth_mm >= tubeMouth_mm;
    const dead = parts.map((p) => deadEndOf[elementOf(scene, p) ?? '']).find((id) => id !== undefined);
    const demand = firstInForce(
      scene,
      area === 'food' && dead ? [dead] : [tube ? 'hollow-open' : undefined, 'hollow-blind'],
      area,
    );
    if (!demand) return [];
    const limit = limitOf(demand, 'ratio', area);
    if (limit?.atMost !== undefined && ratio <= limit.atMost) return [];
    return [{ channel, parts, area, demand, limit }];
  });
  type Channel = (typeof open)[number];
  const groups = new Map<string, Channel[]>();
  for (const c of open) {
    const key = `${c.demand.id}|${twinKey(scene, c.parts[0])}`;
    groups.set(key, [...(groups.get(key) ?? []), c]);
  }
  return [...groups.values()].map((group) => {
    const sorted = [...group].sort(
      (a, b) =>
        worstBore(b.channel).ratio - worstBore(a.channel).ratio || (a.channel.id < b.channel.id ? -1 : 1),
    );
    const { channel, parts, area, demand, limit } = sorted[0];
    const { depth_mm, width_mm, ratio } = worstBore(channel);
    const isStepped = width_mm !== channel.mouth_mm;
    const all = [...new Set(sorted.flatMap((c) => c.parts))];
    const isTube = demand.id === 'hollow-open';
    const isLeg = deadLegs.has(demand.id);
    const name = TheName(scene.known.model.parts[parts[0]].name);
    const [one, many] = isTube
      ? ['a hollow with an open end', 'hollows with an open end']
      : isLeg
        ? ['a dead end', 'dead ends']
        : ['a blind hole', 'blind holes'];
    const what = group.length === 1 ? one : `${group.length} ${many}`;
    const stays = poolsIn(
      scene,
      sorted.map((c) => c.channel),
    ).reduce((sum, p) => sum + p.volume_mL, 0);
    return {
      demand,
      limit,
      status: 'notMet' as const,
      measure: 'hollows' as const,
      anchor: `blind|${firstId(scene, all)}`,
      places: sorted.map((c) => c.channel),
      parts: all,
      area,
      title: `${name} has ${what}${group.length > 1 ? ', the deepest' : ''} ${formatQuantity(depth_mm, 'mm', { digits: 3 })} deep behind a ${isStepped ? 'step to' : 'mouth of'} ${formatQuantity(width_mm, 'mm', { digits: 3 })}: ${ratio.toFixed(1)} times as deep as wide`,
      numbers: [
        measured(
          'Depth',
          depth_mm,
          'mm',
          channel.from === 'cad'
            ? 'along the axis of the CAD faces, from the mouth'
            : 'along the channel, from the mouth',
        ),
        isStepped
          ? measured('Bore', width_mm, 'mm', 'of the piece that is the deepest for its width')
          : measured('Mouth', width_mm, 'mm', 'clear width at the mouth'),
        measured(
          'Depth over width',
          ratio,
          '1',
          isStepped ? 'depth behind the step / bore' : 'depth / mouth',
        ),
        ...(stays > 0
          ? [measured('Stays after draining', stays, 'mL', 'standing liquid in it, all together')]
          : []),
      ],
      why: isLeg
        ? 'Cleaning liquid does not turn over in it: soil stays, strength and temperature are not reached at its end, and what grows there seeds every batch.'
        : 'Liquid and soil get in, nothing gets them out, and no one can look inside.',
      harm: 'keeps' as const,
      weight: ratio,
      weightLabel: 'times as deep as wide',
      caveats: [
        ...sorted.flatMap((c) => c.channel.caveats ?? []),
        ...(isLeg
          ? [
              'Depth counts from the mouth at the inner wall of the main. Rules that count from the axis of the main add half its bore; state the rule with the number.',
            ]
          : []),
      ],
    };
  });
}

const deadLegs = new Set(Object.values(deadEndOf));

/** The deepest for its width: the whole channel behind its mouth, or a narrower piece of a stepped one. */
function worstBore({ depth_mm, mouth_mm, ratio, inner }: BlindChannel) {
  return inner
    ? { depth_mm: inner.depth_mm, width_mm: inner.bore_mm, ratio: inner.ratio }
    : { depth_mm, width_mm: mouth_mm, ratio };
}

/** Standing liquid in the channels. */
function poolsIn(scene: Scene, channels: readonly BlindChannel[]): readonly Pool[] {
  return (scene.survey.measures.standingLiquid?.places ?? []).filter((pool) =>
    channels.some((channel) => liesIn(pool, channel)),
  );
}

/** A screw in its hole fills it. */
function isFilled(scene: Scene, { bounds_mm: [low, high] }: BlindChannel): boolean {
  return scene.known.extents.some((extent, p) => isFastener(scene, p) && overlap(extent, { low, high }));
}
