/** Bare threads: at feet, on the product side, and ends that stand out beyond a nut. Geometry finds candidates only. */
import type { AreaClass, Demand } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import type { Thread } from '@coveline/survey';
import type { Draft } from '../draft.ts';
import { alike, TheName, theName } from '../names/display.ts';
import { derived, input, measured } from '../numbers/measured.ts';
import { belongsToFoot } from '../parts/feet.ts';
import { firstId, firstInForce, limitOf, partsAt, type Scene, twinKey } from '../scene.ts';
import { groupedBy, unitOf } from './unit-of.ts';

/** A chamfer and a washer's play are no bare thread. */
const leastBare_mm = 1;

/** Coarse pitches by diameter, mm: ISO 261. For threads that are drawn as plain cylinders. */
const coarse = new Map([
  [3, 0.5],
  [4, 0.7],
  [5, 0.8],
  [6, 1],
  [8, 1.25],
  [10, 1.5],
  [12, 1.75],
  [16, 2],
  [20, 2.5],
  [24, 3],
]);

interface Bare {
  readonly thread: Thread;
  readonly part: number;
  readonly area: AreaClass;
  readonly demand: Demand;
}

export function bareThreads(scene: Scene, threads: readonly Thread[]): Draft[] {
  const bare = threads.flatMap((thread) => judged(scene, thread));
  return groupedBy(bare, (b) => `${b.demand.id}|${b.area}|${unitOf(scene, b.part)}`).map((group) =>
    draftOf(scene, group),
  );
}

function judged(scene: Scene, thread: Thread): Bare[] {
  const [part] = partsAt(scene, thread);
  // A name is a hint: it raises a question and makes no finding.
  if (part === undefined || thread.from === 'name' || thread.exposed_mm < leastBare_mm) return [];
  const area = scene.parts[part].areaClass;
  const atFoot = belongsToFoot(scene, part) && !thread.inside;
  const ids = [
    atFoot ? 'feet-thread' : undefined,
    'fast-none-food',
    // A hole with a thread is judged as a blind channel; an end that stands out is not.
    thread.inside ? undefined : 'fast-protrude',
  ];
  const demand = firstInForce(scene, ids, area);
  if (!demand) return [];
  const limit = demand.id === 'fast-protrude' ? limitOf(demand, 'threadsBeyondNut', area) : null;
  const pitch = pitchOf(thread);
  if (limit?.atMost !== undefined && pitch !== null && thread.exposed_mm <= limit.atMost * pitch) return [];
  return [{ thread, part, area, demand }];
}

const pitchOf = ({ pitch_mm, diameter_mm }: Thread): number | null =>
  pitch_mm ?? coarse.get(Math.round(diameter_mm)) ?? null;

function draftOf(scene: Scene, group: readonly Bare[]): Draft {
  const sorted = [...group].sort(
    (a, b) => b.thread.exposed_mm - a.thread.exposed_mm || (a.thread.id < b.thread.id ? -1 : 1),
  );
  const [{ thread, part, area, demand }] = sorted;
  const parts = [...new Set(sorted.map((b) => b.part))];
  const total = sorted.reduce((sum, b) => sum + b.thread.exposed_mm, 0);
  const pitch = pitchOf(thread);
  const { name } = scene.known.model.parts[part];
  const twins = parts.every((p) => twinKey(scene, p) === twinKey(scene, part));
  const who = twins
    ? alike(TheName(name), parts.length)
    : `${TheName(name)} and ${parts.length - 1} more beside it`;
  const long = formatQuantity(thread.exposed_mm, 'mm', { digits: 3 });
  return {
    demand,
    limit:
      limitOf(demand, 'threadsBeyondNut', area) ??
      limitOf(demand, 'bareThreads', area) ??
      limitOf(demand, 'coveredTravel', area),
    status: 'notShown',
    measure: 'fasteners',
    anchor: `thread|${firstId(scene, parts)}`,
    places: sorted.map((b) => b.thread),
    parts,
    area,
    title: `${who} ${parts.length > 1 && !twins ? 'show' : 'shows'} up to ${long} of bare thread`,
    numbers: [
      measured(
        'Bare thread, the longest',
        thread.exposed_mm,
        'mm',
        'length of the thread that stands free in the air',
      ),
      measured('Bare thread, all together', total, 'mm', `sum over ${sorted.length} threads`),
      ...(pitch === null
        ? []
        : [
            derived(
              'Turns of the longest',
              thread.exposed_mm / pitch,
              '1',
              'n = L / p',
              [
                input('L', 'bare thread', thread.exposed_mm, 'mm'),
                input('p', thread.pitch_mm ? 'pitch' : 'coarse pitch by ISO 261', pitch, 'mm'),
              ],
              thread.pitch_mm ? 'the pitch is read off the model' : 'if it is a thread of coarse pitch',
            ),
          ]),
    ],
    why: whyOf(demand, theName(name)),
    harm: 'keeps',
    weight: total,
    weightLabel: 'mm of bare thread',
    caveats: [
      ...sorted.flatMap((b) => b.thread.caveats ?? []),
      ...(demand.id === 'fast-protrude'
        ? ['What is bare between two parts and what stands out beyond a nut are counted alike.']
        : []),
    ],
  };
}

function whyOf({ id }: Demand, name: string): string {
  switch (id) {
    case 'fast-none-food':
      return `The turns of ${name} hold product where no brush gets to the ground of them; what grows there is washed out into the next batch.`;
    case 'feet-thread':
      return `Splash from the floor fills the turns of ${name}; they are never brushed out, and whoever levels the machine carries it on.`;
    default:
      return `Soil stays in the turns of ${name}, cloths tear on its end, and hands are cut on it.`;
  }
}
